"""Layouts of references: each a set of choices, drawn at random, as styles of all trades and times make them.

It is long because a layout is one long row of choices, and each kind of work one row of fields.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

from training.records import Person, Record, abbreviate, title_case

Piece = tuple[str, str]
"""Some words of a reference, with their field, or an empty string where they have none."""


@dataclass(frozen=True, slots=True)
class Layout:
    """One way to set references."""

    names: str
    """``given-family``, ``family-given`` or ``first-turned`` (only the first author turned round)."""
    given: str
    """``full``, ``J. R.``, ``J.R.``, ``JR``, ``J R``, ``J``."""
    turn: str
    """What stands between family and given names where these are turned round."""
    between: str
    last: str
    """What stands before the last of several names."""
    capitals: bool
    et_al_from: int
    et_al: str
    date: str
    """``after-authors``, ``after-container``, ``before-pages`` or ``end``."""
    date_marks: tuple[str, str]
    month: str
    """``full``, ``short``, ``none``, ``iso``."""
    after_authors: str
    after_title: str
    quotes: tuple[str, str]
    case: str
    abbreviate: bool
    in_: str
    """What stands before the book or the proceedings that a work stands in."""
    editors: str
    editor_word: str
    volume: tuple[str, str]
    issue: tuple[str, str]
    pages: tuple[str, str]
    dash: str
    short_last: bool
    imprint: str
    """``place: publisher``, ``publisher, place``, ``publisher``, ``(place: publisher)``, ``publisher. place``."""
    comma: str
    """What stands between the later fields."""
    end: str
    doi: str
    url: str
    titles: bool
    """Whether articles are set with their titles."""
    bare: bool
    """Whether the fields follow each other with nothing but a space between them."""


def draw_layout(rng: random.Random) -> Layout:
    """One layout; the usual choices are drawn more often than the odd ones."""
    pick = rng.choice
    names = pick(("given-family", "given-family", "family-given", "family-given", "family-given", "first-turned"))
    given = pick(("J. R.", "J. R.", "J.R.", "J.R.", "JR", "JR", "full", "full", "J R", "J", "J.-R."))
    if names == "given-family" and given in {"JR", "J R", "J"}:
        given = pick((given, "J. R.", "full"))
    turn = pick((", ", ", ", ", ", " ", " ")) if given in {"J. R.", "J.R.", "J.-R."} else pick((" ", " ", ", "))
    if given == "full":
        turn = ", "
    between = ", " if turn == " " or names != "family-given" else pick((", ", ", ", "; "))
    last = pick(
        (
            between,
            " and ",
            " and ",
            ", and ",
            ", and ",
            " & ",
            ", & ",
            between,
            "; and " if between == "; " else " and ",
            " et ",
            " und ",
        )
        if rng.random() < 0.85
        else (" y ", " und ", " et ", " en ")
    )
    after = pick((". ", ". ", ". ", ", ", ", ", ": ", " ", "; "))
    date = pick(("after-authors",) * 5 + ("end",) * 5 + ("after-container",) * 4 + ("before-pages",) * 2)
    marks = (
        pick((("(", ")"), ("(", ")"), ("(", ")"), ("", ""), ("", ""), ("[", "]")))
        if date == "after-authors"
        else pick((("", ""), ("", ""), ("(", ")"), ("(", ")")))
    )
    short = given in {"JR", "J R"} and rng.random() < 0.6
    return Layout(
        names=names,
        given=given,
        turn=turn,
        between=between,
        last=last,
        capitals=rng.random() < 0.06,
        et_al_from=pick((99, 99, 99, 2, 3, 3, 4, 6, 7)),
        et_al=pick((" et al.", ", et al.", ", et al", " et al", " and others", ", et al.")),
        date=date,
        date_marks=marks,
        month=pick(("none", "none", "none", "full", "full", "short", "short.")),
        after_authors=after,
        after_title=pick((". ", ". ", ". ", ", ", ", ")) if after != ", " else pick((", ", ", ", ", ", ". ", " ")),
        quotes=pick(
            (("", ""),) * 11
            + (("“", "”"), ("“", "”"), ('"', '"'), ('"', '"'), ("‘", "’"), ("'", "'"), ("``", "''"), ("«", "»"))
        ),
        case=pick(("sentence", "sentence", "sentence", "title", "title", "upper" if rng.random() < 0.15 else "title")),
        abbreviate=short or rng.random() < 0.4,
        in_=pick(("In ", "In ", "In ", "In: ", "In: ", "in ", "in ", "in: ", "", "")),
        editors=pick(("before", "before", "after", "after", "after")),
        editor_word=pick(
            (
                "(Eds.)",
                "(Ed.)",
                "(eds.)",
                ", editors",
                ", editors",
                "(eds)",
                ", eds.",
                "eds.",
                "edited by ",
                "ed. ",
                "Ed. ",
                "ed. by ",
                ", editor",
                "[eds]",
                "hrsg. von ",
                "(Hrsg.)",
            )
        ),
        volume=pick(
            (
                ("", ""),
                ("", ""),
                ("", ""),
                ("", ""),
                ("vol. ", ""),
                ("Vol. ", ""),
                ("vol ", ""),
                ("Volume ", ""),
                ("Vol.", ""),
                ("v. ", ""),
                ("Bd. ", ""),
                ("t. ", ""),
            )
        ),
        issue=pick(
            (
                ("(", ")"),
                ("(", ")"),
                ("(", ")"),
                (" (", ")"),
                (", no. ", ""),
                (", No. ", ""),
                (", ", ""),
                (":", ""),
                ("/", ""),
                ("-", ""),
                (", issue ", ""),
                (" no. ", ""),
                ("drop", ""),
                ("drop", ""),
                ("(no. ", ")"),
            )
        ),
        pages=pick(
            (
                (", ", ""),
                (", ", ""),
                (":", ""),
                (":", ""),
                (": ", ""),
                (", pp. ", ""),
                (", pp. ", ""),
                (", pp.", ""),
                (", pages ", ""),
                (", p. ", ""),
                (" ", ""),
                (", pp ", ""),
                (". p. ", ""),
                (". pp. ", ""),
                (", S. ", ""),
                ("; ", ""),
            )
        ),
        dash=pick(("-", "-", "–", "–", "–", "--", " - ", "—", "‐")),
        short_last=rng.random() < 0.2,
        imprint=pick(
            (
                "place: publisher",
                "place: publisher",
                "place: publisher",
                "publisher, place",
                "publisher, place",
                "publisher",
                "publisher",
                "(place: publisher)",
                "(publisher, place)",
                "publisher. place",
                "place, publisher",
                "place",
            )
        ),
        comma=pick((", ", ", ", ", ", ". ", ". ", "; ")),
        end=pick((".", ".", ".", ".", "", "", ";")),
        doi=pick(("https://doi.org/", "doi:", "doi: ", "DOI: ", "http://dx.doi.org/", "doi.org/", "")),
        url=pick(
            (
                "Retrieved from ",
                "Available at: ",
                "",
                "",
                "URL ",
                "URL: ",
                "Available from: ",
                "<",
                "Available: ",
                "[Online]. Available: ",
                "[online] ",
                "At ",
            )
        ),
        titles=rng.random() > 0.27,
        bare=rng.random() < 0.03,
    )


def _given(person: Person, form: str) -> str:
    if form == "full":
        return " ".join(person.given)
    if form == "first-full":
        return " ".join((person.given[0], *(f"{one[0]}." for one in person.given[1:])))
    heads = [[part[0] for part in one.split("-")] for one in person.given]
    if form in {"JR", "J R", "J"}:
        letters = ["".join(one).upper() for one in heads]
        return letters[0][0] if form == "J" else (" " if form == "J R" else "").join(letters)
    dotted = ["-".join(f"{letter.upper()}." for letter in one) for one in heads]
    return ("-" if form == "J.-R." else " " if form == "J. R." else "").join(dotted)


def set_name(person: Person, layout: Layout, *, turned: bool) -> str:
    """One name, turned round or not."""
    if person.body:
        return person.body
    family = f"{person.particle} {person.family}".strip()
    if layout.capitals:
        family = family.upper()
    given = _given(person, layout.given)
    if turned:
        out = f"{family}{layout.turn}{given}"
        return f"{out}, {person.suffix}" if person.suffix else out
    out = f"{given} {family}" if layout.given != "J.R." or len(family) % 3 else f"{given}{family}"
    return f"{out}{' ' if len(family) % 2 else ', '}{person.suffix}" if person.suffix else out


def set_names(people: list[Person], layout: Layout, *, plain: bool = False) -> str:
    """A list of names; in a ``plain`` one none is turned round."""
    shown = people[: max(1, min(layout.et_al_from - 1, 3))] if len(people) > layout.et_al_from else people
    out = []
    for number, person in enumerate(shown):
        turned = not plain and (layout.names == "family-given" or (layout.names == "first-turned" and not number))
        out.append(set_name(person, layout, turned=turned))
    if len(shown) < len(people):
        return layout.between.join(out) + layout.et_al
    if len(out) == 1:
        return out[0]
    last = (
        layout.last.lstrip(",")
        if len(out) == 2 and layout.last.startswith(", ") and not layout.turn.strip()
        else layout.last
    )
    return layout.between.join(out[:-1]) + last + out[-1]


def _date(record: Record, layout: Layout, rng: random.Random, suffix: str) -> str:
    year = f"{record.year}{suffix}"
    if not record.month or layout.month == "none":
        return year
    month = {"full": record.month, "short": record.month[:3], "short.": record.month[:3] + "."}.get(
        layout.month, record.month
    )
    if rng.random() < 0.06:
        month = rng.choice(
            (
                "Spring",
                "Winter",
                "Summer",
                "Fall",
                f"{record.month[:3]}./{record.month[-3:]}.",
                f"{month}-{rng.choice(('June', 'Dec'))}",
            )
        )
    day = str(record.day) if record.day else ""
    if layout.date == "after-authors":
        return f"{year}, {month} {day}".rstrip()
    if layout.given in {"JR", "J R"}:
        return f"{year} {month} {day}".rstrip()
    return rng.choice(
        (
            f"{day} {month} {year}".strip(),
            f"{month} {day}, {year}" if day else f"{month} {year}",
            f"{month}, {year}" if rng.random() < 0.3 else f"{month} {year}",
        )
    )


def _title(text: str, case: str) -> str:
    return title_case(text) if case == "title" else text.upper() if case == "upper" else text


class _Sheet:
    """The pieces of one reference as they are written one after another."""

    def __init__(self) -> None:
        self.pieces: list[Piece] = []

    def add(self, text: str, field: str = "") -> None:
        """These words come next."""
        if text:
            self.pieces.append((text, field))

    def part(self, separator: str) -> None:
        """The separator comes next, where something stands already; it is not doubled."""
        if not self.pieces:
            return
        before = self.pieces[-1][0]
        if before[-1:] in ".?!" and separator[:1] in ".,":
            separator = separator[1:] if separator[:1] == "." or before[-1:] in "?!" else separator
        self.add(separator)


def set_reference(record: Record, layout: Layout, rng: random.Random) -> list[Piece]:
    """The reference of a record in a layout, piece by piece with the field of each."""
    sheet = _Sheet()
    suffix = rng.choice("abc") if rng.random() < 0.04 and layout.date == "after-authors" else ""
    date = _date(record, layout, rng, suffix)
    before, after = layout.date_marks
    dated = rng.random() > 0.02
    if record.note and rng.random() < 0.2:
        date, record.note = rng.choice(("in press", "forthcoming", "n.d.", "In press")), ""
    booky = record.kind in {"book", "web", "report", "thesis", "preprint"}
    if record.authors:
        sheet.add(set_names(record.authors, layout), "author")
        if layout.after_authors == ", " and rng.random() < 0.02:
            sheet.add(", " + rng.choice(("eds.", "editors")))
    elif record.editors:
        sheet.add(set_names(record.editors, layout), "editor")
        sheet.add(rng.choice((", editors", " (Eds.)", ", eds.", ", ed.", " (ed.)", ", editor", " (eds)")))
    if layout.date == "after-authors" and dated:
        sheet.part(" " if before else rng.choice((", ", ". ", " ", ", ")) if record.authors else "")
        sheet.add(before)
        sheet.add(date, "date")
        sheet.add(after)
        sheet.part(rng.choice((layout.after_authors, ". ", " ", ", ")) if not before else layout.after_authors)
    else:
        sheet.part(layout.after_authors)
    with_title = booky or layout.titles or record.kind == "chapter"
    if with_title:
        _set_title(sheet, record, layout, rng)
    if record.kind == "article":
        _set_article(sheet, record, layout, rng, date=date if dated else "")
    elif record.kind in {"paper", "chapter"}:
        _set_contained(sheet, record, layout, rng, date=date if dated else "")
    else:
        _set_alone(sheet, record, layout, rng, date=date if dated else "")
    if record.kind == "article" and record.number:
        sheet.part(layout.comma)
        marks = rng.choice((("", ""), ("[", "]"), ("(", ")")))
        sheet.add(marks[0])
        sheet.add(record.number, "report")
        if rng.random() < 0.3:
            sheet.add(" [")
            sheet.add(rng.choice(("hep-th", "gr-qc", "math.AG", "hep-ph", "cs.LG")), "note")
            sheet.add("]")
        sheet.add(marks[1])
    if record.note:
        sheet.part(rng.choice((". ", ", ", " (", " [")))
        opened = sheet.pieces[-1][0] if sheet.pieces else ""
        sheet.add(record.note, "note")
        sheet.add(")" if opened.endswith("(") else "]" if opened.endswith("[") else "")
    if record.doi and rng.random() < 0.9:
        sheet.part(rng.choice((". ", ", ", " ")))
        sheet.add(layout.doi + record.doi, "doi")
    if record.url and rng.random() < 0.9:
        sheet.part(rng.choice((". ", ", ", " ")))
        if layout.url.endswith((" ", "<")):
            sheet.add(layout.url)
        sheet.add(record.url, "url")
        if layout.url == "<":
            sheet.add(">")
        if record.kind == "web" and rng.random() < 0.5:
            sheet.part(rng.choice((". ", ", ", " (", " [")))
            opened = sheet.pieces[-1][0]
            sheet.add(
                rng.choice(
                    (
                        f"Accessed {rng.randrange(1, 29)} {record.month or 'May'} {record.year + 1}",
                        f"accessed {record.month or 'June'} {rng.randrange(1, 29)}, {record.year}",
                        f"Last accessed: {record.year}",
                        f"retrieved {rng.randrange(1, 29)}.{rng.randrange(1, 12)}.{record.year}",
                        f"cited {record.year} {(record.month or 'May')[:3]} {rng.randrange(1, 29)}",
                    )
                ),
                "note",
            )
            sheet.add(")" if opened.endswith("(") else "]" if opened.endswith("[") else "")
    if layout.end and not sheet.pieces[-1][0].endswith((".", ";")) and not record.url:
        sheet.add(layout.end)
    pieces = [piece for piece in sheet.pieces if piece[0]]
    return _bare(pieces) if layout.bare else pieces


def _bare(pieces: list[Piece]) -> list[Piece]:
    """The fields with one space between them; of the words between them only *In* is kept."""
    out: list[Piece] = []
    for text, field in pieces:
        if field:
            out += [(text, field), (" ", "")]
        elif text.strip() in {"In", "In:", "in"}:
            out += [("In ", "")]
    return out[:-1]


def set_masthead(record: Record, rng: random.Random) -> list[Piece]:
    """What a journal prints above an article to say where it stands: journal, volume, date, pages, and little else."""
    journal = abbreviate(record.container, rng) if rng.random() < 0.6 else record.container
    journal = journal.upper() if rng.random() < 0.1 else journal
    pages = _set_pages(record, draw_layout(rng))
    extent = f" ({rng.randrange(4, 30)}{rng.choice(('pp', ' pages', ' pp'))})" if rng.random() < 0.3 else ""
    date = str(record.year) if rng.random() < 0.7 else f"{record.month or 'May'} {record.year}"
    volume: list[Piece] = [(rng.choice(("", "", "", "Vol. ", "vol. ", "Volume ")), ""), (record.volume, "volume")]
    issue: list[Piece] = []
    if record.issue and rng.random() < 0.5:
        marks = rng.choice((("(", ")"), (", No. ", ""), (", no. ", ""), (", ", ""), (" (", ")"), (", Issue ", "")))
        issue = [(marks[0], ""), (record.issue, "issue"), (marks[1], "")]
    before = rng.choice(((" ", ""), (", ", ""), ("; ", ""), ("/", "")))
    boxed: list[Piece] = [("(", ""), (date, "date"), (")", "")] if rng.random() < 0.6 else [(date, "date")]
    numbers: list[Piece] = [*volume, *issue]
    joint: Piece = (rng.choice((" ", ", ", ": ", ":", ", pp. ", " pp. ", ", pp ")), "")
    last: list[Piece] = [(pages + extent, "pages")]
    start: list[Piece] = [(journal, "container")]
    if rng.random() < 0.15:
        layout = draw_layout(rng)
        start = [(set_names(record.authors, layout), "author"), (rng.choice((", ", ". ", " ")), ""), *start]
    orders = (
        [*start, (" ", ""), *numbers, (" ", ""), *boxed, joint, *last],
        [*start, (" ", ""), *numbers, joint, *last, before, *boxed],
        [
            *start,
            before,
            *boxed,
            (rng.choice(("; ", ";", ", ", " ")), ""),
            *numbers,
            (rng.choice((":", ": ", ", ")), ""),
            *last,
        ],
        [*start, (" ", ""), *boxed, (" ", ""), *numbers, joint, *last],
        [*boxed, (" ", ""), *start, (" ", ""), *numbers, joint, *last],
        [*last, (" ", ""), *start, before, *numbers, before, *boxed],
        [*start, before, *numbers, before, *boxed],
    )
    pieces = rng.choice(orders)
    if record.doi and rng.random() < 0.5:
        pieces = [
            *pieces,
            (rng.choice((" ", ". ", ", ")), ""),
            (rng.choice(("doi:", "doi: ", "DOI ", "http://dx.doi.org/")) + record.doi, "doi"),
        ]
    if rng.random() < 0.1:
        pieces = [
            (rng.choice(("Citation: ", "Published in: ", "Reference: ", "To cite this article: ", "in ")), ""),
            *pieces,
        ]
    return [piece for piece in pieces if piece[0]]


def _set_title(sheet: _Sheet, record: Record, layout: Layout, rng: random.Random) -> None:
    opening, closing = layout.quotes if not (record.kind == "book" and rng.random() < 0.9) else ("", "")
    sheet.add(opening)
    title = _title(record.title, layout.case)
    ends = title.endswith("?")
    inner = opening in {"“", '"', "``"} and rng.random() < 0.75
    sheet.add(title, "title")
    if record.edition and record.kind == "book":
        edition = rng.choice(
            (
                f"{_nth(record.edition)} ed.",
                f"{_nth(record.edition)} edn",
                f"({_nth(record.edition)} ed.)",
                f"{_nth(record.edition)} edition",
                "Second edition",
                "Rev. ed.",
                f"Ed. {record.edition}",
                "3. Aufl.",
            )
        )
        sheet.part(rng.choice((", ", " ", ". ")) if not edition.startswith("(") else " ")
        sheet.add(edition, "edition")
    if record.volume and record.kind == "book":
        sheet.part(rng.choice((", ", ". ", " ")))
        sheet.add(rng.choice(("vol. ", "Vol. ", "Volume ", "volume ")))
        sheet.add(record.volume, "volume")
    if record.series and record.kind == "book":
        sheet.part(rng.choice((", ", ". ", " (")))
        opened = sheet.pieces[-1][0].endswith("(")
        sheet.add(record.series, "series")
        sheet.add(")" if opened else "")
    separator = layout.after_title
    if inner and not ends:
        sheet.add(separator.strip())
        sheet.add(closing)
        sheet.add(" ")
    else:
        sheet.add(closing)
        if ends and separator == ". ":
            separator = " "
        sheet.part(separator) if not closing or closing == "" else sheet.add(separator)


def _nth(number: int) -> str:
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number, 'th') }"


def _set_article(sheet: _Sheet, record: Record, layout: Layout, rng: random.Random, *, date: str) -> None:
    if layout.in_ in {"In: ", "in: "} and rng.random() < 0.12:
        sheet.add(layout.in_)
    container = abbreviate(record.container, rng) if layout.abbreviate else record.container
    if layout.abbreviate and layout.given in {"JR", "J R"} and rng.random() < 0.8:
        container = container.replace(".", "")
    if layout.abbreviate and rng.random() < 0.1:
        container = container.replace(". ", ".")
    if rng.random() < 0.04:
        container = container.upper()
    sheet.add(container, "container")
    if layout.date == "after-container" and date:
        _add_date(sheet, layout, rng, date)
        sheet.add(
            rng.choice((";", "; ", ", ", ". ", " ", ":")) if not layout.date_marks[0] else rng.choice((" ", ", ", "; "))
        )
    else:
        sheet.add(
            rng.choice((", ", " ", " ", ". ", ", ")) if not container.endswith(".") else rng.choice((" ", " ", ", "))
        )
    if record.volume and rng.random() < 0.97:
        sheet.add(layout.volume[0])
        sheet.add(record.volume, "volume")
        if record.issue and layout.issue[0] != "drop":
            sheet.add(layout.issue[0])
            sheet.add(record.issue, "issue")
            sheet.add(layout.issue[1])
    if layout.date == "before-pages" and date:
        _add_date(sheet, layout, rng, date)
    if record.first and rng.random() < 0.95:
        opening = layout.pages[0]
        if layout.date == "before-pages" and opening.startswith(":"):
            opening = " "
        if not sheet.pieces[-1][1] and sheet.pieces[-1][0][-1:] in " ,;:." and opening[:1] in ",;:. ":
            opening = opening[1:].lstrip()
            if sheet.pieces[-1][0][-1:] != " ":
                opening = " " + opening
        sheet.add(opening)
        sheet.add(_set_pages(record, layout), "pages")
        if rng.random() < 0.02:
            sheet.add(rng.choice((" (in Russian)", " (abstract)", " (in press)")), "note")
    if layout.date == "end" and date:
        _add_date(sheet, layout, rng, date)
    if record.publisher and rng.random() < 0.1:
        sheet.part(layout.comma)
        sheet.add(record.publisher, "publisher")


def _add_date(sheet: _Sheet, layout: Layout, rng: random.Random, date: str) -> None:
    before, after = layout.date_marks
    if before:
        sheet.add(rng.choice((" ", " ", ", ", "")))
    else:
        sheet.part(rng.choice((layout.comma, ", ", ". ", " ")))
    sheet.add(before)
    sheet.add(date, "date")
    sheet.add(after)


def _set_pages(record: Record, layout: Layout) -> str:
    if not record.last:
        return record.first
    last = record.last
    if layout.short_last and len(last) == len(record.first) and last.isdigit():
        shared = 0
        while last[shared] == record.first[shared] and shared < len(last) - 1:
            shared += 1
        last = last[shared:]
    return f"{record.first}{layout.dash}{last}"


def _set_contained(sheet: _Sheet, record: Record, layout: Layout, rng: random.Random, *, date: str) -> None:
    sheet.add(layout.in_)
    container = _title(record.container, "title" if layout.case == "title" or record.kind == "paper" else "sentence")
    if record.kind == "paper" and layout.abbreviate and rng.random() < 0.5:
        container = abbreviate(container, rng)
    editors = record.editors
    word = layout.editor_word
    if editors and layout.editors == "before":
        names = set_names(editors, layout, plain=rng.random() < 0.6)
        if word.endswith(" "):
            word = rng.choice(("(Eds.)", ", editors", ", editor", "(eds.)", ", eds."))
        sheet.add(names, "editor")
        sheet.add(word if word.startswith(",") else f" {word}")
        sheet.add(rng.choice((", ", ". ", ": ", " ")) if not word.endswith(".") else rng.choice((", ", " ")))
    sheet.add(container, "container")
    extra = []
    if record.series and record.volume and rng.random() < 0.8:
        _set_series(sheet, record, rng)
    elif record.volume:
        extra.append(
            (rng.choice((", vol. ", " (Vol. ", ", volume ", ". Vol. ", ", Vol. ", " ", ", ")), record.volume, "volume")
        )
    elif record.series:
        extra.append((rng.choice((", ", " (", ". ")), record.series, "series"))
    if record.edition and record.kind == "chapter":
        extra.append((rng.choice((", ", " (")), f"{_nth(record.edition)} ed.", "edition"))
    if editors and layout.editors == "after" and word.endswith(" "):
        extra.append((rng.choice((", ", ". ", " (")) + word, set_names(editors, layout, plain=True), "editor"))
    elif editors and layout.editors == "after":
        extra.append((rng.choice((", ", ". ", " ")), set_names(editors, layout, plain=rng.random() < 0.7), "editor"))
    rng.shuffle(extra)
    for lead, text, field in extra:
        sheet.part(lead)
        sheet.add(text, field)
        if field == "editor" and not word.endswith(" "):
            sheet.add(word if word.startswith(",") else f" {word}")
        if lead.lstrip(" ").startswith("("):
            sheet.add(")")
    later = ["pages", "imprint", "date"]
    roll = rng.random()
    if roll < 0.35:
        later = ["imprint", "pages", "date"]
    elif roll < 0.6:
        later = ["imprint", "date", "pages"]
    elif roll < 0.7:
        later = ["date", "pages", "imprint"]
    elif roll < 0.8:
        later = ["pages", "date", "imprint"]
    for part in later:
        if part == "pages" and record.first and rng.random() < 0.85:
            opening = rng.choice((layout.pages[0], ", pp. ", ", pages ", " (pp. ", ", ", ". pp. ", ", p. ", ": "))
            sheet.part(opening)
            sheet.add(_set_pages(record, layout), "pages")
            sheet.add(")" if "(" in opening else "")
        elif part == "imprint":
            _set_imprint(sheet, record, layout, rng)
        elif part == "date" and date and layout.date != "after-authors":
            _add_date(sheet, layout, rng, date)


def _set_series(sheet: _Sheet, record: Record, rng: random.Random) -> None:
    """The series with the volume in it, before it or after it."""
    opening = rng.choice((", ", ". ", " (", ", "))
    sheet.part(opening)
    if rng.random() < 0.4:
        sheet.add(rng.choice(("volume ", "Vol. ", "vol. ", "Volume ")))
        sheet.add(record.volume, "volume")
        sheet.add(rng.choice((" of ", ", of ", ", ")))
        sheet.add(record.series, "series")
    else:
        sheet.add(record.series, "series")
        sheet.add(rng.choice((" ", ", ", ", vol. ", ", Vol. ", " vol. ", ", no. ", " No. ")))
        sheet.add(record.volume, "volume")
    sheet.add(")" if opening.endswith("(") else "")


def _set_imprint(sheet: _Sheet, record: Record, layout: Layout, rng: random.Random) -> None:
    place, publisher = record.place, record.publisher
    if not place and not publisher:
        return
    form = layout.imprint
    boxed = form.startswith("(")
    sheet.part(rng.choice((layout.comma, ". ", ", ")) if not boxed else " ")
    sheet.add("(" if boxed else "")
    form = form.strip("()")
    fields: list[Piece] = []
    joint = ": " if ":" in form else ". " if ". " in form else ", "
    for name in form.replace(":", ",").replace(".", ",").split(", "):
        fields += [(place, "place")] if name == "place" and place else []
        fields += [(publisher, "publisher")] if name == "publisher" and publisher else []
    if not fields:
        fields = [(publisher, "publisher")] if publisher else [(place, "place")]
    for number, (text, field) in enumerate(fields):
        if number:
            sheet.part(joint)
        sheet.add(text, field)
    sheet.add(")" if boxed else "")


def _set_alone(sheet: _Sheet, record: Record, layout: Layout, rng: random.Random, *, date: str) -> None:
    """What follows the title of a work that stands alone: report and number, publisher and place, date."""
    if record.report:
        number = record.number
        words = f"{record.report} {number}".strip()
        marks = rng.choice((("", ""), ("", ""), ("", ""), ("(", ")"), ("[", "]")))
        first_body = rng.random() < 0.25 and record.publisher
        if first_body:
            sheet.add(record.publisher, "publisher")
            sheet.part(rng.choice((", ", " ", ". ")))
        sheet.add(marks[0])
        sheet.add(words, "report")
        sheet.add(marks[1])
        if record.publisher and not first_body:
            sheet.part(rng.choice((", ", ", ", ". ", ": ", " ")))
            sheet.add(record.publisher, "publisher")
        if record.place:
            sheet.part(", ")
            sheet.add(record.place, "place")
    elif record.kind == "web":
        if record.container:
            sheet.add(record.container, "container")
    else:
        while sheet.pieces and not sheet.pieces[-1][1] and sheet.pieces[-1][0].strip() in {"", ".", ","}:
            sheet.pieces.pop()
        _set_imprint(sheet, record, layout, rng)
    if date and layout.date != "after-authors":
        _add_date(sheet, layout, rng, date)
