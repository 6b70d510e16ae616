"""Sections: the parts that the paper must have, by name."""

from __future__ import annotations

import re

from fairhand.brief.layout import Passage, Sheet
from fairhand.brief.numbers import NUMBER, number_value
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement

_PARTS = r"(?:sections?|parts|headings|sub-?headings|components|elements|chapters)"
_LEAD = re.compile(
    rf"\b(?:(?:these|the following|the|those|following|under|into|in|has|have|with|contains?|includes?"
    rf"|{NUMBER})\b[^.:;]{{0,40}}?\b{_PARTS}\b|{_PARTS} (?:are|should be|must be|required|titled|headed|called"
    rf"|labelled)"
    rf"|(?:structure[d]?|organi[sz]ed?|set out|laid out|arranged?)\b[^.:;]{{0,30}}\b(?:as follows|under|into))",
    re.IGNORECASE,
)
_COUNT = re.compile(rf"\b(?P<n>two|three|four|five|six|seven|eight|[2-8]) (?:\w+ ){{0,2}}{_PARTS}", re.IGNORECASE)
_KEY = re.compile(rf"\b(?:structure|{_PARTS}|submission contains|organi[sz]ation|required parts)\b", re.IGNORECASE)
_EACH = re.compile(
    rf"^\W*(?:each|all) of (?:these|those)\b[^.]{{0,40}}\b{_PARTS}\b|\b(?:use|with) these (?:as )?headings",
    re.IGNORECASE,
)
_BODY_WORDS = re.compile(r"\b(?:you|your|should|must|will|we|is|are|was|has|have|not|please|count)\b", re.IGNORECASE)
_USUAL = frozenset(
    "abstract introduction background method methods methodology results findings discussion conclusion conclusions"
    " references bibliography analysis summary title appendix appendices recommendations".split()
) | {"works cited", "literature review", "literature cited", "materials and methods", "executive summary"}


def _clean(name: str) -> str:
    name = re.sub(r"\s*[(\[][^)\]]*[)\]]", "", name)
    name = re.split(r"[:.]| - | — |—", name)[0]
    name = re.sub(r"^(?:and|an?|the|your|optional)\s+|^\d+[.)]\s*", "", name.strip(), flags=re.IGNORECASE)
    name = re.sub(r"^(?:an?|the|and)\s+", "", name, flags=re.IGNORECASE)
    return name.strip(" \t,;'\"").lower()


def _is_name(name: str) -> bool:
    return (
        0 < len(name) <= 60
        and len(name.split()) <= 6
        and any(c.isalpha() for c in name)
        and not _BODY_WORDS.search(name)
    )


def _inline(text: str, start: int) -> tuple[list[str], int]:
    """The names listed in running text from ``start``, with the end of the list."""
    stop = re.compile(r"[.?!](?:\s|$)|\t").search(text, start)
    end = stop.start() if stop else len(text)
    body = re.sub(r"\([^)]*\)", lambda m: " " * len(m.group()), text[start:end])
    semicolons = ";" in body
    pieces = re.split(r";" if semicolons else r",|;| and (?=[\w ]+$)", body)
    names = [_clean(piece) for piece in pieces]
    names = [n for n in names if n]
    if len(names) < 2 or not all(_is_name(n) for n in names):
        return [], end
    return names, end


def _listed(passages: tuple[Passage, ...], i: int) -> list[Passage]:
    """The short items or lines that follow a lead-in."""
    out: list[Passage] = []
    for passage in passages[i + 1 :]:
        if out and (passage.kind, passage.indent) != (out[0].kind, out[0].indent):
            break
        if passage.kind not in {"item", "prose", "heading"} or (
            passage.kind == "prose" and not _is_name(_clean(passage.text))
        ):
            break
        if passage.kind == "prose" and (passage.text.endswith(".") or passage.indent < passages[i].indent):
            break
        out.append(passage)
    return out


def _headings_after(passages: tuple[Passage, ...], i: int, count: int) -> list[Passage]:
    """The next headings: real sheets name the paper's sections so, each with its advice."""
    out = []
    for passage in passages[i + 1 :]:
        if (passage.kind == "heading" and passage.text[-1] not in ":?") or (
            len(passage.text) < 70 and passage.text[-1] not in ".:!?" and passage.kind == "prose"
        ):
            out.append(passage)
        if len(out) == count:
            return out
    return []


def find_section(sheet: Sheet) -> list[Requirement]:
    """The sections that the sheet names, in its order."""
    found: list[Requirement] = []
    seen: set[str] = set()
    passages = sheet.passages

    def add(name: str, passage: Passage, start: int, end: int) -> None:
        if name not in seen:
            seen.add(name)
            force = "must" if passage.kind == "heading" else force_of(passage.text)
            found.append(ask(sheet, "section", {"name": name, "needed": True}, passage.span(start, end), force))

    for i, passage in enumerate(passages):
        text = passage.text
        if TOLD.search(text) or re.search(r"\b(?:rubric|grad|mark|criteri)", passage.context):
            continue
        for lead in _LEAD.finditer(text):
            colon = re.compile(r"[:—]").search(text, lead.end() - 1, lead.end() + 40)
            rest = text[colon.end() :] if colon else ""
            if colon and rest.strip():
                names, end = _inline(text, colon.end())
                for name in names:
                    add(name, passage, lead.start(), end)
                if names:
                    break
            elif (colon or text.endswith(":")) and not rest.strip():
                items = [(p, _clean(p.text)) for p in _listed(passages, i)]
                if len(items) >= 2 and all(_is_name(name) for _, name in items):
                    for item, name in items:
                        add(name, item, 0, len(item.text))
                    break
            elif quoted := re.findall(r'"([^"]{3,40})"', text[lead.end() : lead.end() + 200]):
                for name in (
                    quoted
                    if re.search(r"titled|headed|called|labelled|headings", text[lead.start() : lead.end() + 12])
                    else ()
                ):
                    add(_clean(name), passage, lead.start(), len(text))
            elif (count := _COUNT.search(text, lead.start())) and re.search(
                r"\b(?:have|include|contain|has)\b", text[: count.start()], re.IGNORECASE
            ):
                for heading in _headings_after(passages, i, int(number_value(count["n"]))):
                    add(_clean(heading.text), heading, 0, len(heading.text))
                break
        else:
            keyed = _KEY.search(passage.key or passage.heading) or any(
                _EACH.search(s) for s in re.split(r"(?<=\.) ", text)[1:3]
            )
            if keyed and not seen:
                names, end = _inline(text, passage.body)
                if len(names) >= 3 and any(n in _USUAL for n in names):
                    for name in names:
                        add(name, passage, passage.body, end)
                elif passage.kind == "item" and passages[i - 1].kind == "heading":
                    items = [(p, _clean(p.text)) for p in (passage, *_listed(passages, i))]
                    if (
                        len(items) >= 3
                        and sum(n in _USUAL for _, n in items) >= 2
                        and all(_is_name(n) for _, n in items)
                    ):
                        for item, name in items:
                            add(name, item, 0, len(item.text))
    return found
