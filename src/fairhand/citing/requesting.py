"""One mention of the draft as the engine is asked for it, and what part of the draft it replaces."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from fairhand.citing.engine_text import Node
from fairhand.citing.mention import Cite, Locator, LocatorKind, Mention, Resolved
from fairhand.citing.style_rules import StyleRules
from fairhand.citing.styles import Style, rules
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span

LABELS: Mapping[LocatorKind, tuple[str, str]] = {
    "page": ("p.", "pp."),
    "line": ("line", "lines"),
    "chapter": ("chapter", "chapters"),
    "section": ("section", "sections"),
    "paragraph": ("para.", "paras."),
    "volume": ("vol.", "vols."),
    "figure": ("fig.", "figs."),
    "table": ("table", "tables"),
    "note": ("n.", "nn."),
    "act": ("", ""),
    "time": ("", ""),
}
"""The labels that the engine reads, for one place and for several."""

SECOND_HAND = re.compile(r"\b(?:qtd\.|quoted|as cited|cited|as quoted)\s+in\b")
RANGE = re.compile(r"[,–—-]|\band\b|&")
PARENTHESIS = re.compile(r"[(\[][^()\[\]]*(?:\[[^\[\]]*\][^()\[\]]*)?[)\]]$")
ABBREVIATION = re.compile(r"[A-Z][A-Z&.-]{1,9}")
INTRODUCED = re.compile(r"[^\W\d_][^,;()\[\]]{2,120}\s\[[A-Z][A-Za-z&.-]{1,9}\]")
SUPERSCRIPT = re.compile(r'<citation\b(?:(?!</citation).){0,2000}?vertical-align="sup"', re.DOTALL)

MentionForm = Literal["parenthetical", "narrative", "page-only", "note"]
Part = Literal["whole", "no-author", "locator", "nothing"]
"""How much of a citation is set: all, all but the author, the locator alone, or nothing, where the next says it all."""


@dataclass(frozen=True)
class Place:
    """A mention, and what of the draft its rendering replaces."""

    mention: int
    span: Span
    """What is replaced."""
    whole: Span
    """What goes where nothing is put there: ``span`` with the space before it."""
    works: tuple[Resolved, ...]
    paragraph: int
    """Index of the paragraph that holds it."""
    part: Part
    second_hand: tuple[bool, ...]
    """Of each work, whether it only passes on another's words."""
    later: tuple[bool, ...] = ()
    """Of each work, whether the paper has cited it before."""
    in_note: bool = False
    """Whether it stands in a footnote of the draft, so that it makes no other."""
    form: MentionForm = "parenthetical"
    """The form that it has in the draft."""
    runs_on: bool = False
    """Whether words or a stop follow it in its line."""
    superscript: bool = False
    """Whether the style sets its numbers high, behind the punctuation."""
    short_names: Mapping[str, str] = field(default_factory=dict)
    """By entry id, the abbreviation that the draft gives a body here: ``WHO``, ``World Health Organization [WHO]``."""


def place_mention(
    manuscript: Manuscript, index: int, mention: Mention, works: tuple[Resolved, ...], style: Style
) -> list[Place]:
    """The place of one mention, or none where the style leaves the writer's words as they are."""
    text, span = manuscript.text, mention.span
    in_note = manuscript.paragraphs[mention.paragraph].in_note
    numbered = style.numeric or style.is_note
    if mention.form == "note" and not style.is_note:
        return []
    part: Part = "whole"
    if not numbered:
        if mention.form == "page-only":
            part = "locator"
        elif mention.form == "narrative" or all(not (one.cite.names or one.cite.title) for one in works):
            part = "no-author"
    elif in_note and mention.form == "narrative":
        part = "no-author"
    if mention.form == "narrative":
        bracketed = PARENTHESIS.search(span.of(text))
        if bracketed is None and not numbered:
            return []
        span = Span(span.start + bracketed.start(), span.end) if bracketed else Span(span.end, span.end)
    before = len(text[: span.start].rstrip(" \t\n")) if span.start else 0
    place = Place(
        mention=index,
        span=span,
        whole=Span(before, span.end),
        works=works,
        paragraph=mention.paragraph,
        part=part,
        second_hand=tuple(bool(one.cite.secondary or SECOND_HAND.search(one.cite.span.of(text))) for one in works),
        in_note=in_note,
        form=mention.form,
        runs_on=text[span.end : span.end + 1].strip() != "" or text[span.end : span.end + 2].strip() != "",
        short_names={} if numbered else _short_names(text, works),
        superscript=style.numeric and SUPERSCRIPT.search(style.csl) is not None,
    )
    return [place]


def _short_names(text: str, works: Sequence[Resolved]) -> dict[str, str]:
    """The abbreviation by which the draft cites a body, or with which it introduces it.

    **Source**: APA 7, 8.21: once it has been introduced, the abbreviation stands in the citation.
    """
    found = {}
    for one in works:
        introduced = INTRODUCED.search(one.cite.span.of(text))
        name = introduced[0] if introduced else "".join(one.cite.names[:1])
        if one.entry and (introduced or ABBREVIATION.fullmatch(name)):
            found[one.entry] = name
    return found


