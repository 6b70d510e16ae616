"""The layout of a sheet: its passages and sentences, each under the heading and the key that govern it."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import islice
from typing import Literal

from fairhand.brief.lines import GAP, Block, read_blocks
from fairhand.model.span import Span

_RUN = re.compile(r"[^\s.…|`*]+")
_SPACE = re.compile(r"\s+")
_PLAIN = str.maketrans({"–": "-", "‐": "-", "‑": "-", "−": "-", "’": "'", "‘": "'", "“": '"', "”": '"', "\u00a0": " "})
_KEY = re.compile(r"([A-Z0-9][\w '/&-]{0,40}(?: \([^()]{1,20}\))?)(?:: ?|\t| [-—] )(?=[^\d\s]|(?<=[\s\t])\S)")
_RUN_IN = re.compile(r"([A-Z][\w'/&-]*(?: [\w'/&-]+){0,2})[.?] (?=[A-Z0-9])")
_ANSWERED = re.compile(r"(?P<question>[^?]{1,80}\?(?: [^?]{1,40}\?)?) (?:A|Answer)[:.)] (?=\S)")
"""A question and its answer on one line; the question is the answer's label."""
_WEIGHED = re.compile(r"\(?\d+ ?(?:%|points?|marks?|pts)\)?$")
_TOTALLED = re.compile(r"(?:grading|rubric|marks|points|assessment|evaluation|criteria|total)\b", re.IGNORECASE)
_MEASURED = re.compile(r"\d[- ]?(?:words?|pages?|pt|point|sources?|inch|cm|%|marks|am|pm)\b|,[^,]*,", re.IGNORECASE)
_ABBREVIATION = re.compile(
    r"(?:\b(?:e\.g|i\.e|Dr|Mr|Mrs|Ms|Prof|St|No|Nos|vol|pp?|approx|eds?|pt|vs|ca?|[Mm]ax|[Mm]in|[Ee]xcl|[Ii]ncl|cf"
    r"|etc|Sept?|Oct|Nov|Dec"
    r"|Jan|Feb|Mar|Apr|Aug|Mon|Tues?|Wed|Thur?s?|Fri|Sat|Sun)"
    r"|\b[A-Z])\.$"
)
_END = re.compile(r"[.?!][\"')\]]{0,2}\s(?=[\"'(\[]{0,2}[A-Z0-9~•])")

PassageKind = Literal["heading", "item", "row", "prose"]


@dataclass(frozen=True)
class Passage:
    """A heading, an item of a list, a row of a table, or a paragraph."""

    text: str
    """Its words on one line: typewriter quotes, hyphens for short dashes, a tab between the cells of a row."""
    at: tuple[int, ...]
    """The place in the sheet of each character of ``text``."""
    kind: PassageKind
    indent: int
    heading: str = ""
    """The heading that it stands under."""
    lead: str = ""
    """The words, ended by a colon, that introduce it."""
    key: str = ""
    """Its own label (``Length: …``)."""
    body: int = 0
    """Where the words after the label begin, in ``text``."""
    lines: tuple[str, ...] = ()
    """Its lines as they stand."""
    marker: str = ""
    apart: bool = False
    """Whether it speaks of something other than this paper."""

    @property
    def weighed(self) -> bool:
        """Whether it is a row of a rubric: a cell holds nothing but a weight."""
        if self.kind != "row":
            return False
        cells = [cell.strip() for cell in self.text.split("\t")]
        return any(_WEIGHED.fullmatch(cell) for cell in cells) or (len(cells) > 2 and cells[-1].isdigit())

    @property
    def context(self) -> str:
        """Heading, lead and key, in lower case."""
        return f"{self.heading} | {self.lead} | {self.key}".lower()

    def span(self, start: int, end: int) -> Span:
        """The place in the sheet of a stretch of ``text``; blanks at its ends are left out."""
        while start < end and self.text[start] in " \t":
            start += 1
        while end > start and self.text[end - 1] in " \t":
            end -= 1
        if start >= end:
            return Span(self.at[0], self.at[0])
        return Span(self.at[start], self.at[end - 1] + 1)


