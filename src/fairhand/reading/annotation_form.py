"""Whether what an annotation says of itself can be so.

A line written by hand may leave out what a program would write; what it does say must be as the model has it.

**Source**: W3C Web Annotation Data Model (2017), sections 3.1, 3.2.5, 3.3.1, 3.3.6 and 3.3.7.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

CONTEXT = "http://www.w3.org/ns/anno.jsonld"
_ADDRESS = re.compile(r"[^\s<>\"{}|\\^`]+")
_MOMENT = re.compile(r"-?\d{4,}-\d\d-\d\d(?:T\d\d:\d\d(?::\d\d(?:\.\d{1,12})?)?(?:Z|[+-]\d\d:\d\d)?)?")
"""A date, or a date and an hour, of XML Schema; the model asks for the latter, and hands write the former."""


def find_fault(found: Mapping[str, object]) -> str:
    """What an annotation says wrongly of itself, in a few words; nothing where nothing is wrong.

    >>> find_fault({"@context": CONTEXT, "type": "Squirrel", "target": "lind-2019"})
    'its type is not Annotation'
    >>> find_fault({"id": "n1", "target": "lind-2019"})
    ''
    """
    if "@context" in found or "type" in found:
        if CONTEXT not in _list(found.get("@context")):
            return "its context is not that of annotations"
        if "Annotation" not in _list(found.get("type")):
            return "its type is not Annotation"
    if "body" in found and "bodyValue" in found:
        return "it has both a body and a bodyValue"
    for key in ("id", "canonical"):
        if found.get(key) and not _is_address(found[key]):
            return f"its {key} is no address"
    for key in ("created", "modified", "generated"):
        if found.get(key) and not _is_moment(found[key]):
            return f"{key} is no moment"
    if not all(map(_is_address, (*_list(found.get("rights")), *_list(found.get("via"))))):
        return "its rights or its way are no addresses"
    if not all(isinstance(one, str | Mapping) for key in ("creator", "generator") for one in _list(found.get(key))):
        return "its creator or generator is nobody"
    return ""


def _is_address(value: object) -> bool:
    """Whether a value is one address, whole or part."""
    return isinstance(value, str) and _ADDRESS.fullmatch(value) is not None


def _is_moment(value: object) -> bool:
    return isinstance(value, str) and _MOMENT.fullmatch(value) is not None


def _list(value: object) -> list[object]:
    return value if isinstance(value, list) else [] if value is None else [value]