def order_places(manuscript: Manuscript, places: Sequence[Place], style: Style) -> list[Place]:
    """The places as a reader meets them, footnotes at their numbers.

    A page alone is given its year too where its paragraph has not yet cited the work. Where neither year nor number
    stands beside an author's name, a name whose page follows in its paragraph needs nothing of its own.
    """
    numbers = {label: manuscript.text.find(f"[^{label}]") for label in manuscript.notes}
    holders = [(block.span, numbers[label]) for label, block in manuscript.notes.items()]

    def met_at(place: Place) -> tuple[int, int]:
        """Where a reader meets the place."""
        if place.in_note:
            for block, number in holders:
                if block.contains(place.span):
                    return number, place.span.start
        return place.span.start, place.span.start

    ordered: list[Place] = []
    seen: set[tuple[int, str | None]] = set()
    cited: set[str | None] = set()
    in_order = sorted(places, key=met_at)
    for place, following in zip(in_order, [*in_order[1:], None][: len(in_order)], strict=True):
        if _says_all(following, place, style):
            ordered.append(replace(place, part="nothing"))
            continue
        named = {(place.paragraph, one.entry) for one in place.works}
        part = "no-author" if place.part == "locator" and not named <= seen else place.part
        ordered.append(replace(place, part=part, later=tuple(one.entry in cited for one in place.works)))
        seen |= named
        cited |= {one.entry for one in place.works}
    return ordered


def _says_all(following: Place | None, place: Place, style: Style) -> bool:
    """Whether the citation that follows makes one beside the author's name needless."""
    if following is None or not (style.is_note or rules(style).in_text == "author-page"):
        return False
    same = [one.entry for one in following.works] == [one.entry for one in place.works]
    bare = place.form == "narrative" and not any(one.cite.locator for one in place.works)
    return bare and same and following.form == "page-only" and following.paragraph == place.paragraph


def cite_node(place: Place, names: Mapping[str, str], ranks: Mapping[object, int], rule: StyleRules) -> Node:
    """The engine's node for a place.

    Args:
        place: the place.
        names: by an entry's id, the name that the engine knows it by.
        ranks: by an entry's id, its rank in the list.
        rule: the style's rules.
    """
    mode = "NormalCitation" if place.part == "whole" else "SuppressAuthor"
    cites: list[Node] = []
    for one, second_hand in _in_order(place, ranks, rule):
        prefix = "" if place.superscript else _prefix(one.cite, rule, second_hand=second_hand)
        cites.append(
            {
                "citationId": names[str(one.entry)],
                "citationPrefix": _words(prefix),
                "citationSuffix": _words(_suffix(one.cite, rule)),
                "citationMode": {"t": mode},
                "citationNoteNum": 0,
                "citationHash": 0,
            }
        )
    return {"t": "Cite", "c": [cites, []]}


def _in_order(place: Place, ranks: Mapping[object, int], rule: StyleRules) -> list[tuple[Resolved, bool]]:
    """The works of one parenthesis as the style orders them; a signal such as *see* stays at the front.

    **Source**: APA 7, 8.12: in the order of the list, but what follows *see also* after what precedes it.
    """
    works = list(zip(place.works, place.second_hand, strict=True))
    if not rule.sorts_parenthesis or any(one.cite.prefix for one, _ in works[1:]) or any(place.second_hand):
        return works
    signal = works[0][0].cite.prefix
    works.sort(key=lambda work: ranks[work[0].entry])
    unsigned = [(replace(one, cite=replace(one.cite, prefix="")), hand) for one, hand in works]
    first, hand = unsigned[0]
    return [(replace(first, cite=replace(first.cite, prefix=signal)), hand), *unsigned[1:]]


def _prefix(cite: Cite, rule: StyleRules, *, second_hand: bool) -> str:
    """The signal before a work, and whose words it passes on in the style's own term."""
    signal = SECOND_HAND.sub("", cite.prefix).strip(" ,")
    if not second_hand:
        return signal
    comma = "" if rule.in_text == "author-page" or not cite.secondary else ","
    return " ".join(filter(None, (signal, f"{cite.secondary}{comma}" if cite.secondary else "", rule.secondary)))


def _suffix(cite: Cite, rule: StyleRules) -> str:
    """The locator as the engine reads it, and the writer's own words after it."""
    place = _locator(cite.locator, rule) if cite.locator else ""
    after = cite.suffix.strip()
    if not after:
        return place
    return f"{place}, {after}" if place else f"{{}}, {after}"


def _locator(locator: Locator, rule: StyleRules) -> str:
    place = re.sub(r"\s*[–—‐‑−]\s*|--", "-", " ".join(locator.text.replace("{", "").replace("}", "").split()))
    kind = locator.kind
    bare = rule.in_text == "author-page"
    if kind == "volume" and ":" in place and not (bare or rule.manual == "chicago"):
        volume, _, page = place.partition(":")
        named = "Vol." if rule.manual == "apa" else "vol."
        return f"{{}}, {named} {volume.strip()}, {_label('page', page)} {page.strip()}"
    if kind == "volume" and ":" in place:
        return f", {{p. {place}}}"
    if kind == "act" and not bare:
        return f"{{}}, {place.replace('-', '–')}"
    if kind == "line" and rule.manual in {"mla", "apa"} and len(locator.span) > len(locator.text):
        return f"{{}}, {_label('line', place)} {place if bare else place.replace('-', '–')}"
    label = _label(kind, place)
    return f", {{{label} {place}}}" if label else f", {{{place}}}"


def _label(kind: LocatorKind, place: str) -> str:
    return LABELS[kind][bool(RANGE.search(place))]


def _words(text: str) -> list[Node]:
    """Text as the engine's words and spaces."""
    nodes: list[Node] = []
    for word in text.split():
        nodes += [{"t": "Space"}, {"t": "Str", "c": word}] if nodes else [{"t": "Str", "c": word}]
    return nodes
