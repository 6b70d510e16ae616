"""A citation written as one says it in a draft: the style's own in-text form, for one source and one page.

Styles of numbers and of notes have no such form of their own: there the draft names author, year and page, and the fair
copy makes of it what the style wants.

**Source**: the example that each row of ``style_rules`` gives; which names, letters and short titles are needed: MLA 9,
6.4 to 6.12 (from memory), APA 7, 8.17 to 8.20 (from memory), CMOS 17, 15.22 to 15.30 (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fairhand.citing.known import ARTICLES, Known, Work, know
from fairhand.citing.style_rules import StyleRules
from fairhand.model.entry import Entry, Name

_EXAMPLE = re.compile(r"\(\w+(?P<year>,? )\d{4}(?P<page>[:, ]+(?:p\. ?)?)\d")
_SEVERAL = re.compile(r"[-–—,;]|\band\b")
_MARKUP = re.compile(r"</?\w[^<>]{0,40}>")
_SHORT_WORDS = 4
"""Words of a title that is named in place of an author."""


def write_in_text(entry: Entry, page: str, entries: Sequence[Entry], rules: StyleRules) -> str:
    """The citation of a source at a page, in parentheses, told from every other source on the list.

    Args:
        entry: The source.
        page: The page's label, or labels; empty where there is none.
        entries: The whole list of sources.
        rules: The rules of the paper's style.

    >>> from fairhand.citing.style_rules import rules_of
    >>> from fairhand.model.entry import Issued
    >>> one = Entry("x", "book", "Ebb", authors=(Name("Okafor"), Name("Lind")), issued=Issued(2019))
    >>> [write_in_text(one, "102", [one], rules_of(style)) for style in ("mla-9", "apa-7", "chicago-author-date-17")]
    ['(Okafor and Lind 102)', '(Okafor & Lind, 2019, p. 102)', '(Okafor and Lind 2019, 102)']
    """
    known = know(tuple(entries))
    work = next(one for one in known.works if one.entry.id == entry.id)
    if rules.in_text == "author-page":
        return f"({_by_page(work, page, known, rules)})"
    return f"({_by_date(work, page, known, rules)})"


def _by_page(work: Work, page: str, known: Known, rules: StyleRules) -> str:
    who = _names(work, known, rules)
    alike = [one for one in known.works if one is not work and _names(one, known, rules) == who]
    title = f"“{_short_title(work.entry)}”"
    said = f"{who}, {title}" if who and alike else who or title
    return f"{said} {page}".strip()


def _by_date(work: Work, page: str, known: Known, rules: StyleRules) -> str:
    form = _EXAMPLE.match(rules.example)
    before_year, before_page = (form["year"], form["page"]) if form else (" ", ", ")
    if rules.in_text == "numeric":
        before_page = ", p. "
    if page and "p. " in before_page and _SEVERAL.search(page):
        before_page = before_page.replace("p. ", "pp. ")
    who = _names(work, known, rules)
    if not who:
        title = _short_title(work.entry)
        who = f"“{title},”" if before_year == ", " else f"“{title}”"
        before_year = " "
    return f"{who}{before_year}{_year(work)}{before_page if page else ''}{page}"


def _year(work: Work) -> str:
    issued = work.entry.issued
    letter = work.suffix if work.shared_year or work.entry.year_suffix else ""
    if issued is None or issued.year is None:
        return f"n.d.{f'-{letter}' if letter else ''}"
    return f"{issued.year}{letter}"


def _names(work: Work, known: Known, rules: StyleRules) -> str:
    """The names as they stand in a citation, the first with an initial where another first author has that surname."""
    creators = _creators(work.entry)
    if not creators:
        return ""
    first = creators[0].surname
    others = {name.given for one in known.works for name in _creators(one.entry)[:1] if name.surname == first}
    if len(others) > 1 and creators[0].given:
        first = f"{' '.join(f'{given[0]}.' for given in re.split(r'[ .-]+', creators[0].given) if given)} {first}"
    if len(creators) >= rules.et_al_from and len(creators) > 1:
        return f"{first} et al."
    named = [first, *(name.surname for name in creators[1:])]
    last = "&" if rules.manual == "apa" else "and"
    if len(named) < 3:
        return f" {last} ".join(named)
    return f"{', '.join(named[:-1])}, {last} {named[-1]}"


def _creators(entry: Entry) -> Sequence[Name]:
    return [name for name in entry.authors or entry.editors if name.surname]


def _short_title(entry: Entry) -> str:
    """The title as a citation names it: its short form, or the first words of its main part."""
    title = _MARKUP.sub("", entry.title_short or entry.title).strip()
    main = re.split(r"[:?!]\s|\s[–—]\s|\.\s", title, maxsplit=1)[0].rstrip(" .,")
    words = main.split()
    words = words[1:] if len(words) > 1 and words[0].lower() in ARTICLES else words
    return " ".join(words if len(words) <= _SHORT_WORDS + 1 else words[:_SHORT_WORDS])
