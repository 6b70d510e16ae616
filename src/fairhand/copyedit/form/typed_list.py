"""The list of works where the writer typed it in the draft: its title, its order, and what of it the text cites.

The fair copy makes the list from the sources and leaves the typed one out; only where the paper has no sources does it
print what was typed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from fairhand.citing.names import acronyms, bare_surname, name_key, name_words
from fairhand.language.folding import fold
from fairhand.manuscript.parts import Block, Manuscript
from fairhand.manuscript.sections import named_sections
from fairhand.model.entry import Entry
from fairhand.model.span import Span

_DATED = re.compile(r"\b(?:1[4-9]|20)\d\d[a-z]?\b|\bn\.\s?d\.|\bin press\b|\bforthcoming\b", re.IGNORECASE)
_MARKS = re.compile(r"^[\s*_\"“‘'\[]+")
_ARTICLE = re.compile(r"^(?:an?|the)\s+", re.IGNORECASE)
_AGAIN = re.compile(r"^\s*[-—–_]{2,}")
_LEAD = re.compile(r"[^,.(\[]+")
_NUMBERED = re.compile(r"^\s*(?:\[\d+\]|\d+[.)])\s")
_TITLE_WORDS = 3
"""Words of a title by which a work is known again."""


@dataclass(frozen=True, slots=True)
class TypedWork:
    """One work of the list, as it was typed."""

    span: Span
    lead: str
    """What it begins with: a surname, a body's name, or a title without its article."""
    titled: bool
    """Whether that is a title."""
    again: bool
    """Whether a dash stands for the author before."""


@dataclass(frozen=True, slots=True)
class TypedList:
    """The list as it was typed."""

    heading: Block
    title: str
    works: tuple[TypedWork, ...]
    numbered: bool


def read_typed_list(manuscript: Manuscript) -> TypedList | None:
    r"""The list of works that is typed under a heading of its own, or None; what bears no date is no work.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# T\n\n## Works Cited\n\nAbel, Carl. *Tides*. Mole, 2001.")
    >>> [work.lead for work in read_typed_list(draft).works]
    ['Abel']
    """
    for kind, section in named_sections(manuscript):
        if kind != "references" or section.heading is None:
            continue
        lines = [
            line
            for paragraph in manuscript.paragraphs
            if section.span.contains(paragraph.span) and not (paragraph.in_table or paragraph.in_note)
            for line in _lines(manuscript.text, paragraph.span)
        ]
        works = tuple(_work(line.of(manuscript.text), line) for line in lines)
        if works and all(_DATED.search(work.span.of(manuscript.text)) for work in works):
            numbered = any(_NUMBERED.match(work.span.of(manuscript.text)) for work in works)
            return TypedList(section.heading, section.title.strip(), works, numbered)
    return None


def _lines(text: str, span: Span) -> Iterable[Span]:
    """A paragraph, or its lines where each of them is a work."""
    lines = [Span(span.start + hit.start(), span.start + hit.end()) for hit in re.finditer(r"[^\n]+", span.of(text))]
    return lines if len(lines) > 1 and all(_DATED.search(line.of(text)) for line in lines) else [span]


def _work(words: str, span: Span) -> TypedWork:
    said = _MARKS.sub("", words)
    lead = _LEAD.match(_ARTICLE.sub("", said))
    return TypedWork(
        span, lead[0].strip(' *_”"’') if lead else "", words.lstrip()[:1] in "*_\"“‘'", _AGAIN.match(words) is not None
    )


def first_out_of_order(works: Sequence[TypedWork]) -> tuple[TypedWork, TypedWork] | None:
    """The first work that stands after one which the alphabet puts behind it, and that one; particles let be.

    Only what each begins with is held against the one before, letter by letter.

    **Source**: MLA 9, 5.123–5.124; APA 7, 9.44; Chicago 17, 14.65 and 16.58 (from memory).
    """
    held = [work for work in works if not work.again and work.lead[:1].isupper()]
    last = None
    for work in held:
        if last is not None and name_key(work.lead) < name_key(last.lead):
            return work, last
        last = work
    return None


def find_unsourced(text: str, works: Sequence[TypedWork], entries: Iterable[Entry]) -> tuple[TypedWork, ...]:
    """The works that none of the sources is: neither the name nor the title of one stands in what was typed."""
    known = list(entries)
    missing = []
    for work in works:
        if work.again:
            continue
        words = fold(work.span.of(text))
        spoken = set(name_words(words))
        if not any(
            any(
                bare_surname(name.surname or name.literal) in {*spoken, name_key(work.lead)}
                for name in (*entry.authors, *entry.editors)
            )
            or _has_title(words, entry)
            for entry in known
        ):
            missing.append(work)
    return tuple(missing)


def _has_title(words: str, entry: Entry) -> bool:
    title = name_words(entry.title)[:_TITLE_WORDS]
    return bool(title) and " ".join(title) in " ".join(name_words(words))


def find_uncited(manuscript: Manuscript, typed: TypedList) -> tuple[TypedWork, ...]:
    """The works of which the text outside the list never has the name, the short name or the title."""
    section = next(section for kind, section in named_sections(manuscript) if section.heading is typed.heading)
    body = "\n".join(
        paragraph.span.of(manuscript.text)
        for paragraph in manuscript.paragraphs
        if not section.span.contains(paragraph.span) or paragraph.in_note
    )
    said = " ".join(name_words(fold(body)))
    found = []
    for work in typed.works:
        lead = " ".join(name_words(work.lead)[: _TITLE_WORDS if work.titled else None])
        short = {fold(one) for one in acronyms(work.lead)} if " " in work.lead else set()
        if work.again or not lead or f" {lead} " in f" {said} " or short & set(said.split()):
            continue
        if not work.titled and " " in work.lead and f" {lead.rsplit(' ', 1)[-1]} " in f" {said} ":
            continue
        found.append(work)
    return tuple(found)
