"""Sections: the parts that the paper must have, by name."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.brief.layout import Passage, Sheet
from fairhand.brief.numbers import COUNT, number_value
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Force, Requirement, Value

_PARTS = r"(?:sections?|parts|headings|sub-?headings|components|elements|chapters)"
_LEAD = re.compile(
    rf"\b(?:(?:required|these|the following|the|those|following|under|into|in|has|have|with|contains?|includes?"
    rf"|{COUNT})\b[^.:;]{{0,40}}?\b{_PARTS}\b|{_PARTS} (?:are|should be|must be|required|titled|headed|called"
    rf"|labelled)"
    rf"|(?:structure[d]?|organi[sz]ed?|divided?|set out|laid out|arranged?)\b[^.:;]{{0,30}}\b(?:as follows|under|into)"
    rf"|(?:format|structure|order|outline|pattern|layout)\b[^.:;]{{0,20}}\b(?:below|following))",
    re.IGNORECASE,
)
_CONTAINS = re.compile(
    r"\b(?:(?:contain|includ|compris|consist|ha(?=ve|s\b)|made up|divided)\w*(?: of| into)?:? "
    r"|(?:sub-?)?(?:headings|sections): )",
    re.IGNORECASE,
)
_COUNT = re.compile(rf"\b(?P<n>two|three|four|five|six|seven|eight|[2-8]) (?:\w+ ){{0,2}}{_PARTS}", re.IGNORECASE)
_KEY = re.compile(
    rf"\b(?:structure|{_PARTS}|submission contains|^must (?:contain|include|have)|organi[sz]ation|contents"
    rf"|required parts"
    r"|(?:what|the) [^?.:]{0,40}\b(?:contains?|must (?:contain|include|have|be in it)|includes|goes in(?:to)? it))\b",
    re.IGNORECASE,
)
_EACH = re.compile(
    rf"^\W*(?:each|all) of (?:these|those)\b[^.]{{0,40}}\b{_PARTS}\b|\b(?:use|with) these (?:as )?headings",
    re.IGNORECASE,
)
_QUOTED = re.compile(r'"(?P<name>[^"]{3,40})"')
_NAMING = re.compile(r"titled|headed|called|labelled|headings", re.IGNORECASE)
_CAPITALS = r"(?-i:[A-Z])[\w-]*(?: (?:(?-i:[A-Z])[\w-]*|and|of|the|to|for|in)(?![\w-])){0,5}"
_NAMED = re.compile(
    r'"(?P<name>[^"]{3,40})" (?:section|part|heading)\b'
    r"|\b(?:section|part) (?:(?:must|should|has to|is to|needs to|shall|will) be )?"
    r"(?:titled|entitled|headed|called|label+ed|named) "
    rf"(?:\"(?P<named>[^\"]{{3,40}})\"|'(?P<single>[^']{{3,40}})'|[*_]{{0,3}}(?P<plain>{_CAPITALS}))",
    re.IGNORECASE,
)
_EXPLAINED = re.compile(r", (?:in|with|under|for) wh(?:ich|om)\b|, (?:where|which|that|who|saying|explaining|giving)\b")
"""What a part is for, said after its name."""
_OR_YOURS = re.compile(r"\bor (?:an?|another|some|your)\b[^.;,)]{0,20}\b(?:heading|title|name|own)\b", re.IGNORECASE)
_BODY_WORDS = re.compile(r"\b(?:you|your|should|must|will|we|is|are|was|has|have|not|please|count)\b", re.IGNORECASE)
_NO_SECTION = re.compile(r"\b(?:main text|body|(?:title|cover)[- ](?:page|sheet))\b", re.IGNORECASE)
_OF_MARKS = re.compile(r"\b(?:rubric|(?:grad(?:es?|ed|ing)|mark(?:s|ing|ed)?)\b|criteri)")
_USUAL = frozenset(
    "abstract introduction background method methods methodology results findings discussion conclusion conclusions"
    " references bibliography analysis summary title appendix appendices recommendations".split()
) | {"works cited", "literature review", "literature cited", "materials and methods", "executive summary"}
_Named = tuple[str, Passage, int, int]


def _clean(name: str) -> str:
    """A section's name as the sheet gives it; an article is part of it only where both are capitals ("The Strike")."""
    name = re.sub(r"\s*[(\[][^)\]]*[)\]]", "", name)
    name = re.split(r"[:.]| - | — |—", name)[0].strip(" \t,;'\"")
    previous = ""
    while previous != name:
        previous, name = name, re.sub(r"^(?:(?:and|an?|the|your|optional)\s+|(?:And|An?|Your|Optional)\s+(?![A-Z])"
                                      r"|The\s+(?![A-Z])|\d+[.)]\s*)", "", name)  # fmt: skip
    return re.sub(r"(?<=\w) section$", "", name.lower()).strip(" \t,;'\"")


