"""Made papers that cite in the form of their style, and the same with a tenth of the citations put into another form.

The papers are those of ``citations.py``; of the forms, those that guides to the manuals warn of. What is said of a
citation that was left as it was counts as wrong.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence

from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from measuring.citations import make_paper
from measuring.tally import Spoiled, Tally, judge_paper

STYLES = ("mla-9", "apa-7", "chicago-author-date-17")
ONE_IN = 10
_CITATION = r"\((?:[^()]*\d[^()]*)\)"
Turn = tuple[str, str, Callable[[re.Match[str]], str]]
TURNS: tuple[Turn, ...] = (
    ("citation-stop", rf" (?P<cite>{_CITATION})\.(?= |\n|\Z)", lambda hit: f". {hit['cite']}"),
    ("citation-stop", rf" (?P<cite>{_CITATION})\.(?= |\n|\Z)", lambda hit: f". {hit['cite']}."),
    ("citation-stop", rf" (?P<cite>{_CITATION}),(?= )", lambda hit: f", {hit['cite']}"),
    ("citation-stop", rf" (?P<cite>{_CITATION})(?= )", lambda hit: f"{hit['cite']}"),
)
"""A check, the place where its fault can be made, and the fault."""


def measure_citation_forms(tally: Tally, papers: int, seed: int = 71) -> None:
    """What the checks of the form of citations say of so many made papers."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        style = STYLES[number % len(STYLES)]
        paper, _ = make_paper(rng, style)
        cited = [mention.span for mention in Analysis(paper, lambda _: None).mentions]
        text, spoiled = spoil(paper.draft, cited, rng)
        made = Paper("made", text, paper.entries, style=style)
        judge_paper(tally, f"forms {seed}.{number}", made, spoiled, CITED)


CITED = ("citation-stop",)


def spoil(text: str, cited: Sequence[Span], rng: random.Random) -> tuple[str, list[Spoiled]]:
    """The draft with about a tenth of its citations in another form, and their places."""
    out, at, spoiled = "", 0, []
    for cite in cited:
        if rng.random() > 1 / ONE_IN or cite.start < at + 2:
            continue
        check, pattern, turn = rng.choice(TURNS)
        hit = re.compile(pattern).match(text, cite.start - 1) if text[cite.start] == "(" else None
        if hit is None:
            continue
        out += text[at : hit.start()]
        new = turn(hit)
        spoiled.append(Spoiled(check, Span(len(out), len(out) + len(new))))
        out, at = out + new, hit.end()
    return out + text[at:], spoiled
