"""Sentences of academic prose."""

from __future__ import annotations

import re
from functools import lru_cache

from fairhand.model.span import Span

_CARRIES_ON = re.compile(
    r"(?<!\w)(?:pp?|vols?|nos?|ed|eds|trans|ch|chap|chaps|secs?|figs?|tabs?|eqs?|paras?|ll?|nn?|ff|et al|cf|e\.g|i\.e|"
    r"viz|ca?|approx|repr|rpt|qtd|diss|vs|v|Dr|Drs|Prof|Mrs?|Ms|Mx|St|Ste|Mt|Fr|Sr|Sra|Rev|Hon|Gen|Col|Capt|Lt|Sgt|Gov|Sen|Rep|"
    r"Pres|Univ|Dept|Art|App|Ph|M|Mme|Mlle)\.\Z"
)
"""Abbreviations that do not end a sentence: what they abbreviate goes on."""
_MAY_END = re.compile(r"(?<!\w)(?:et al|ed|eds|no|art|app|l|n|ff|v|M|Fr|Sr|Jr|c|p)\.\Z")
_BEFORE_NUMBER = re.compile(
    r"(?<!\w)(?:[Nn]os?|[Aa]rt|[Ff]igs?|[Tt]abs?|[Ee]qs?|[Cc]h|[Aa]pp|[Pp]t|[Bb]k|[Ss]ecs?|[Jj]an|[Ff]eb|[Mm]ar|"
    r"[Aa]pr|[Aa]ug|[Ss]ept?|[Oo]ct|[Nn]ov|[Dd]ec)\.\Z"
)
_INITIAL = re.compile(r"(?<![\w.])(?:[A-Z]\.(?:[ -]?[A-Z]\.){0,3})\Z")
_DOTTED = re.compile(r"(?<!\w)(?:[A-Za-z]\.){2,6}\Z")
_STARTER = re.compile(
    r"[\"“‘'(\[]*(?:The|This|That|These|Those|It|Its|In|On|At|He|She|They|We|I|You|His|Her|Their|Our|A|An|As|But|And|Yet|"
    r"So|For|From|If|When|While|Where|Although|However|How|What|Why|Who|There|Here|Some|Such|Many|Most|No|Not|One|Two|By|"
    r"To|With|After|Before|Because|Since|Then|Thus|Even|Only|Both|Each|All|More|Another|Other)\b"
)
_ELLIPSIS = re.compile(r"(?<![.!?])\s\.\s\.\s\.\Z")
"""Three spaced points; a sentence ends with four."""
_NUMBERING = re.compile(r"[(\[]?(?:\d{1,3}|[A-Za-z]|[ivx]{1,5})[.)\]]{1,2}")
_LOWER = re.compile(r"[\"“‘'(\[*_]{0,4}[a-z]")
_CITED = r"(?:\((?=[^()]{0,200}(?:\d|n\.d\.|n\. d\.|forthcoming))[^()]{1,200}\)|\[\d[\d,;\s–-]{0,40}\])"
_CITATION = re.compile(_CITED + r"[.,;:]?(?=\s|\Z)")
_END_CITED = re.compile(r"(?<=[.!?”\"])\s+" + _CITED + r"(?=\s[\"“‘(\[]?[A-Z])")
_END = re.compile(
    r"(?:[!?…][\"”’')\]»]{0,4}|\.[\"”’')\]»]{1,4}|\.(?=\s+" + _STARTER.pattern + r"))(?=\s)"
    r"|(?<=[a-z)\]”\"])[.!?][”\"]?(?:\d{1,3}|\[\d[\d,–-]{0,20}\])(?=\s[A-Z“\"])"
)
"""Where a sentence may end whatever the splitter thinks of the word before: after a mark that abbreviates nothing,
before a word that opens sentences, after the number of a note."""
_LONGEST_WORD = 1000
"""Beyond this a word is none, and the splitter, whose time grows with its square, is not asked."""
_OPENING = frozenset("([")
_CLOSING = frozenset(")]")


@lru_cache(maxsize=8192)
def split_sentences(text: str) -> tuple[Span, ...]:
    """The sentences of ``text`` in order, none empty and none with blanks at its ends.

    A trained splitter proposes; our own rules then join what it parted at an abbreviation of the trade, at initials,
    before a citation that closes the sentence, within brackets and before a small letter, and part what it left joined.

    **Source**: the splitter's own training for the proposals; the rules are common practice, measured in
    ``tests/outside/test_sentences.py``.

    >>> text = "So says Lind (2019, p. 3). “Water waits.” (Okafor et al. 12). It does."
    >>> [span.of(text) for span in split_sentences(text)]
    ['So says Lind (2019, p. 3).', '“Water waits.” (Okafor et al. 12).', 'It does.']
    """
    from nupunkt import sent_spans

    ends: set[int] = set()
    if max(map(len, text.split()), default=0) <= _LONGEST_WORD:
        ends.update(end for _, end in sent_spans(text))
    ends.update(found.end() for pattern in (_END, _END_CITED) for found in pattern.finditer(text))
    depth = _depths(text)
    spans: list[Span] = []
    start = 0
    last = _trimmed(text, len(text))
    for end in sorted({_trimmed(text, end) for end in ends} | {last}):
        if end < last and not _parts_here(text, start, end, depth):
            continue
        while start < end and text[start].isspace():
            start += 1
        if end > start:
            spans.append(Span(start, end))
            start = end
    return tuple(spans)


def _trimmed(text: str, end: int) -> int:
    """The end without the blanks before it."""
    while end > 0 and text[end - 1].isspace():
        end -= 1
    return end


def _depths(text: str) -> list[int]:
    """How many closed brackets each character stands within; brackets that are never closed do not count."""
    change = [0] * (len(text) + 1)
    waiting: list[int] = []
    for found in re.finditer(r"[()\[\]]", text):
        at = found.start()
        if text[at] in _OPENING:
            waiting.append(at)
        elif waiting:
            change[waiting.pop()] += 1
            change[at] -= 1
    depths, depth = [], 0
    for step in change:
        depth += step
        depths.append(depth)
    return depths


def _parts_here(text: str, start: int, end: int, depths: list[int]) -> bool:
    """Whether a sentence that began at ``start`` ends at ``end``."""
    if depths[end] and text[end - 1] not in _CLOSING:
        return False
    if depths[end - 1] > 1 or (depths[end - 1] and text[end - 1] not in _CLOSING):
        return False
    after = end + len(text[end : end + 200]) - len(text[end : end + 200].lstrip())
    if after == end:
        return False
    before = text[max(start, end - 24) : end]
    if text[after] in ".…" or _LOWER.match(text, after) or _CITATION.match(text, after):
        return False
    if _ELLIPSIS.search(before) or _NUMBERING.fullmatch(text[start:end].strip()):
        return False
    starter = _STARTER.match(text, after) is not None
    if _BEFORE_NUMBER.search(before) and text[after].isdigit():
        return False
    if _CARRIES_ON.search(before) and not (starter and _MAY_END.search(before)):
        return False
    return starter or not (_INITIAL.search(before) or _DOTTED.search(before))