def _is_name(name: str, given: str = "") -> bool:
    """Whether this may name a section; words of plain sentences may stand in it where it is ``given`` as a title."""
    return (
        0 < len(name) <= 60
        and len(name.split()) <= (8 if _is_titled(given) else 6)
        and any(c.isalpha() for c in name)
        and (not _BODY_WORDS.search(name) or _is_titled(given))
    )


def _is_titled(given: str) -> bool:
    """Whether words are set as a title: two or more, the longer ones with capitals ("What the Practice Is")."""
    words = re.findall(r"[^\W\d_][\w'-]*", given)
    return len(words) >= 2 and all(w[0].isupper() for w in (words[0], words[-1], *(w for w in words if len(w) > 4)))


def _pieces(text: str, start: int) -> tuple[list[tuple[str, str]], int]:
    """The pieces of a list in running text from ``start``, cleaned and as given, with the end of the list."""
    stop = re.compile(r"[.?!](?:\s|$)|\t").search(text, start)
    end = stop.start() if stop else len(text)
    body = re.sub(r"\([^)]*\)", lambda m: " " * len(m.group()), text[start:end])
    pieces = re.split(r";" if ";" in body else r" / " if body.count(" / ") >= 2 else r",|;| and (?=[\w ]+$)", body)
    pieces = [_EXPLAINED.split(piece)[0] for piece in pieces]
    return [(name, piece.strip()) for piece in pieces if (name := _clean(piece))], end


def _inline(text: str, start: int) -> tuple[list[str], int]:
    """The names listed in running text from ``start``, with the end of the list; none where a piece is no name."""
    pieces, end = _pieces(text, start)
    named = len(pieces) >= 2 and all(_is_name(*piece) for piece in pieces)
    return ([name for name, _ in pieces] if named else []), end


def _usual(text: str, start: int) -> tuple[list[str], int]:
    """The names in a list of what a paper contains, where it is plainly one of sections: three have usual names."""
    pieces, end = _pieces(text, start)
    names = [n for n, _ in pieces if _is_name(n) and not _NO_SECTION.search(n)]
    return (names if sum(n in _USUAL for n in names) >= 3 else []), end


