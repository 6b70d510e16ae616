"""Claims that want a source: figures and findings that nothing near them vouches for.

**Source**: what needs a citation: MLA Handbook 9, 4.5–4.7; Publication Manual of the APA 7, 8.1; Chicago Manual of
Style 17, 13.1–13.5 (from memory). How far a citation reaches, and what is a figure worth a source, are our own rules,
set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations, pairwise
from typing import Literal

from fairhand.model.span import Span
from fairhand.revision.body import BodyParagraph, Cited, Sentence
from fairhand.revision.figures import Figure, list_figures, said_as
from fairhand.revision.holding import FEWEST_SHARED, Fact, HeldSentence, Holdings

Why = Literal["no-source", "not-held", "finding"]
"""Nothing is cited near it; what is cited last does not have it; it reports research and names none."""

_Vouched = Mapping[float, Sequence[Fact]]
LEAST_QUIET = 3
"""A smaller number is in too many sentences."""
FEWEST_SHARED_QUIET = 4
"""Telling words that a sentence with a small number, or a date, must share with the source that states it."""
BACK = 3
"""Sentences over which a citation reaches forward, where its source's text is not at hand."""
AHEAD = 2
"""Sentences over which a closing citation reaches back."""
LOUD = ("share", "money", "count")
"""Kinds of figures that want a source."""
_DONE = (
    r"(?:\w+ed|ask|find|found|chose|count|built|take|took|run|ran|made|gave|show|see|saw|present|report|describe|use"
    r"|compare|examine|analy[sz]e|apply|measure|test|identify|propose|estimate|calculate|focus|study|have \w+(?:ed|wn"
    r"|nd))"
)
OWN = re.compile(
    rf"\b(?:I|my|myself|[Ww]e (?:\w+ly |then |also |first |now |here ){{0,2}}{_DONE}"
    r"|[Oo]ur (?:\w+ ){0,3}(?:own|surveys?|samples?|data|results?|experiments?|interviews?|respondents|participants"
    r"|questionnaires?|study|analys[ei]s|team|group|findings|models?|measurements?|work|approach)"
    r"|(?:[Tt]his|[Tt]he (?:present|current)|[Tt]hese) (?:paper|essay|study|survey|section|experiments?|results|data)"
    r"|(?:[Tt]he|[Oo]ur) (?:sample|survey|questionnaire|interviews?) (?:consisted|comprised|included|was|were|had)"
    r"|(?:[Tt]able|[Ff]igure|[Ff]ig\.|[Aa]ppendix) [\dA-Z]+)\b"
    r"|\b[nNpMrtFzd] ?[=<>≤≥±] ?\d|\bSD ?="
)
"""The writer's own counting and reckoning, and what a table or figure of the paper shows."""
_ASKED = re.compile(
    r"\b(?:respondents?|participants|interviewees|of (?:them|those|these)|agreed|answered|said)\b", re.IGNORECASE
)
_FIRST_PERSON = re.compile(r"\b(?:I|my|we|our)\b")
"""A paragraph in the first person tells of the writer's own asking."""
_SUPPOSES = re.compile(
    r"\b(?:[Ii]f|[Ss]uppose|[Ii]magine|[Ss]ay|[Aa]ssum(?:e|ing)|[Ll]et|would|could|might|should|must|ought|[Pp]erhaps"
    r"|[Tt]ogether"
    r"|[Ii]n all|[Aa]ltogether|works? out|the difference|in other words|[Tt]hat is)\b"
)
_RECKONS = re.compile(
    r"\b(?:[Ii]t|[Tt]his|[Tt]hat|[Tt]hese|[Tt]hose|[Ww]hich) (?:(?:then|thus|therefore|so|already|all) )?"
    r"(?:comes?|amounts?|adds? up|sums?(?: up)?|works? out) (?:to|at)\b|\b[Aa]t (?:that|this) (?:rate|price)\b"
)
"""How what was just given is reckoned further, now and for a case of the writer's own: *on ten tons it comes to*."""
_IMAGINES = re.compile(r"(?:Imagine|Suppose|Picture|Consider|Say|Let us (?:imagine|suppose|say))\b")
"""How a passage opens that makes up its own case."""
_ATTRIBUTED = re.compile(
    r"\b(?:[Aa]ccording to|[Ii]n the words of|as (?:noted|mentioned|shown|seen|stated|discussed) (?:above|earlier"
    r"|before))\b"
)
_IDIOM = re.compile(
    r"\b(?:100|(?:a |one )?hundred)[ -]?(?:%|per ?cent)|\b(?:a|one) (?:hundred|thousand|million) (?:times|reasons"
    r"|years|ways|miles)"
    r"|\b(?:24|twenty-four) hours|\b365 days|\b(?:fifty|50) states|\b(?:one |a )?half of (?:the story|it|an? \w+)\b",
    re.IGNORECASE,
)
_REPORTS = re.compile(
    r"\b(?:(?:[Ss]tud(?:y|ies)|[Rr]esearch|[Rr]esearchers|[Ss]cientists|[Ee]xperts|[Pp]sychologists|[Ee]conomists"
    r"|[Ss]urveys?|[Pp]olls?"
    r"|[Ss]tatistics|[Ee]xperiments)(?: (?:have|has|had|also|now|clearly|consistently|repeatedly|recently)){0,2} "
    r"(?:shows?|shown|showed|finds?|found|prove[sdn]?|demonstrate[sd]?|reveal(?:s|ed)?|confirm(?:s|ed)?|indicate[sd]?"
    r"|suggest(?:s|ed)?|agree)"
    r"|[Ii]t (?:has been|is) (?:scientifically )?(?:proven|proved|shown|demonstrated)) that\b"
)
_SAME_MATTER = re.compile(r"\b(?:[Tt]his|[Tt]hese|[Ss]uch|[Tt]hose|[Oo]f (?:it|them))\b")
_POINTS_BACK = re.compile(
    r"(?:This|That|These|Those|It|Its|They|Their|Them|Such|He|She|His|Her|Both|Neither|Most|Some|Many|Others?|Another"
    r"|Only"
    r"|By contrast|In contrast|In comparison|Meanwhile|Moreover|Furthermore|In addition|Additionally|Similarly"
    r"|Likewise|Yet|But"
    r"|However|Of (?:these|those|them)|Nearly all|All of)\b"
)
"""How a sentence opens that carries the one before it on."""
_METHOD = re.compile(
    r"(?:\d+[.)]?\s*)?(?:materials and )?(?:methods?|methodology|results|findings|data|procedure|survey"
    r"|participants)\b.*",
    re.IGNORECASE,
)
_BEFORE_METHOD = re.compile(
    r"(?:\d+[.)]?\s*)?(?:introduction|background|literature review|theory|context|previous research)\b.*", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Unsupported:
    """A claim that wants a source."""

    span: Span
    """The sentence."""
    what: str
    """The figure, or the words that report a finding."""
    why: Why
    cited: str | None = None
    """Id of the source that is cited last before it and does not have it."""
    stands: HeldSentence | None = None
    """Where a source on the list states it."""


def find_unsupported(body: Sequence[BodyParagraph], holdings: Holdings) -> Iterator[Unsupported]:
    """Each claim of the body that wants a source, in order; none in a paper that cites nothing at all.

    Args:
        body: The paragraphs that argue.
        holdings: The sources, as far as their texts are at hand.
    """
    if not any(paragraph.cites for paragraph in body):
        return
    vouched = _vouched(body)
    is_study = any(_METHOD.fullmatch(paragraph.section) for paragraph in body)
    for paragraph in body:
        if is_study and not _BEFORE_METHOD.fullmatch(paragraph.section):
            continue
        for at, sentence in enumerate(paragraph.sentences):
            if sentence.cites or sentence.named or not sentence.own.strip():
                continue
            found = _judge(paragraph.sentences, at, holdings, vouched)
            if found is not None:
                yield found


def _vouched(body: Sequence[BodyParagraph]) -> _Vouched:
    """What the sentences state that cite something, by their figures."""
    stated: dict[float, list[Fact]] = {}
    for paragraph in body:
        for sentence in paragraph.sentences:
            if sentence.cites:
                fact = Fact(sentence.own, list_figures(sentence.own))
                for figure in fact.figures:
                    for value in said_as(figure):
                        stated.setdefault(round(value, 6), []).append(fact)
    return stated


def _is_said_again(figure: Figure, about: frozenset[str], vouched: _Vouched) -> bool:
    """Whether a sentence that cites something has given the figure, of the same matter."""
    shared = 0 if figure.is_telling else FEWEST_SHARED
    return any(
        len(fact.stems & about) >= shared for value in said_as(figure) for fact in vouched.get(round(value, 6), ())
    )


def _judge(sentences: Sequence[Sentence], at: int, holdings: Holdings, vouched: _Vouched) -> Unsupported | None:
    own = sentences[at].own
    if _needs_none(own) or any(_makes_up(sentence.own) for sentence in sentences[:at]):
        return None
    if _ASKED.search(own) and any(_FIRST_PERSON.search(sentence.own) for sentence in sentences):
        return None
    figures = [figure for figure in list_figures(own) if not _IDIOM.search(own)]
    about = Fact(own, ()).stems
    spans_of_time = {figure.value for figure in figures if figure.kind == "small"}
    loud = [
        figure
        for figure in figures
        if figure.kind in LOUD
        and not _is_said_again(figure, about, vouched)
        and not (figure.kind == "count" and figure.value in spans_of_time)
    ]
    if loud and not _SUPPOSES.search(own) and not _is_reckoned(sentences, at, loud):
        return _judge_figures(sentences, at, Fact(own, tuple(loud)), holdings)
    quiet = [figure for figure in figures if figure.kind not in LOUD and figure.value > LEAST_QUIET]
    if quiet and not loud:
        return _judge_quiet(sentences, at, Fact(own, tuple(quiet)), holdings) or _judge_report(sentences, at)
    return _judge_report(sentences, at)


@lru_cache(maxsize=16384)
def _needs_none(own: str) -> bool:
    """Whether a sentence asks, attributes, or tells of the writer's own counting."""
    asks = own.rstrip().endswith("?") or "§" in own
    return asks or OWN.search(own) is not None or _ATTRIBUTED.search(own) is not None


@lru_cache(maxsize=16384)
def _makes_up(own: str) -> bool:
    return _IMAGINES.match(own.lstrip()) is not None


@lru_cache(maxsize=16384)
def _reports(own: str) -> str:
    """The words with which a sentence reports research; empty where it reports none."""
    found = _REPORTS.search(own)
    return found.group() if found else ""


def _judge_figures(sentences: Sequence[Sentence], at: int, fact: Fact, holdings: Holdings) -> Unsupported | None:
    before = _before(sentences, at)
    after = _after(sentences, at)
    told = [holdings.holds(cited.entry, fact, cited.pages) for cited, _ in (*before, *after)]
    if any(told):
        return None
    near = [
        holds_it
        for (_, distance), holds_it in zip((*before, *after), told, strict=True)
        if holds_it is None and -AHEAD <= distance <= BACK
    ]
    if near:
        return None
    what = fact.figures[0].span.of(fact.text).strip()
    last = before[-1][0].entry if before else None
    cited = last if last is not None and told[len(before) - 1] is False else None
    return Unsupported(sentences[at].span, what, "not-held" if cited else "no-source", cited, holdings.find(fact))


def _judge_quiet(sentences: Sequence[Sentence], at: int, fact: Fact, holdings: Holdings) -> Unsupported | None:
    """A date, a length of time or a small number, where a source that the paragraph does not cite states it all."""
    cited = {one.entry for sentence in sentences for one in sentence.cites}
    if None in cited:
        return None
    around = {entry for sentence in sentences for entry in sentence.named} | {one for one in cited if one}
    if not around or any(holdings.holds(one, fact) is not False for one in around):
        return None
    stands = holdings.find(fact, around)
    if stands is None or len(fact.stems & stands.stems) < max(FEWEST_SHARED_QUIET, len(fact.stems) / 2):
        return None
    what = fact.figures[0].span.of(fact.text).strip()
    return Unsupported(sentences[at].span, what, "no-source", None, stands)


def _judge_report(sentences: Sequence[Sentence], at: int) -> Unsupported | None:
    found = _reports(sentences[at].own)
    if not found:
        return None
    if any(sentence.cites or sentence.named for sentence in sentences[max(0, at - 1) :]):
        return None
    return Unsupported(sentences[at].span, found, "finding")


def _before(sentences: Sequence[Sentence], at: int) -> list[tuple[Cited, int]]:
    """What the nearest sentence before it cites or names, with how many sentences back."""
    for back in range(1, at + 1):
        sentence = sentences[at - back]
        if sentence.cites or sentence.named:
            named = [Cited(entry, "", opens=True) for entry in sentence.named]
            chain = sentences[at - back : at + 1]
            apart = back if all(_carries_on(one, other) for one, other in pairwise(chain)) else back + BACK
            return [(cited, apart) for cited in (*named, *sentence.cites)]
    return []


def _after(sentences: Sequence[Sentence], at: int) -> list[tuple[Cited, int]]:
    """What the nearest sentence after it cites at its close, with how many sentences on, as a number below nought."""
    for on in range(1, AHEAD + 1):
        if at + on >= len(sentences):
            break
        sentence = sentences[at + on]
        if sentence.cites:
            apart = on if _carries_on(sentences[at], sentence) else on + AHEAD
            led = {cited.entry for cited in sentence.cites if cited.opens}
            return [(cited, -apart) for cited in sentence.cites if cited.entry is None or cited.entry not in led]
        if sentence.named:
            break
    return []


def _carries_on(sentence: Sentence, following: Sentence) -> bool:
    """Whether a sentence speaks of the same matter as the one before it."""
    if _POINTS_BACK.match(following.own.lstrip()) or _SAME_MATTER.search(following.own):
        return True
    return bool(Fact(sentence.own, ()).stems & Fact(following.own, ()).stems)


def _is_reckoned(sentences: Sequence[Sentence], at: int, loud: Sequence[Figure]) -> bool:
    """Whether the figures can be reckoned from those given before, or are said to be: a sum, a product, a ratio."""
    given = [figure.value for sentence in sentences[:at] for figure in list_figures(sentence.own)][-12:]
    if given and _RECKONS.search(sentences[at].own):
        return True
    for figure in loud:
        reckoned = [r for a, b in combinations(given, 2) for r in _reckon(a, b)]
        if not any(abs(value - figure.value) <= 0.005 * max(abs(figure.value), 1e-9) for value in reckoned):
            return False
    return True


def _reckon(a: float, b: float) -> Iterator[float]:
    yield from (a + b, abs(a - b), a * b)
    if a and b:
        yield from (a / b, b / a, abs(a - b) / a, abs(a - b) / b)
