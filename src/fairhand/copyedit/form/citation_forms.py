"""In-text citations as they were typed, against the form of the style: what stands between names, year and page.

The form is read off the example that each row of the styles gives, so that every style of author and date, or of author
and page, is held to its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.citing.mention import Cite, Mention, Resolved
from fairhand.citing.style_rules import StyleRules
from fairhand.copyedit.form.page_ranges import misset_ranges
from fairhand.language.folding import fold
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry
from fairhand.model.span import Span

_EXAMPLE = re.compile(r"\([^\W\d]+(?P<year>,? )(?:\d{4}(?P<page>[:, ]+)(?P<label>p\. ?)?)?\d")
_SEVERAL = re.compile(r"[-–—‐‑−,;&]|\band\b|\d ?ff?\b")
ET_AL = re.compile(r"(?P<comma>,)?\s[*_]?(?P<said>et\.?\s?al\b\.?)", re.IGNORECASE)
_AND = re.compile(r"(?<=[^\W\d_])\.?,?\s(?P<and>and|&)\s(?=[^\W\d_])")
_IBID = re.compile(r"\bibid\b", re.IGNORECASE)
_ALONE = re.compile(r"[\s,(]*\Z")
OTHER_RANGES = "ranges of pages"
"""The kind of which an example is given."""


@dataclass(frozen=True, slots=True)
class Shape:
    """What a style sets between the parts of a citation."""

    before_year: str
    """The mark before the year: a comma or nothing."""
    before_page: str
    """The mark before the page."""
    label: bool
    """Whether a page has its *p.*"""
    ampersand: bool
    """Whether the last name in a bracket is joined by *&*."""

    @classmethod
    def of(cls, rules: StyleRules) -> Shape | None:
        """The shape of a style; None where nothing of the kind is printed in the text.

        >>> from fairhand.citing.style_rules import rules_of
        >>> Shape.of(rules_of("apa-7"))
        Shape(before_year=',', before_page=',', label=True, ampersand=True)
        >>> Shape.of(rules_of("mla-9")).before_page, Shape.of(rules_of("ieee"))
        ('', None)
        """
        found = _EXAMPLE.match(rules.example)
        if found is None or rules.in_text not in ("author-page", "author-date"):
            return None
        if rules.in_text == "author-page":
            return cls("", "", label=False, ampersand=False)
        page = (found["page"] or ", ").strip()
        return cls(found["year"].strip(), page, label=bool(found["label"]), ampersand=rules.manual == "apa")


@dataclass(frozen=True, slots=True)
class Departure:
    """A citation that was typed in another form."""

    kind: str
    """What is otherwise, in a few words."""
    span: Span
    example: str = ""


def find_departures(
    manuscript: Manuscript, mentions: Sequence[Mention], resolved: Sequence[Resolved], entries: Mapping[str, Entry],
    rules: StyleRules,
) -> Iterator[Departure]:  # fmt: skip
    """What in the citations in brackets is not as the style types it, in the order of the draft.

    Only works that a source on the list answers to: of any other the bracket may be no citation.

    **Source**: MLA 9, 6.3–6.16; APA 7, 8.10–8.25; Chicago 17, 15.21–15.30, and 14.34 for *ibid.* (from memory).

    >>> from fairhand.citing.recognise import recognise
    >>> from fairhand.citing.style_rules import rules_of
    >>> from fairhand.manuscript.draft import read_manuscript
    >>> from fairhand.citing.resolve import resolve
    >>> from fairhand.model.entry import Issued, Name
    >>> one = Entry("o", "book", "Ebb", authors=(Name("Okafor"),), issued=Issued(2019))
    >>> draft = read_manuscript("It fell (Okafor 2019, 12).")
    >>> found = recognise(draft, [one])
    >>> known = resolve(draft, found, [one])
    >>> [one.kind for one in find_departures(draft, found, known, {"o": one}, rules_of("apa-7"))]
    ['no comma before the year', 'no “p.” before the page']
    """
    if rules.manual:
        for mention in mentions:
            if _IBID.search(mention.span.of(manuscript.text)):
                yield Departure("“ibid.”, where the style repeats the name", mention.span)
    shape = Shape.of(rules)
    if shape is None:
        return
    works = {(one.mention, one.cite.span): one.entry for one in resolved if one.entry is not None}
    for index, mention in enumerate(mentions):
        if mention.form == "note" or manuscript.paragraphs[mention.paragraph].in_note:
            continue
        known = [entries.get(works.get((index, cite.span), "")) for cite in mention.cites]
        for cite, entry in zip(mention.cites, known, strict=True):
            if entry is not None:
                for kind in _kinds(manuscript.text, mention, cite, shape, rules):
                    pages = cite.locator.text if kind == OTHER_RANGES and cite.locator else ""
                    example = "".join(f"“{a}” for “{b}”" for a, b in misset_ranges(pages, rules.manual)[:1])
                    yield Departure(kind, mention.span, example)
                if mention.form == "parenthetical" and authors_otherwise(cite, entry, entries.values(), rules):
                    yield Departure(
                        "“et al.” for two authors" if cite.et_al else "authors beyond “et al.”", mention.span
                    )
        if all(known) and (kind := _between(manuscript.text, mention, rules)):
            yield Departure(kind, mention.span)


def _kinds(text: str, mention: Mention, cite: Cite, shape: Shape, rules: StyleRules) -> Iterator[str]:
    """What of one work's part is otherwise."""
    start, end = cite.span.start, max(cite.span.end, cite.locator.span.end if cite.locator else 0)
    if mention.form == "narrative":
        start, end = max(start, text.rfind("(", mention.span.start, mention.span.end)), mention.span.end
    words = text[start:end]
    if cite.year and rules.in_text == "author-page":
        yield "a year where the style has none"
    elif cite.year:
        yield from _before_year(words, cite, shape)
    if cite.locator is not None and cite.locator.kind == "page":
        yield from _at_page(text, cite, start, shape, rules)
    if mention.form == "parenthetical" and not cite.secondary:
        yield from _at_names(words, cite, shape)


