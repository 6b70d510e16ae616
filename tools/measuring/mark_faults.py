"""Made papers that quote, and the same with marks of some quotations set as the manuals do not have them.

The papers are those of ``quotations.py``, whose sentences quote as the manuals say; what is told of a quotation that
was left as it was counts as wrong. About one quotation in ten is spoiled.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable

from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.quotations import make_paper
from measuring.tally import QUOTED, Spoiled, Tally, judge_paper

STYLES = ("mla-9", "apa-7", "chicago-author-date-17")
ONE_IN = 8
_SAYS = r"(?:writes|argues|notes|observes|maintains|reports|explains)"
TURNS: tuple[tuple[str, Callable[[re.Match[str]], str]], ...] = (
    (rf"(?P<led> {_SAYS} that) (?=“)", lambda hit: f"{hit['led']}, "),
    (r"(?<=writes), (?=“[A-Z]\w* [a-z]+ [a-z]+ [a-z]{4,} [a-z]{4,})", lambda _: " "),
    (r"(?<=[a-z]),” (?=[a-z])", lambda _: ";” "),
    (r"(?<=[a-z])[?!]”(?=\s+[A-Z]|\s*\Z)", lambda hit: f"{hit[0]}."),
    (r"(?<=\n> )(?P<block>[^\n]{20,600}?)(?= ?\([^()\n]*\)\n|\n)", lambda hit: f"“{hit['block'].strip()}”"),
)
"""Where a fault can be made, and what stands there then."""


def measure_marks(tally: Tally, papers: int, seed: int = 81) -> None:
    """What the checks of the marks of quotations say of so many made papers."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paper, _ = make_paper(rng, STYLES[number % len(STYLES)])
        text, spoiled = spoil(paper.draft, rng)
        made = Paper("made", text, paper.entries, paper.texts, style=paper.style)
        judge_paper(tally, f"marks {seed}.{number}", made, spoiled, QUOTED)


def spoil(text: str, rng: random.Random) -> tuple[str, list[Spoiled]]:
    """The draft with some marks set otherwise, and their places."""
    hits = sorted(
        ((hit, turn) for pattern, turn in TURNS for hit in re.finditer(pattern, text) if rng.random() < 1 / ONE_IN),
        key=lambda one: one[0].start(),
    )
    out, at, spoiled = "", 0, []
    for hit, turn in hits:
        if hit.start() < at + 2:
            continue
        new = turn(hit)
        out += text[at : hit.start()]
        spoiled.append(Spoiled(QUOTED[0], Span(max(0, len(out) - 1), len(out) + len(new) + 1)))
        out, at = out + new, hit.end()
    return out + text[at:], spoiled
