"""Records made fit for the engine: only what CSL knows, each value in the one form that cannot be misread.

One odd value in a record would otherwise stop the engine for the whole list.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from fairhand.citing.entries import TYPES, iso_parts, text_of

NAME_PARTS = ("family", "given", "literal", "suffix", "dropping-particle", "non-dropping-particle")
DATES = frozenset({"issued", "accessed", "original-date", "event-date", "available-date", "submitted"})
ROLES = frozenset(
    {"author", "editor", "translator", "chair", "collection-editor", "compiler", "composer", "container-author"}
    | {"contributor", "curator", "director", "editor-translator", "editorial-director", "executive-producer", "guest"}
    | {"host", "illustrator", "interviewer", "narrator", "organizer", "original-author", "performer", "producer"}
    | {"recipient", "reviewed-author", "script-writer", "series-creator"}
)
"""The variables that hold names. **Source**: CSL 1.0.2 specification, appendix IV."""
UNPRINTED = frozenset(
    {"abstract", "annote", "keyword", "note", "custom", "categories", "citation-key", "citation-label"}
)
"""Fields that are the writer's own; no list prints them."""

SEASONS = {"spring": 1, "summer": 2, "autumn": 3, "fall": 3, "winter": 4}
WORDED_SEASON = re.compile(r"(spring|summer|autumn|fall|winter),?\s+(\d{4})", re.IGNORECASE)

Item = dict[str, object]
"""A record on its way to the engine."""


def clean_record(csl: Mapping[str, object]) -> Item:
    """The record with only text, names and dates in it, each as CSL has it.

    >>> clean_record({"type": "book", "volume": 4, "issued": "2019-05", "author": ["Plato"], "note": "lent out"})
    {'type': 'book', 'volume': '4', 'issued': {'date-parts': [[2019, 5]]}, 'author': [{'literal': 'Plato'}]}
    """
    item: Item = {}
    for key, value in csl.items():
        if key in UNPRINTED or key == "id":
            continue
        if key in DATES:
            date = _clean_date(value)
            if date:
                item[key] = date
        elif key in ROLES:
            names = [name for name in map(_clean_name, value if isinstance(value, list) else [value]) if name]
            if names:
                item[key] = names
        elif text_of(csl, key):
            item[key] = text_of(csl, key)
    if item.get("type") not in TYPES:
        item["type"] = "document"
    return item


def _clean_name(value: object) -> dict[str, str]:
    if isinstance(value, str):
        return {"literal": " ".join(value.split())} if value.strip() else {}
    if not isinstance(value, Mapping):
        return {}
    name = {part: text_of(value, part) for part in NAME_PARTS if text_of(value, part)}
    if "family" not in name and "literal" not in name:
        return {"literal": name["given"]} if "given" in name else {}
    return name


def _clean_date(value: object) -> dict[str, object]:
    if isinstance(value, str | int):
        value = {"raw": str(value)}
    if not isinstance(value, Mapping):
        return {}
    date: dict[str, object] = {}
    listed = value.get("date-parts")
    parts = [_whole(each) for each in listed if isinstance(each, list)] if isinstance(listed, list) else []
    words = text_of(value, "raw") or text_of(value, "literal")
    seasonal = WORDED_SEASON.fullmatch(words)
    if not any(parts):
        parts = [_whole(list[object](iso_parts(words)))]
    if not any(parts) and seasonal:
        date["season"] = SEASONS[seasonal[1].lower()]
        parts = [[int(seasonal[2])]]
    if not any(parts):
        return {"literal": words} if words else {}
    season = _season(value.get("season"))
    first = parts[0]
    if len(first) > 1 and first[1] > 12:  # EDTF writes the seasons as months 21 to 24
        season, parts = first[1] - 20, [first[:1]]
    date["date-parts"] = [part for part in parts[:2] if part]
    if season in range(1, 5):
        date["season"] = season
    if value.get("circa"):
        date["circa"] = "true"
    return date


def _whole(parts: list[object]) -> list[int]:
    """Year, month and day as far as they are numbers."""
    numbers: list[int] = []
    for part in parts[:3]:
        if not re.fullmatch(r"\s*-?\d{1,4}\s*", str(part)) or (numbers and int(str(part)) < 1):
            break
        numbers.append(int(str(part)))
    return numbers


def _season(value: object) -> int | None:
    words = str(value).strip().lower()
    return int(words) if words in {"1", "2", "3", "4"} else SEASONS.get(words)