def _listed(passages: tuple[Passage, ...], i: int) -> list[Passage]:
    """The short items or lines that follow a lead-in."""
    out: list[Passage] = []
    for passage in passages[i + 1 :]:
        if out and passage.indent != out[0].indent:
            break
        # In an indented list the eye takes a line of one word for a heading now and then.
        alike = passage.indent > passages[i].indent and "item" not in {passage.kind, out[0].kind if out else ""}
        if out and passage.kind != out[0].kind and not alike:
            break
        if passage.kind not in {"item", "prose", "heading"} or (
            passage.kind == "prose" and not _is_name(_clean(passage.text), passage.text)
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


def _whole(passage: Passage) -> _Named:
    return _clean(passage.text), passage, 0, len(passage.text)


def _led(passages: tuple[Passage, ...], i: int) -> list[_Named]:
    """The names that words like "these sections" introduce: in the same line, in a list below, or as headings."""
    passage = passages[i]
    text = passage.text
    for lead in _LEAD.finditer(text):
        colon = re.compile(r"[:—]").search(text, lead.end() - 1, lead.end() + 40)
        rest = text[colon.end() :].strip() if colon else ""
        below = text.endswith(":") or lead.group().lower().endswith(("below", "following"))
        if colon and rest:
            names, end = _inline(text, colon.end())
            if names:
                return [(name, passage, lead.start(), end) for name in names]
        elif colon or below:
            items = [_whole(p) for p in _listed(passages, i)]
            if len(items) >= 2 and all(_is_name(item[0], item[1].text) for item in items):
                return items
        elif quoted := _QUOTED.findall(text[lead.end() : lead.end() + 200]):
            if _NAMING.search(text[lead.start() : lead.end() + 12]):
                return [(_clean(name), passage, lead.start(), len(text)) for name in quoted]
        elif (count := _COUNT.search(text, lead.start())) and re.search(
            r"\b(?:have|include|contain|has)\b", text[: count.start()], re.IGNORECASE
        ):
            return [_whole(p) for p in _headings_after(passages, i, int(number_value(count["n"])))]
    return []


def _contained(passage: Passage) -> list[_Named]:
    """The names in a sentence that says what the paper contains, and those of a section named on its own."""
    text = passage.text
    for match in _CONTAINS.finditer(text):
        names, end = _usual(text, match.end())
        if names:
            return [(name, passage, match.start(), end) for name in names]
    return [
        (_clean(m["name"] or m["named"] or m["single"] or m["plain"]), passage, m.start(), m.end())
        for m in _NAMED.finditer(text)
    ]  # fmt: skip


def _keyed(passages: tuple[Passage, ...], i: int) -> list[_Named]:
    """The names under a label or heading such as "Structure", where enough of them are usual ones."""
    passage = passages[i]
    if not _KEY.search(passage.key or passage.heading) and not any(
        _EACH.search(s) for s in re.split(r"(?<=\.) ", passage.text)[1:3]
    ):
        return []
    names, end = _inline(passage.text, passage.body)
    if len(names) >= 3 and any(n in _USUAL for n in names):
        return [(name, passage, passage.body, end) for name in names]
    if passage.kind == "item" and passages[i - 1].kind == "heading":
        items = [_whole(p) for p in (passage, *_listed(passages, i))]
        usual = sum(name in _USUAL for name, *_ in items)
        if (
            len(items) >= 3
            and usual >= (1 if passage.marker[0].isdigit() else 2)
            and all(_is_name(n) for n, *_ in items)
        ):
            return items
    return []


def _names(sheet: Sheet) -> Iterator[_Named]:
    passages, some = sheet.passages, False
    for i, passage in enumerate(passages):
        if TOLD.search(passage.text) or _OF_MARKS.search(passage.context):
            continue
        named = _led(passages, i) or _contained(passage) or ([] if some else _keyed(passages, i))
        some = some or bool(named)
        yield from named


def _force(name: str, passage: Passage) -> Force:
    """How strongly a section of this name is asked for: a heading of the writer's own may stand in its place."""
    at = passage.text.lower().find(name)
    after = re.split(r"[,;](?![^(]*\))|\) ?(?=\w)", passage.text[at + len(name) :] if at >= 0 else "")[0]
    if _OR_YOURS.search(after):
        return "may"
    return "must" if passage.kind == "heading" else force_of(passage.text)


def find_section(sheet: Sheet) -> list[Requirement]:
    """The sections that the sheet names, in its order."""
    found: dict[str, Requirement] = {}
    for name, passage, start, end in _names(sheet):
        if name not in found and not _NO_SECTION.search(name):
            values: dict[str, Value] = {"name": name, "needed": True}
            found[name] = ask(sheet, "section", values, passage.span(start, end), _force(name, passage))
    return list(found.values())
