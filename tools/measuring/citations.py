"""Invented papers that cite, rightly and with a tenth of the citations spoiled."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fairhand.model.entry import Entry
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.forms import STYLES, Form, form_of
from measuring.invented import SENTENCES, STRANGERS, add_namesake, add_twin, invent_list
from measuring.tally import Spoiled, Tally, judge_paper

ONE_IN = 10
A_PAPER = 30
"""Citations in each invented paper."""
SPOILS = {
    "another year": "citation-year",
    "an author who is not on the list": "citation-unknown",
    "initial left out": "citation-ambiguous",
    "letter left out": "citation-ambiguous",
    "title left out": "citation-ambiguous",
}


def measure_citations(tally: Tally, papers: int, seed: int = 2) -> None:
    """What the checks say of so many invented papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paper, spoiled = make_paper(rng, STYLES[number % len(STYLES)])
        judge_paper(tally, f"citations {seed}.{number}", paper, spoiled)


@dataclass(frozen=True, slots=True)
class Citable:
    """A work with the forms that cite it in one paper."""

    entry: Entry
    form: Form
    titled: bool = False
    """Whether its title must stand in the citation."""

    def cite(self, pages: str) -> str:
        """The parenthesis."""
        if not self.titled:
            return self.form.parenthesis(pages)
        short = self.entry.title.partition(" ")[0] + " " + self.entry.title.split()[1]
        title = f"*{short}*" if self.entry.type == "book" else f"“{short}”"
        return f"({self.form.briefly}, {title}{' ' if pages else ''}{pages})"


def make_paper(rng: random.Random, style: str) -> tuple[Paper, list[Spoiled]]:
    """A paper of thirty citations, and what is spoiled in it."""
    entries = invent_list(rng)
    namesakes, twins = add_namesake(entries, rng), add_twin(entries, rng)
    shelf = [_citable(entry, style, namesakes or (), twins or ()) for entry in entries]
    text, spoiled = "# A Paper\n\n", []
    kinds = [rng.choice(list(SPOILS)) if n < A_PAPER // ONE_IN else "" for n in range(A_PAPER)]
    rng.shuffle(kinds)
    for kind in kinds:
        made = _spoil(kind, shelf, entries, namesakes, twins, style, rng) if kind else None
        start = len(text)
        if made is None:
            text += _right(shelf, style, rng)
        else:
            before, cite, after = made
            text += before + cite + after
            spoiled.append(Spoiled(SPOILS[kind], Span(start + len(before), start + len(before) + len(cite))))
        text += "\n\n" if rng.random() < 0.2 else " "
        if rng.random() < 0.6:
            text += rng.choice(SENTENCES) + " "
    return Paper("made", text, tuple(entries), style=style), spoiled


def _citable(entry: Entry, style: str, namesakes: Sequence[Entry], twins: Sequence[Entry]) -> Citable:
    initial = entry.authors[0].given[:1] if entry in namesakes else ""
    letter = "ab"[twins.index(entry)] if entry in twins and entry.issued else ""
    return Citable(entry, form_of(entry, style, initial, letter), titled=style == "mla-9" and entry in twins)


_FRAMES = (
    "That much is agreed {}.",
    "Not everyone has thought so {}, but the point stands.",
    "The older view {} was that nothing could be done.",
    "It rose by a third in ten years {}.",
    "As is often said {}, the rule has exceptions.",
)


def _right(shelf: Sequence[Citable], style: str, rng: random.Random) -> str:
    """A sentence that cites rightly, in one of the ways in which one cites."""
    work = rng.choice(shelf)
    pages = _pages(work.entry, rng) if style == "mla-9" or rng.random() < 0.5 else ""
    frame = rng.choice(_FRAMES)
    who, after = work.form.narrative(pages)
    alone = [other for other in shelf if other is not work and not other.titled]
    match rng.randrange(8):
        case 0 | 1 | 2:
            return frame.format(work.cite(pages))
        case 3 if not work.titled:
            return f"{who} puts it down to chance{after}."
        case 4 if not work.titled and work.form.year:
            return f"In the words of one critic, the matter is closed; {work.form.at_once(pages)} disagrees."
        case 5:
            other = rng.choice(alone)
            pair = f"{work.cite(pages)[:-1]}; {other.cite('')[1:]}" if other.form.year else work.cite(pages)
            return frame.format(pair)
        case 6:
            prefix = rng.choice(("see ", "cf. ", "e.g., ", "see also "))
            return frame.format(f"({prefix}{work.cite(pages)[1:]}")
        case 7 if work.entry.authors and not work.titled:
            hand = {"mla-9": "qtd. in ", "apa-7": "as cited in ", "harvard": "cited in "}.get(style, "quoted in ")
            return frame.format(f"({hand}{work.cite(pages)[1:]}")
        case _:
            return frame.format(work.cite(pages))


def _pages(entry: Entry, rng: random.Random) -> str:
    first, _, last = entry.page.partition("-")
    if entry.type == "webpage":
        return ""
    start = rng.randrange(int(first), int(last)) if last else rng.randrange(1, 400)
    return f"{start}–{start + 1}" if rng.random() < 0.25 else str(start)


def _spoil(
    kind: str,
    shelf: Sequence[Citable],
    entries: Sequence[Entry],
    namesakes: tuple[Entry, Entry] | None,
    twins: tuple[Entry, Entry] | None,
    style: str,
    rng: random.Random,
) -> tuple[str, str, str] | None:
    """What stands before a faulty citation, the citation, and what stands after; None where the fault would be none."""
    work = rng.choice(shelf)
    pages = _pages(work.entry, rng) if style == "mla-9" or rng.random() < 0.5 else ""
    match kind:
        case "another year":
            years = {
                o.issued.year
                for o in entries
                if o.issued and {n.surname for n in o.authors} & {n.surname for n in work.entry.authors}
            }
            year = (
                work.entry.issued.year + rng.choice((-10, -2, -1, 1, 2, 10))
                if work.entry.issued and work.entry.issued.year
                else None
            )
            if not work.form.year or year is None or year in years or not work.entry.authors:
                return None
            form = replace(work.form, year=str(year))
        case "an author who is not on the list":
            who = rng.choice(STRANGERS)
            form = replace(work.form, who=who, briefly=who)
            if style == "mla-9" and not pages:
                return None
        case "initial left out" if namesakes:
            form = form_of(rng.choice(namesakes), style)
        case "letter left out" if twins and style != "mla-9":
            form = form_of(rng.choice(twins), style)
        case "title left out" if twins and style == "mla-9":
            form = form_of(rng.choice(twins), style)
        case _:
            return None
    if form.year and kind != "title left out" and rng.random() < 0.3:
        return "So far, ", form.at_once(pages), " has not been answered."
    before, _, after = rng.choice(_FRAMES).partition("{}")
    return before, form.parenthesis(pages), after
