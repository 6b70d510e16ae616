"""Remarks and gaps without a label: what reads like a note to oneself, or like matter still to come.

A bracket with a label is an aside by the house's own rule and never prints (``asides``); these are guessed, so that
they are told, and left as they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fairhand.model.span import Span

_ORDERS = (
    r"(?:add|ask|check|cite|clarify|come back|confirm|cut|delete|expand|explain|fill in|find|finish|fix|insert|look up"
    r"|mention|move|need|needs|put|quote|remember|rephrase|revise|reword|rewrite|say more|say something|see if|shorten"
    r"|source|talk about|tidy|verify|work out|write)"
)
_DOUBTS = (
    r"(?:awkward|citation(?: needed)?|cite|clumsy|evidence|example|maybe|more (?:about|here|on)|not sure|ref|reference"
    r"|right word|source|too \w+|unclear|unsure|vague|weak|wordy)"
)
_POINTING = r"\b(?:here|later|again|this|these|that|another|something|more|better|up|page|source)\b"
_WANTED = (
    r"(?:(?:the )?(?:number|names?|date|year|pages?|page number|page no|author|title|figure|amount|place|quote"
    r"|quotation|statistics?|stat|percentage|percent|word)(?: of [\w ]+)?|[\w ]*\bto come|blank|how (?:many|much)"
    r"|insert \w+|x+|\?+|_+)"
)
_SURE = r"(?:\?\?|!!|\bw/(?=\s)|\bTODO\b|\bnote to self\b|\bcitation needed\b)"
_SQUARE = re.compile(r"\[(?P<inner>[^\[\]\n]{1,300})\](?![(\[:])")
_ROUND = re.compile(r"\((?P<inner>[^()\n]{3,300})\)")
_REMARK = re.compile(rf"\s*(?:{_ORDERS}\b.*|.*{_SURE}.*|.*\w\?[?!]*\s*|{_DOUBTS}\b.*)\Z", re.IGNORECASE | re.DOTALL)
_GAP = re.compile(rf"\s*{_WANTED}\s*[?!.]*\s*\Z", re.IGNORECASE)
_OWN_SENTENCE = re.compile(
    rf"\s*(?:{_ORDERS}\b.*{_POINTING}.*|maybe\b.*|not sure\b.*|more (?:here|on this)\b.*)\Z", re.DOTALL
)
"""In round brackets and small letters, between two sentences."""
_SURELY = re.compile(_SURE, re.IGNORECASE)
_BARE = re.compile(
    r"(?<![^\W\d])(?:[Xx]{2,}(?![\w’'])|(?<=\d)[Xx]{2}(?!\w)|(?<=[\s(\d])\?{2,}|(?<!_)_{3,15}(?![\w_])|(?:TODO|TBD|TBC|FIXME)\b)"
)
_NUMERAL = re.compile(
    r"(?:(?i:\b(?:act|appendix|article|book|cantos?|century|chapters?|chromosomes?|class|factor|legion|letter|no"
    r"|number|ode|olympiad|part|plate|psalm|ps|scene|section|sonnet|song|stanza|title|type|vol|volume))\.?\s+"
    r"|\b(?!Fig|Table|Page)[A-ZÀ-Þ][\w’'.]*\s+|[-–—/&]\s?)\Z"
)
_AFTER_NUMERAL = re.compile(
    r"\s*(?:canto|centur|chromosom|congress|corps|dynasty|females?|games|individuals?|karyotype|legion|males?|olympi|psalm"
    r"|session|[-–—/&,]|(?:and|or|to)\s+X)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Unlabelled:
    """What reads like a remark to oneself, or like a gap."""

    kind: Literal["aside", "matter"]
    span: Span


def find_unlabelled(prose: str) -> Iterator[Unlabelled]:
    """Those in a paragraph of the writer's own prose, in order; quotations and citations are opaque there.

    **Source**: common practice; the wordings are ours.

    >>> [(each.kind, each.span.of(s)) for s in ["He sailed [check this date]."] for each in find_unlabelled(s)]
    [('aside', '[check this date]')]
    >>> [(each.kind, each.span.of(s)) for s in ["Some [number] boats."] for each in find_unlabelled(s)]
    [('matter', '[number]')]
    >>> [(each.kind, each.span.of(s)) for s in ["A crew of XX rowed."] for each in find_unlabelled(s)]
    [('matter', 'XX')]
    >>> list(find_unlabelled("Louis XX, chapter XX, *saudade* [a longing], and so on [3]."))
    []
    """
    taken: list[Unlabelled] = []
    for found in _SQUARE.finditer(prose):
        if _GAP.match(found["inner"]):
            taken.append(Unlabelled("matter", Span(*found.span())))
        elif _REMARK.match(found["inner"]):
            taken.append(Unlabelled("aside", Span(*found.span())))
    for found in _ROUND.finditer(prose):
        inner = found["inner"]
        if _SURELY.search(inner) or (_OWN_SENTENCE.match(inner) and _stands_alone(prose, found.start(), found.end())):
            taken.append(Unlabelled("aside", Span(*found.span())))
    for found in _BARE.finditer(prose):
        span = Span(*found.span())
        if not any(each.span.overlaps(span) for each in taken) and not _is_numeral(prose, span):
            taken.append(Unlabelled("matter", span))
    return iter(sorted(taken, key=lambda each: each.span))


def _stands_alone(prose: str, start: int, end: int) -> bool:
    """Whether a bracket stands between two sentences."""
    before, after = prose[:start].rstrip(), prose[end:].lstrip()
    return (not before or before[-1] in '.!?”"’)\ufffc') and (not after or after[0].isupper() or after[0] in '“"‘')


def _is_numeral(prose: str, span: Span) -> bool:
    """Whether an XX may be the Roman numeral, or the chromosomes."""
    signs = span.of(prose)
    if set(signs) != {"X"} or prose[span.end : span.end + 1] in ("%", "°"):
        return False
    return bool(_NUMERAL.search(prose[: span.start]) or _AFTER_NUMERAL.match(prose, span.end))
