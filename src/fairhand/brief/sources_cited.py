"""The sheet's wish that every source on the paper's list be cited in the paper."""

from __future__ import annotations

import re
from dataclasses import replace

from fairhand.brief.layout import Sheet
from fairhand.brief.wording import TOLD, ask, force_of, join
from fairhand.model.requirement import Requirement

_LISTED = (
    r"(?:(?:that )?you list|listed|(?:on|in) (?:your|the) (?:\w+ )?(?:list|references|bibliography|works[ -]cited)"
    r"(?: list| page)?)\b"
)
_ALL_CITED = re.compile(
    r"\b(?:all|every|each)\b(?: (?:one|single))?(?: of (?:them|these|those|which|the \w+|your \w+))?"
    r"[^.;:!?]{0,60}?\bcited\b(?! (?:\w+ly|in \w+ (?:style|format|form)|using|according|with|as)\b)"
    rf"|\b(?:everything|anything) {_LISTED}[^.;:!?]{{0,30}}?\bcited\b"
    rf"|\bcite (?:all|every|each|everything)\b[^.;:!?]{{0,30}}?{_LISTED}"
    rf"|\b(?:all|every|each|everything)\b[^.;:!?]{{0,30}}?{_LISTED}[^.;:!?]{{0,20}}\bappear in"
    r" (?:the|your) (?:text|paper|essay)"
    r"|\blist only (?:the )?(?:works?|sources?|texts?)(?: that)?(?: you)?(?: have)? cited?\b"
    r"|\b(?:do not|don't|never) list (?:any )?(?:works?|sources?|texts?|anything)(?: that)? you"
    r" (?:do not|don't|have not) cited?\b",
    re.IGNORECASE,
)
_OF_LIST = re.compile(
    r"\b(?:sources?|references?|works?|items?|entr(?:y|ies)|texts?|them|these|those|which|list|bibliography)\b",
    re.IGNORECASE,
)
_LEFT_FREE = re.compile(r"\b(?:not have to|need not|(?:do not|don't)(?! list| cite| have)|can be)\b", re.IGNORECASE)
_FAR = 120


def ask_all_cited(sheet: Sheet, found: list[Requirement]) -> list[Requirement]:
    """The requirements, the first of them with ``cited``: all where the sheet says so; else one that says only this."""
    for sentence in sheet.sentences:
        match = _ALL_CITED.search(sentence.text)
        if not match or not _OF_LIST.search(match.group()):
            continue
        if TOLD.search(sentence.text) or _LEFT_FREE.search(sentence.text):
            continue
        here = sentence.span(match.start(), match.end())
        if not found:
            bare = {"min": None, "max": None, "type": "any", "since": None, "cited": "all"}
            return [ask(sheet, "sources", bare, here, force_of(sentence.text))]
        first, *rest = found
        span = join(first.span, here) if 0 <= here.start - first.span.end < _FAR else first.span
        values = {**first.values, "cited": "all"}
        return [replace(first, values=values, span=span, evidence=span.of(sheet.text)), *rest]
    return found