def _before_year(words: str, cite: Cite, shape: Shape) -> Iterator[str]:
    at = words.find(cite.year[:4])
    before = words[: max(at, 0)].rstrip(" \n*_")
    if at < 0 or _ALONE.match(before) or before[-1] in "/[(;:":
        return
    comma = before.rstrip('”"’*_').endswith(",")
    if comma and not shape.before_year:
        yield "a comma before the year"
    elif shape.before_year == "," and not comma and not cite.secondary:
        yield "no comma before the year"


def _at_page(text: str, cite: Cite, start: int, shape: Shape, rules: StyleRules) -> Iterator[str]:
    locator = cite.locator
    if locator is None or locator.within:
        return
    label = locator.span.of(text)[: -len(locator.text)].strip().casefold()
    before = text[start : locator.span.start].rstrip(" \n(")
    if before and not _ALONE.match(before):
        comma = before.endswith(",")
        if comma and not shape.before_page:
            yield "a comma before the page"
        elif shape.before_page and before[-1:].isalnum() and before[-1:] != shape.before_page and cite.year:
            yield f"no {'colon' if shape.before_page == ':' else 'comma'} before the page"
    several = _SEVERAL.search(locator.text) is not None
    if label and not shape.label:
        yield f"“{label}” before the page"
    elif shape.label and not label:
        yield f"no “{'pp.' if several else 'p.'}” before the page{'s' if several else ''}"
    elif shape.label and label != (right := "pp." if several else "p."):
        yield f"“{label}” for “{right}”"
    if rules.manual and misset_ranges(locator.text, rules.manual):
        yield OTHER_RANGES


def _at_names(words: str, cite: Cite, shape: Shape) -> Iterator[str]:
    head = words[: words.find(cite.year[:4])] if cite.year else words
    if found := ET_AL.search(head):
        if found["said"].lower() != "et al.":
            yield f"“{found['said']}” for “et al.”"
        elif found["comma"] and len(cite.names) == 1:
            yield "a comma before “et al.”"
    if len(cite.names) > 1 and (joined := _AND.search(head)) and joined["and"] != ("&" if shape.ampersand else "and"):
        yield f"“{joined['and']}” for “{'&' if shape.ampersand else 'and'}”"


def authors_otherwise(cite: Cite, entry: Entry, entries: Iterable[Entry], rules: StyleRules) -> bool:
    """Whether a source's authors are all named where the style has *et al.*, or two have *et al.*.

    Several names are let be where they tell one work from another.
    """
    if not cite.names or not entry.authors:
        return False
    if fold(cite.names[0]) not in fold(entry.authors[0].surname):
        return False
    if cite.et_al:
        return len(entry.authors) == 2 and len(cite.names) == 1
    alike = [
        one
        for one in entries
        if one.authors and one.authors[0].surname == entry.authors[0].surname and len(one.authors) > 1
    ]
    return len(cite.names) == len(entry.authors) >= max(rules.et_al_from, 3) and len(alike) == 1


def _between(text: str, mention: Mention, rules: StyleRules) -> str:
    """What is otherwise between the works of one bracket."""
    named = [cite for cite in mention.cites if cite.names]
    if mention.form != "parenthetical" or len(named) != len(mention.cites):
        return ""
    for one, other in pairwise(named):
        gap = text[one.span.start : other.span.start]
        if one.names != other.names and ";" not in gap:
            return "works parted by no semicolon"
    heads = [(fold(cite.names[0]), cite.year) for cite in named]
    if rules.sorts_parenthesis and heads != sorted(heads) and not any(cite.prefix for cite in named[1:]):
        return "works out of the order of the list"
    return ""
