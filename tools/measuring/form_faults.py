"""Prose as it was found, heard by the checks of form; and the same with faults of form set into it, one at a time.

Every alarm in the prose as it stands was read, or counts as wrong; the faults that are set in tell what is seen, and
raise no precision. They are those that the rule names, at places
taken at random: a blank set or dropped beside a mark, a dash turned into a hyphen, an opening number into a numeral.
Learners' sentences are left out: their blanks are those of the data set.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator

from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import Found, prose
from measuring.found_prose import Heard, alarms_read
from measuring.tally import FORMING, QUOTED, Tally, findings_in

TO_A_FAULT = 12_000
"""Words of prose to one fault of each kind."""
Spoil = tuple[str, Span]
"""A paragraph with a fault in it, and the fault's place."""
_NUMERALS = dict(
    zip("Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve Twenty Thirty Forty Fifty".split(),
        "2 3 4 5 6 7 8 9 10 11 12 20 30 40 50".split(), strict=True)
)  # fmt: skip


def measure_form(tally: Tally, share: float = 1.0, seed: int = 61) -> None:
    """What the checks of form say of found prose, and of faults set into it."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    read = alarms_read()
    for heard in heard_of_form():
        right = read.get(heard.key, False)
        tally.count(heard.finding.check, right=right)
        if not right:
            tally.wrong.append((heard.finding.check, heard.found.name, heard.around(), heard.finding.says))
    for found in _written():
        for paragraph in found.paragraphs:
            for check, spoil in SPOILS:
                spoiled = spoil(paragraph, rng) if rng.random() < _chance(check, paragraph) * share else None
                if spoiled:
                    _judge(tally, found, check, *spoiled)


def heard_of_form() -> Iterator[Heard]:
    """Every alarm of the checks of form in the prose as it stands."""
    for found in _written():
        paper = Paper(found.name, "\n\n".join(found.paragraphs), style="apa-7")
        yield from (Heard(found, finding, paper.draft) for finding in findings_in(paper, (*FORMING, *QUOTED)))


def _written() -> Iterator[Found]:
    return (found for found in prose() if found.corpus != "learners' sentences")


def _chance(check: str, paragraph: str) -> float:
    """How likely a paragraph is spoiled: where few can be, each of them is."""
    return 1.0 if check in RARE else len(paragraph.split()) / TO_A_FAULT


def _judge(tally: Tally, found: Found, check: str, spoiled: str, place: Span) -> None:
    told = [
        finding
        for finding in findings_in(Paper(found.name, spoiled, style="apa-7"), (check,))
        if finding.span is not None
        and (check in WIDE or (place.start - 1 <= finding.span.end and finding.span.start <= place.end + 1))
    ]
    tally.spoiled[check] += 1
    tally.seen[check] += bool(told)
    if not told:
        tally.missed.append((check, found.name, spoiled[max(0, place.start - 30) : place.end + 30]))


def _turned(pattern: str, new: Callable[[re.Match[str]], str]) -> Callable[[str, random.Random], Spoil | None]:
    """A way to spoil: one place of the pattern, taken at random, written otherwise."""

    def spoil(paragraph: str, rng: random.Random) -> Spoil | None:
        places = list(re.finditer(pattern, paragraph))
        if not places:
            return None
        hit = rng.choice(places)
        words = new(hit)
        return paragraph[: hit.start()] + words + paragraph[hit.end() :], Span(hit.start(), hit.start() + len(words))

    return spoil


SPOILS: tuple[tuple[str, Callable[[str, random.Random], Spoil | None]], ...] = (
    ("mark-spacing", _turned(r"(?<=\w)[,;.] ", lambda hit: f" {hit[0]}")),
    ("mark-spacing", _turned(r"(?<=\w), (?=\w)", lambda _: ",")),
    ("mark-spacing", _turned(r"(?<=\w)\. (?=[A-Z])", lambda _: ".")),
    ("mark-spacing", _turned(r" \((?=\w)", lambda _: " ( ")),
    ("mark-spacing", _turned(r"(?<=\w), (?=\w)", lambda _: ",, ")),
    ("dash", _turned(r"(?<=\w)(?: – |—| — )(?=\w)", lambda _: " - ")),
    ("dash", _turned(r"(?<=[a-z])—(?=[a-z])", lambda _: " —")),
    ("dash", _turned(r"(?<=[a-z])—(?=[a-z])", lambda _: "— ")),
    ("range-hyphen", _turned(r"(?<=\d)–(?=\d)", lambda _: "-")),
    ("mark-unpaired", _turned(r"\)(?=[ ,.])", lambda _: "")),
    ("mark-unpaired", _turned(r"(?<=\w)”(?=[ ,.])", lambda _: "")),
    ("quotation-stop", _turned(r"(?<=\w)[,.]”(?=\s)", lambda hit: hit[0][::-1])),
    ("numeral-opening", _turned(rf"\b(?:{'|'.join(_NUMERALS)})(?= [a-z])", lambda hit: _NUMERALS[hit[0]])),
)
"""The checks, each with a way to make its fault."""
WIDE = frozenset({"mark-unpaired"})
"""Those that tell the other end of the fault."""
RARE = frozenset({"dash", "numeral-opening", "quotation-stop"})
"""Those whose faults can be made at few places."""