@dataclass(frozen=True)
class Sentence:
    """One sentence of a passage."""

    text: str
    start: int
    """Where it begins in the passage's text."""
    passage: Passage
    following: str = ""
    """The rest of the passage."""

    @property
    def context(self) -> str:
        """What its passage stands under, in lower case."""
        return self.passage.context

    def span(self, start: int, end: int) -> Span:
        """The place in the sheet of a stretch of the sentence; it may run on into ``following``."""
        return self.passage.span(self.start + start, self.start + end)

    @property
    def key(self) -> str:
        """Its own label ("Sources: at least four"), else that of its passage."""
        match = _KEY.match(self.text) if self.start else None
        return match[1] if match and ":" in match.group() else self.passage.key

    @property
    def on(self) -> str:
        """The sentence and the rest of its passage."""
        return self.text + self.following


@dataclass(frozen=True, eq=False)
class Sheet:
    """One assignment sheet, laid out."""

    name: str
    text: str
    passages: tuple[Passage, ...]
    sentences: tuple[Sentence, ...]
    title: str
    """Its first headings."""
    given: dt.date | None = None
    """The day on which it was given out, from which its dates and years are counted."""

    @cached_property
    def _places(self) -> dict[int, int]:
        return {id(sentence): i for i, sentence in enumerate(self.sentences)}

    def sentences_after(self, sentence: Sentence, within: int) -> Iterator[Sentence]:
        """The sentences of the same passage that begin after this one, within so many characters of its beginning."""
        for other in islice(self.sentences, self._places[id(sentence)] + 1, None):
            if other.passage is not sentence.passage or other.start - sentence.start >= within:
                return
            yield other


def _squeeze(text: str, block: Block) -> tuple[str, tuple[int, ...]]:
    characters: list[str] = []
    places: list[int] = []
    for line in block.lines:
        if characters and characters[-1] not in " \t":
            characters.append(" ")
            places.append(line.start - 1 if line.start else 0)
        at = line.start
        while at < line.end:
            gap = GAP.match(text, at, line.end) if line.gap >= 0 else None
            if gap and gap.end() > at and characters:
                character, step = "\t", gap.end() - at
            elif run := _RUN.match(text, at, line.end):
                characters.extend(run.group().translate(_PLAIN))
                places.extend(range(at, run.end()))
                at = run.end()
                continue
            elif blank := _SPACE.match(text, at, line.end):
                character, step = " ", blank.end() - at
            elif text[at] in "`*":
                character, step = "", 1
            else:
                character, step = text[at].translate(_PLAIN), 1
            if character and not (character in " \t" and characters and characters[-1] in " \t"):
                characters.append(character)
                places.append(at)
            at += step
    return "".join(characters), tuple(places)


def _split_key(passage: Passage) -> Passage:
    text = passage.text
    match = _KEY.match(text)
    if match and match.end() < len(text):
        return replace(passage, key=match[1], body=match.end())
    if passage.marker[:1] in {"Q", "q"} and (match := _ANSWERED.match(text)):
        return replace(passage, key=match["question"], body=match.end())
    match = _RUN_IN.match(text)
    return replace(passage, key=match[1]) if match else passage


def _shape(marker: str) -> str:
    """What a clause's number or letter has in common with its fellows' ("2." and "3.", "(a)" and "(b)")."""
    return re.sub(r"[ivx]+|[a-z]|\d+", "1", marker.lower()) if any(c.isalnum() for c in marker) else ""


def _is_labelled(text: str) -> bool:
    """Whether a line is a label and what it holds ("Due: Friday"), as in the head of a form."""
    match = _KEY.match(text)
    return match is not None and ":" in match.group()


def _is_heading(blocks: list[Block], texts: list[str], i: int) -> bool:
    block, text = blocks[i], texts[i]
    if len(block.lines) > 1 or i + 1 >= len(blocks) or not text or "\t" in text:
        return False
    line, after = block.lines[0], blocks[i + 1]
    following = after.lines[0]
    if line.marker.startswith("#"):
        return True
    if _is_labelled(text) and not line.shouted and (_is_labelled(texts[i - 1]) or _is_labelled(texts[i + 1])):
        return False
    if len(text) > 75 or len(text.split()) > 11 or text[-1] in ".,;!" or text[0].islower():
        return False
    if line.marker.lower().startswith("q"):
        return text.endswith("?")
    if line.shouted and not line.marker:
        return True
    bulleted = bool(line.marker) and not line.marker[0].isalnum() and line.marker[0] != "("
    if bulleted:
        return not following.marker and following.indent > line.indent and after.after_blank
    if line.marker:
        if not block.after_blank and blocks[i - 1].lines[0].marker:
            return False
        return not following.marker and (following.indent > line.indent or len(texts[i + 1]) > len(text))
    if text.endswith(":"):
        return bool(_TOTALLED.match(text)) or not _MEASURED.search(text)
    if following.marker or following.indent > line.indent:
        return following.indent >= line.indent
    if (
        (_MEASURED.search(text) and not _TOTALLED.match(text))
        or not (block.after_blank or len(texts[i - 1]) > 75 or (len(text) < 25 and texts[i - 1][-1:] in ".?!)"))
        or len(text.split()) > 9
        or (_WEIGHED.search(text) and not _TOTALLED.match(text))
    ):
        return False
    return len(texts[i + 1]) > 75 or (
        not after.after_blank and (bool(_TOTALLED.match(text)) or not any(c.isdigit() for c in text))
    )


