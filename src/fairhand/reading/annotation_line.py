"""One W3C Web Annotation on a line of its own, as ``marks.jsonl`` and ``offcuts.jsonl`` keep what is said of the draft.

**Source**: W3C Web Annotation Data Model (2017), sections 3.1, 3.2.4, 3.3.1, 3.3.5 and 4.2.4.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping

from fairhand.language.json_text import write_json
from fairhand.reading.annotation_form import CONTEXT

DRAFT = "draft.md"
"""What is annotated, where nothing else is said."""


def write_annotation(
    motivation: str,
    said: Iterable[tuple[str, str]],
    quote: Mapping[str, object] | None = None,
    *,
    id_: str = "",
    by: str = "",
    created: str = "",
    modified: str = "",
    source: str = DRAFT,
    via: str = "",
) -> str:
    """An annotation as a line; what says nothing is left out.

    Args:
        motivation: Why it was made, in the model's word.
        said: What it says, each with its purpose in the model's word.
        quote: The words that it is on, as ``exact``, ``prefix`` and ``suffix``; None for the whole.
        id_: Its name.
        by: Who made it.
        created: When, as ISO 8601 has it.
        modified: When it was changed last.
        source: What is annotated.
        via: From what file it came.

    >>> line = write_annotation("assessing", [("tagging", "stet")], {"exact": "had had"})
    >>> first_said(read_annotation(line)), quote_of(read_annotation(line))["exact"]
    ({'tagging': 'stet'}, 'had had')
    """
    target: dict[str, object] = {"source": source}
    if quote:
        target["selector"] = {"type": "TextQuoteSelector", **quote}
    annotation = {
        "@context": CONTEXT,
        "id": id_,
        "type": "Annotation",
        "motivation": motivation,
        "creator": {"type": "Person", "name": by} if by else None,
        "created": created,
        "modified": modified,
        "body": [{"type": "TextualBody", "purpose": why, "value": value} for why, value in said if value],
        "target": target,
        "via": via,
    }
    return write_json({key: value for key, value in annotation.items() if value})


def read_annotation(line: str) -> Mapping[str, object]:
    """What a line holds.

    Raises:
        ValueError: It is no JSON, or no object; it says so in words.
        RecursionError: It is nested beyond all bounds.
    """
    found = json.loads(line)
    if not isinstance(found, Mapping):
        message = "no object with a body and a target"
        raise ValueError(message)  # noqa: TRY004 - as a fault of the text, like those of the JSON reader
    return found


def said_of(found: Mapping[str, object]) -> dict[str, list[str]]:
    """What an annotation's bodies say, by their purpose."""
    said: dict[str, list[str]] = {}
    bodies = found.get("body")
    for body in bodies if isinstance(bodies, list) else [bodies]:
        if isinstance(body, Mapping):
            said.setdefault(str(body.get("purpose", "")), []).append(str(body.get("value", "")))
    return said


def first_said(found: Mapping[str, object]) -> dict[str, str]:
    """The first thing that an annotation's bodies say for each purpose."""
    return {purpose: values[0] for purpose, values in said_of(found).items()}


def quote_of(found: Mapping[str, object]) -> Mapping[str, object]:
    """The words that an annotation is on, as its selector quotes them; empty where it is on the whole."""
    target = found.get("target")
    selector = target.get("selector") if isinstance(target, Mapping) else None
    return selector if isinstance(selector, Mapping) else {}


def maker_of(found: Mapping[str, object]) -> str:
    """The name of who made an annotation; empty where it names nobody."""
    creator = found.get("creator")
    return str(creator.get("name", "")) if isinstance(creator, Mapping) else ""
