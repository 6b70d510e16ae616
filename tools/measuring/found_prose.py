"""Prose as it was found: what the checks say of it was read, alarm by alarm; and the same with words doubled.

Found prose has no list of sources here, so that each of its citations should be told as unknown: whether what is told
is a citation was judged by reading. An article's own list of references judges for itself. ``alarms_read.toml`` keeps
what was read by a name that tells nothing of the text; an alarm that nobody has read counts as wrong.
"""

from __future__ import annotations

import hashlib
import random
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from fairhand.language.folding import fold
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import Found, articles, prose
from measuring.tally import MEASURED, PARSING, Tally, findings_in

WORDS_TO_A_SLIP = 15_000
"""Words of a student's draft to one that is doubled by a slip, as the student drafts have them (five in 77,331)."""
LIST = (
    Entry("a", "book", "The Long Quay", authors=(Name("Vale", "Anna"),), issued=Issued(2009)),
    Entry(
        "b",
        "article-journal",
        "Salt and Its Prices",
        authors=(Name("Okoro", "Ben"), Name("Tveit", "Eva")),
        issued=Issued(2017),
    ),
    Entry("c", "webpage", "Tide Tables", authors=(Name(literal="Harbour Board of Velden"),)),
)
"""Some list of sources, of which none of the prose knows."""
_WORD = re.compile(r"(?<=\s)[^\W\d_]+(?=\s+[^\W\d_])")


@dataclass(frozen=True, slots=True)
class Heard:
    """An alarm in found prose."""

    found: Found
    finding: Finding
    draft: str

    @property
    def key(self) -> str:
        """The check, the text's name, and a digest of the words with their neighbours."""
        span = self.finding.span or Span(0, 0)
        around = self.draft[max(0, span.start - 24) : span.end + 24]
        return f"{self.finding.check} {self.found.name} {hashlib.sha256(around.encode()).hexdigest()[:8]}"

    def around(self) -> str:
        """The words with their neighbours, to be read."""
        span = self.finding.span or Span(0, 0)
        before, after = self.draft[max(0, span.start - 50) : span.start], self.draft[span.end : span.end + 30]
        return f"{before}⟦{span.of(self.draft)}⟧{after}"


@cache
def listen() -> tuple[Heard, ...]:
    """Every alarm in the found prose."""
    out = []
    for found in prose():
        paper = _paper(found)
        out += [Heard(found, finding, paper.draft) for finding in findings_in(paper, (*MEASURED, *PARSING))]
    return tuple(out)


def measure_found_prose(tally: Tally) -> None:
    """What the checks say of prose as it stands, by what was read."""
    read = alarms_read()
    for heard in listen():
        right = read.get(heard.key, False) if heard.key in read else _is_in_references(heard)
        tally.count(heard.finding.check, right=right)
        if not right:
            tally.wrong.append((heard.finding.check, heard.found.name, heard.around(), heard.finding.says))


def unread() -> Iterator[Heard]:
    """The alarms that are still to be read."""
    read = alarms_read()
    return (heard for heard in listen() if heard.key not in read and not _is_in_references(heard))


def measure_doubled_words(tally: Tally, seed: int = 3) -> None:
    """What ``doubled-word`` says of the same prose with words doubled as seldom as students double them."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    read = alarms_read()
    for alarm in listen():
        if alarm.finding.check == "doubled-word":
            tally.count("doubled-word", right=read.get(alarm.key, False))
    for found in prose():
        draft = _paper(found).draft
        for word in _WORD.finditer(draft):
            if rng.random() < 1 / WORDS_TO_A_SLIP:
                _double(tally, found, draft, word)


def _double(tally: Tally, found: Found, draft: str, word: re.Match[str]) -> None:
    """One word doubled, and what is said of it."""
    spoilt = f"{draft[: word.end()]} {word[0]}{draft[word.end() :]}"
    place = Span(word.start(), word.end() + 1 + len(word[0]))
    told = [
        finding
        for finding in findings_in(Paper(found.name, spoilt, LIST))
        if finding.check == "doubled-word" and finding.span is not None and finding.span.overlaps(place)
    ]
    tally.spoiled["doubled-word"] += 1
    tally.seen["doubled-word"] += bool(told)
    for _ in told:
        tally.count("doubled-word", right=True)
    if not told:
        tally.missed.append(("doubled-word", found.name, spoilt[max(0, place.start - 20) : place.end + 20]))


@cache
def alarms_read() -> dict[str, bool]:
    """Each alarm that was read, and whether it was right."""
    table = tomllib.loads((Path(__file__).parent / "alarms_read.toml").read_text("utf-8"))
    return dict.fromkeys(table["right"], True) | dict.fromkeys(table["wrong"], False)


def _paper(found: Found) -> Paper:
    return Paper(found.name, "\n\n".join(found.paragraphs), LIST, style="apa-7")


def _is_in_references(heard: Heard) -> bool:
    """Whether the article's own list has a work of the first name and the year that are told."""
    if heard.finding.check != "citation-unknown" or heard.found.corpus != "articles" or heard.finding.span is None:
        return False
    words = heard.finding.span.of(heard.draft)
    name, year = (
        re.search(r"[^\W\d_][\w'’-]+", re.sub(r"^(?:see|e\.g\.|reviewed in|in)\W+", "", words)),
        re.search(r"\d{4}", words),
    )
    if name is None or year is None:
        return False
    return any(fold(name[0]) in fold(ref) and f"({year[0]}" in ref for ref in _references(heard.found.name))


@cache
def _references(name: str) -> tuple[str, ...]:
    return next(one.references for one in articles() if one.name == name)