@lru_cache(maxsize=16)
def _read_passages(text: str) -> tuple[Passage, ...]:
    blocks = read_blocks(text)
    squeezed = [_squeeze(text, block) for block in blocks]
    texts = [words for words, _ in squeezed]
    passages: list[Passage] = []
    heading, heading_indent, child_indent = "", -1, -1
    lead, lead_indent, lead_marker = "", -1, ""
    column, column_key = -1, ""
    for i, block in enumerate(blocks):
        words, places = squeezed[i]
        if not words.strip():
            continue
        first = block.lines[0]
        if column >= 0 and first.indent < column - 2:
            column, column_key = -1, ""
        kind: PassageKind = "row" if "\t" in words else "item" if first.marker else "prose"
        if _is_heading(blocks, texts, i):
            kind, heading, lead, column = "heading", words, "", -1
            heading_indent, child_indent = first.indent, -1
        elif child_indent < 0:
            child_indent = first.indent
        elif heading_indent <= first.indent < child_indent and kind == "prose" and block.after_blank:
            # An indented section is over where the text comes back to the margin.
            heading = ""
        if lead_marker and first.indent <= lead_indent and _shape(first.marker) == lead_marker:
            # The next clause of the same level is no longer introduced by the one before.
            lead = ""
        if lead and kind == "prose" and block.after_blank and passages[-1].text != lead:
            lead = ""
        passage = Passage(
            text=words,
            at=places,
            kind=kind,
            indent=first.indent,
            heading=column_key or heading,
            lead=lead if first.indent >= lead_indent else "",
            lines=tuple(line.text for line in block.lines),
            marker=first.marker,
        )
        passage = _split_key(passage) if kind != "heading" else passage
        passages.append(passage)
        if kind == "row" and passage.key and column < 0:
            column, column_key = first.column, passage.key
        if words.endswith(":"):
            lead, lead_indent, lead_marker = words, first.indent, _shape(first.marker)
        elif kind == "prose":
            lead, lead_indent, lead_marker = "", -1, ""
    return tuple(passages)


@lru_cache(maxsize=1024)
def split_sentences(text: str) -> tuple[tuple[int, int], ...]:
    """The sentences of a passage as half-open intervals.

    >>> [("Due at 5 p.m. Bring it."[a:b]) for a, b in split_sentences("Due at 5 p.m. Bring it.")]
    ['Due at 5 p.m.', 'Bring it.']
    """
    out = []
    start = 0
    for match in _END.finditer(text):
        end = match.end() - 1
        if _ABBREVIATION.search(text[max(start, end - 12) : end]):
            continue
        out.append((start, end))
        start = match.end()
    if start < len(text):
        out.append((start, len(text)))
    return tuple(out)


def sentences_of(passage: Passage) -> list[Sentence]:
    """The sentences of one passage, its label with the first; the cells of a row are parted by a blank.

    A label that is a question asks nothing of the paper, and is no sentence of it.
    """
    text = passage.text.replace("\t", " ")
    first = passage.body if passage.key.endswith("?") else 0
    spans = ((start + first, end + first) for start, end in split_sentences(text[first:]))
    return [Sentence(text[start:end], start, passage, text[end:]) for start, end in spans]


def read_sheet(name: str, text: str, given: dt.date | None = None) -> Sheet:
    """The layout of one sheet; any text is some sheet."""
    passages = _read_passages(text)
    return Sheet(
        name=name,
        text=text,
        passages=passages,
        sentences=tuple(s for p in passages if p.kind != "heading" for s in sentences_of(p)),
        title=" / ".join(p.text for p in passages[:3] if p.kind == "heading" or len(p.text) < 90),
        given=given,
    )
