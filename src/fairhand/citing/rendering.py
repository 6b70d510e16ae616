"""Citations and references set in the required style: what the engine is asked, and what its answer means.

All citations of a draft go to the engine in one run and in order, so that later notes are shortened, numbers count up
and works of one year are told apart. The session runs the request and hands back the answer.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from fairhand.citing.engine_style import RANK, style_for_engine
from fairhand.citing.engine_text import Node, read_blocks
from fairhand.citing.finishing import finish_citation, finish_reference
from fairhand.citing.mends import mend_record
from fairhand.citing.mention import Mention, Resolved
from fairhand.citing.ordering import order_items
from fairhand.citing.records import Item
from fairhand.citing.requesting import Place, cite_node, order_places, place_mention
from fairhand.citing.styles import Style, rules
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry, Name
from fairhand.model.inline import Inline, Note
from fairhand.model.request import PandocRequest
from fairhand.model.span import Span

API = [1, 23, 1]
"""The version of pandoc's syntax tree that is spoken here."""
EVERYTHING = "*"


@dataclass(frozen=True, kw_only=True)
class CitationRequest(PandocRequest):
    """One run of the engine over all citations of a draft, and where its answers belong."""

    places: tuple[Place, ...]
    """The places of the draft that are replaced, in the order in which the engine is asked."""
    works: Mapping[str, tuple[str, Item]]
    """By the name that the engine knows it by, each work's id and mended record."""
    style: Style
    """The style that is asked for."""
    namesakes: Mapping[str, Name]
    """By entry id, the first author of a work whose surname the first author of another bears too."""
    bodies: Mapping[str, str]
    """By entry id, the body that is its author."""


@dataclass(frozen=True)
class Rendered:
    """One mention as the style has it."""

    mention: int
    """Its index among the draft's mentions."""
    span: Span
    """What it replaces in the draft: the parenthesis, not the names in the sentence before it."""
    inlines: tuple[Inline, ...]
    """What stands there in the fair copy; empty where the style wants nothing there."""
    note: bool
    """Whether it is a footnote: ``inlines`` is then one ``Note``."""
    after_punctuation: bool
    """Whether it moves behind the stop and the closing quotation mark after it, the space before it closed up."""


@dataclass(frozen=True)
class RenderedCitations:
    """All that the engine answered."""

    mentions: tuple[Rendered, ...]
    """In the draft's order; a mention whose source is not known is not among them and stays as written."""
    references: tuple[tuple[str, tuple[Inline, ...]], ...]
    """Each entry's id and its line in the list, in the list's order."""


def citation_request(
    manuscript: Manuscript,
    mentions: Sequence[Mention],
    resolved: Sequence[Resolved],
    entries: Sequence[Entry],
    style: Style,
    language: str = "en-US",
    uncited: Iterable[str] = (),
) -> CitationRequest:
    """What the engine must be asked to set the draft's citations and its list of references.

    Args:
        manuscript: the draft.
        mentions: its citations, in order.
        resolved: the works that they cite, one for each cite of each mention.
        entries: the sources.
        style: the style to set them in.
        language: of the paper, as ``en-US`` or ``en-GB``.
        uncited: ids of entries that stand in the list without being cited.
    """
    by_id = {entry.id: entry for entry in entries}
    cited: dict[int, list[Resolved]] = {}
    for one in resolved:
        cited.setdefault(one.mention, []).append(one)
    found: list[Place] = []
    for index, mention in enumerate(mentions):
        works = tuple(cited.get(index, ()))
        if works and all(one.entry in by_id for one in works):
            found += place_mention(manuscript, index, mention, works, style)
    places = order_places(manuscript, found, style)
    wanted = [one.entry for place in places for one in place.works if one.entry]
    chosen = [by_id[name] for name in dict.fromkeys([*wanted, *uncited]) if name in by_id]
    return _request(tuple(places), chosen, style, language, EVERYTHING if list(uncited) else "")


def reference_request(entries: Sequence[Entry], style: Style, language: str = "en-US") -> CitationRequest:
    """What the engine must be asked to set a list of these entries, with no draft that cites them."""
    return _request((), list({entry.id: entry for entry in entries}.values()), style, language, EVERYTHING)


def citation_key(request: CitationRequest) -> str:
    """A key that two requests share only where their answers are the same, wherever in the draft they belong."""
    digest = hashlib.sha256(request.stdin)
    for name in sorted(request.files):
        digest.update(request.files[name])
    return digest.hexdigest()


