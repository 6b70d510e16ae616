"""Made papers that cite in the form of their style, and the same with some citations put into another form.

The papers are those of ``citations.py``; of the forms, those that guides to the manuals warn of. What is said of a
citation that was left as it was counts as wrong. Stops are spoiled at a tenth of the citations, names wherever a
sentence has several; the form of a citation, of which a check speaks once a paper, at one place in every other paper.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from fairhand.copyedit.form.page_ranges import misset_ranges
from fairhand.language.folding import fold
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from measuring.citations import make_paper
from measuring.tally import Spoiled, Tally, judge_paper

CITED = ("citation-stop", "citation-names", "citation-form")
STYLES = ("mla-9", "apa-7", "chicago-author-date-17")
ONE_IN = 10
_CITATION = r"\((?:[^()]*\d[^()]*)\)"


@dataclass(frozen=True, slots=True)
class Turn:
    """A fault: where it can be made, around or in a citation, and what stands there then."""

    check: str
    pattern: str
    new: Callable[[re.Match[str]], str]
    styles: tuple[str, ...] = STYLES


def _to(words: str) -> Callable[[re.Match[str]], str]:
    return lambda _: words


TURNS = (
    Turn("citation-stop", rf" (?P<cite>{_CITATION})\.(?= |\n|\Z)", lambda hit: f". {hit['cite']}"),
    Turn("citation-stop", rf" (?P<cite>{_CITATION})\.(?= |\n|\Z)", lambda hit: f". {hit['cite']}."),
    Turn("citation-stop", rf" (?P<cite>{_CITATION}),(?= )", lambda hit: f", {hit['cite']}"),
    Turn("citation-stop", rf" (?P<cite>{_CITATION})(?= )", lambda hit: hit["cite"]),
    Turn("citation-names", r"(?<=\w) and (?=\w+ \(\d{4})", _to(" & "), STYLES[1:]),
    Turn("citation-names", r"et al\.(?= \(\d{4})", _to("et al"), STYLES[1:]),
    Turn("citation-names", r"et al\.(?= \(\d{4})", _to("et. al."), STYLES[1:]),
)
FORMS = (
    Turn("citation-form", r"(?<=[a-z]) (?=\d{1,3}\))", _to(", "), ("mla-9",)),
    Turn("citation-form", r"(?<=[a-z] )(?=\d{1,3}\))", _to("p. "), ("mla-9",)),
    Turn("citation-form", r"(?<=[a-z]), (?=\d{4}[,)])", _to(" "), ("apa-7",)),
    Turn("citation-form", r"(?<= )& (?=\w+, \d{4})", _to("and "), ("apa-7",)),
    Turn("citation-form", r"(?<=\d, )p\. (?=\d)", _to(""), ("apa-7",)),
    Turn("citation-form", r"(?<=\d, )p\. (?=\d)", _to("pp. "), ("apa-7",)),
    Turn("citation-form", r"(?<=[a-z]) (?=\d{4}[,)])", _to(", "), ("chicago-author-date-17",)),
    Turn("citation-form", r"(?<=\d{4}, )(?=\d{1,3}\))", _to("p. "), ("chicago-author-date-17",)),
)


def measure_citation_forms(tally: Tally, papers: int, seed: int = 71) -> None:
    """What the checks of the form of citations say of so many made papers."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        style = STYLES[number % len(STYLES)]
        paper, _ = make_paper(rng, style)
        paper = replace(paper, draft=_in_form(paper.draft, style))
        cited = [mention.span for mention in Analysis(paper, lambda _: None).mentions]
        text, spoiled = _spoil(paper.draft, cited, style, rng)
        _hear(tally, f"stops {seed}.{number}", paper, text, spoiled, CITED[:2])
        text, spoiled = _turn_once(paper.draft, cited, style, rng) if rng.random() < 1 / 2 else (paper.draft, [])
        _hear(tally, f"forms {seed}.{number}", paper, text, spoiled, CITED[2:])


def _in_form(text: str, style: str) -> str:
    """The draft with its ranges shortened and its pairs of works in order, as the manual has both."""
    manual = style.partition("-")[0]
    for typed, right in misset_ranges(text, manual):
        text = text.replace(typed, right)
    pair = re.compile(r"\((?P<first>[^();]+); (?P<second>[^();]+)\)")

    def ordered(hit: re.Match[str]) -> str:
        works = sorted((hit["first"], hit["second"]), key=lambda work: fold(re.sub(r"^(?:\w\. )+", "", work)))
        return f"({works[0]}; {works[1]})" if style == "apa-7" else hit[0]

    return pair.sub(ordered, text)


def _hear(tally: Tally, name: str, paper: Paper, text: str, spoiled: Sequence[Spoiled], named: Sequence[str]) -> None:
    judge_paper(tally, name, Paper("made", text, paper.entries, style=paper.style), spoiled, named)


def _spoil(text: str, cited: Sequence[Span], style: str, rng: random.Random) -> tuple[str, list[Spoiled]]:
    """The draft with about a tenth of its citations in another form, and their places."""
    out, at, spoiled = "", 0, []
    turns = [turn for turn in TURNS if style in turn.styles]
    for cite in cited:
        turn = rng.choice(turns)
        if rng.random() > (1 if turn.check == "citation-names" else 1 / ONE_IN) or cite.start < at + 2:
            continue
        hit = re.compile(turn.pattern).search(text, cite.start - 1, min(cite.end + 2, len(text)))
        if hit is None or (text[cite.start] == "(") != (turn.check == "citation-stop"):
            continue
        out += text[at : hit.start()]
        new = turn.new(hit)
        spoiled.append(Spoiled(turn.check, Span(len(out) - 1, len(out) + len(new))))
        out, at = out + new, hit.end()
    return out + text[at:], spoiled


def _turn_once(text: str, cited: Sequence[Span], style: str, rng: random.Random) -> tuple[str, list[Spoiled]]:
    """The draft with one citation typed otherwise."""
    turn = rng.choice([turn for turn in FORMS if style in turn.styles])
    pattern = re.compile(turn.pattern)
    hits = [hit for cite in cited if text[cite.start] == "(" and (hit := pattern.search(text, cite.start, cite.end))]
    if not hits:
        return text, []
    hit = rng.choice(hits)
    new = turn.new(hit)
    return text[: hit.start()] + new + text[hit.end() :], [
        Spoiled(turn.check, Span(hit.start() - 1, hit.start() + len(new) + 1))
    ]
