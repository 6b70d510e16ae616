"""What an annotation says of its note: the remark, the kind, and what the note serves.

A question or a point is linked to as a place in the file that holds it. Whatever else a body says is kept.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.2.5 and 4.1 (specific resources), 3.3.5 (*linking*
and *classifying* among the motivations).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeGuard
from urllib.parse import quote, unquote

from fairhand.model.note import KINDS

QUESTIONS = "focus.toml#"
"""How a link to a question begins; its id follows."""
POINTS = "points.json#"
"""How a link to a point begins; its id follows."""


def list_bodies(found: Mapping[str, object]) -> list[object]:
    """The bodies of an annotation, one that is a mere value included.

    >>> list_bodies({"bodyValue": "so"})
    [{'type': 'TextualBody', 'value': 'so'}]
    """
    value = found.get("bodyValue")
    return [{"type": "TextualBody", "value": value}] if isinstance(value, str) else as_list(found.get("body"))


def as_list(value: object) -> list[object]:
    """A value that may be one or several, as several.

    >>> as_list("a"), as_list(None)
    (['a'], [])
    """
    return value if isinstance(value, list) else [] if value is None else [value]


def read_remark(bodies: Sequence[object]) -> str:
    """The writer's remark, or an empty string."""
    return next((str(body["value"]) for body in bodies if _is_remark(body)), "")


def read_kind(bodies: Sequence[object]) -> str:
    """Of which kind the note is, or an empty string."""
    return next((str(body["value"]) for body in bodies if _is_kind(body)), "")


def read_link(bodies: Sequence[object], place: str) -> str:
    """The id that the first link to a place names, or an empty string.

    >>> read_link(put_link([], POINTS, "p 1"), POINTS)
    'p 1'
    """
    return next((unquote(str(body["source"])[len(place) :]) for body in bodies if _is_link(body, place)), "")


def put_remark(bodies: Sequence[object], remark: str) -> list[object]:
    """The bodies with another remark in place of the present one; without words, none."""
    at = next((n for n, body in enumerate(bodies) if _is_remark(body)), None)
    if at is None:
        return [{"type": "TextualBody", "purpose": "commenting", "value": remark}, *bodies]
    old = bodies[at]
    new = [{**old, "value": remark}] if remark and _is_remark(old) else []
    return [*bodies[:at], *new, *bodies[at + 1 :]]


def put_kind(bodies: Sequence[object], kind: str) -> list[object]:
    """The bodies with another kind in place of the present one; without a word, none."""
    new = [{"type": "TextualBody", "purpose": "classifying", "value": kind}] if kind else []
    return [*(body for body in bodies if not _is_kind(body)), *new]


def put_link(bodies: Sequence[object], place: str, to: str) -> list[object]:
    """The bodies with a link to another id in place of the first to that place; without an id, none.

    >>> put_link([], QUESTIONS, "q1")
    [{'type': 'SpecificResource', 'purpose': 'linking', 'source': 'focus.toml#q1'}]
    """
    first = next((n for n, body in enumerate(bodies) if _is_link(body, place)), None)
    others = [body for n, body in enumerate(bodies) if n != first]
    source = place + quote(to, safe="", errors="replace")
    new = [{"type": "SpecificResource", "purpose": "linking", "source": source}] if to else []
    return [*others, *new]


def _is_remark(body: object) -> TypeGuard[Mapping[str, object]]:
    """Whether a body is words of the writer's: not an address, and for no other purpose."""
    return (
        isinstance(body, Mapping)
        and isinstance(body.get("value"), str)
        and body.get("purpose", "commenting") == "commenting"
    )


def _is_kind(body: object) -> TypeGuard[Mapping[str, object]]:
    """Whether a body says of which kind the note is."""
    return isinstance(body, Mapping) and body.get("purpose") == "classifying" and body.get("value") in KINDS


def _is_link(body: object, place: str) -> TypeGuard[Mapping[str, object]]:
    """Whether a body links to something in that place."""
    return (
        isinstance(body, Mapping)
        and body.get("purpose") == "linking"
        and str(body.get("source", "")).startswith(place)
        and len(str(body["source"])) > len(place)
    )