def read_answer(stdout: bytes, request: CitationRequest) -> RenderedCitations:
    """The engine's answer, each mention with the place that it replaces.

    Args:
        stdout: what the run of ``request`` wrote.
        request: the request; one of the same ``citation_key`` has the same answer.
    """
    mentions = [_silent(place) for place in request.places if place.part == "nothing"]
    references: list[tuple[str, tuple[Inline, ...]]] = []
    for block in json.loads(stdout)["blocks"]:
        if block["t"] != "Div":
            continue
        (name, *_), inner = block["c"]
        if name == "refs":
            references = [_reference(each, request) for each in inner]
        elif name.startswith("m"):
            mentions.append(_rendered(request.places[int(name[1:])], read_blocks(inner), request))
    return RenderedCitations(tuple(sorted(mentions, key=lambda each: each.mention)), tuple(references))


def _request(
    places: tuple[Place, ...], entries: Sequence[Entry], style: Style, language: str, nocite: str
) -> CitationRequest:
    rule = rules(style)
    items = [{**mend_record(entry, rule), "id": entry.id} for entry in entries]
    names = {item["id"]: f"w{number}" for number, item in enumerate(items)}
    first = {"particle_first": rule.particle_first, "paper_first": rule.manual == "chicago"}
    ranked = order_items(items, rule.list_order, **first) if rule.list_order else items
    ranks = {item["id"]: rank for rank, item in enumerate(ranked)}
    records = [{**item, "id": names[item["id"]], RANK: f"{ranks[item['id']]:05d}"} for item in items]
    blocks: list[Node] = []
    for number, place in enumerate(places):
        if place.part == "nothing":
            continue
        node = cite_node(place, {str(one.entry): names[one.entry] for one in place.works}, ranks, rule)
        blocks.append({"t": "Div", "c": [[f"m{number}", [], []], [{"t": "Para", "c": [node]}]]})
    meta: Node = {"lang": {"t": "MetaString", "c": language}}
    if nocite:
        cite = {
            "citationId": nocite,
            "citationPrefix": [],
            "citationSuffix": [],
            "citationMode": {"t": "NormalCitation"},
        }
        meta["nocite"] = {
            "t": "MetaInlines",
            "c": [{"t": "Cite", "c": [[{**cite, "citationNoteNum": 0, "citationHash": 0}], []]}],
        }
    document = {"pandoc-api-version": API, "meta": meta, "blocks": blocks}
    return CitationRequest(
        args=("--from=json", "--to=json", "--citeproc", "--csl=style.csl", "--bibliography=references.json"),
        stdin=_bytes(document),
        files={"style.csl": style_for_engine(style.csl, rule).encode(), "references.json": _bytes(records)},
        places=places,
        works={names[item["id"]]: (str(item["id"]), item) for item in items},
        style=style,
        namesakes=_namesakes(entries) if style.is_note and rule.manual == "chicago" else {},
        bodies={one.id: one.authors[0].literal for one in entries if one.authors and one.authors[0].literal},
    )


def _bytes(value: object) -> bytes:
    return json.dumps(value, ensure_ascii=False).encode("utf-8", "replace")


def _reference(block: Node, request: CitationRequest) -> tuple[str, tuple[Inline, ...]]:
    (name, *_), inner = block["c"]
    entry, item = request.works[name.removeprefix("ref-")]
    return entry, finish_reference(read_blocks(inner), item, rules(request.style))


def _namesakes(entries: Sequence[Entry]) -> Mapping[str, Name]:
    first = {entry.id: entry.authors[0] for entry in entries if entry.authors and entry.authors[0].given}
    bearers: dict[str, set[str]] = {}
    for name in first.values():
        bearers.setdefault(name.surname, set()).add(name.given)
    return {entry: name for entry, name in first.items() if len(bearers[name.surname]) > 1}


def _silent(place: Place) -> Rendered:
    return Rendered(place.mention, place.whole, (), note=False, after_punctuation=False)


def _rendered(place: Place, inlines: tuple[Inline, ...], request: CitationRequest) -> Rendered:
    inlines = finish_citation(inlines, place, rules(request.style), request.namesakes, request.bodies)
    if not inlines:
        return _silent(place)
    note = len(inlines) == 1 and isinstance(inlines[0], Note)
    span = place.whole if place.in_note and place.form == "narrative" and request.style.is_note else place.span
    return Rendered(place.mention, span, inlines, note=note, after_punctuation=note or place.superscript)
