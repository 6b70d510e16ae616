"""``marks.jsonl``: what the writer said of the marks, one W3C Web Annotation a line.

A line that is no stet, or that cannot be read, is kept as it stands.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.3.5 and 4.2.4.
"""

from __future__ import annotations

import json
from collections.abc import Mapping

from fairhand.model.problem import Problem
from fairhand.model.stet import Stet
from fairhand.proof.stets import name_stet

WHERE = "marks.jsonl"
STET = "stet"
"""The tag that tells a stet from whatever else may be annotated."""


def read_marks(text: str) -> tuple[tuple[Stet, ...], tuple[Problem, ...]]:
    """The stets that the text holds, with a problem for each line that cannot be read.

    >>> stets, problems = read_marks(add_mark("", Stet("doubled-word", "had had", "He ", " enough.", reason="meant")))
    >>> stets[0].exact, stets[0].reason, problems
    ('had had', 'meant', ())
    """
    stets, problems = [], []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        try:
            stet = _read_line(line)
        except (ValueError, RecursionError) as error:
            where = f"{WHERE}, line {number}"
            problems.append(Problem(where, f"it is no annotation ({error})", "mend the line, or take it out"))
            continue
        if stet is not None:
            stets.append(stet)
    return tuple(stets), tuple(problems)


def add_mark(text: str, stet: Stet) -> str:
    """The file's text with one stet more, at its end; a former one on the same words gives way."""
    kept = drop_mark(text, name_stet(stet))
    return f"{kept}{'' if not kept or kept.endswith(chr(10)) else chr(10)}{_tell(stet)}\n"


def drop_mark(text: str, name: str) -> str:
    """The file's text without the stet of that name; every other line stands as it was."""
    return "\n".join(line for line in text.split("\n") if not _is_named(line, name))


def _is_named(line: str, name: str) -> bool:
    try:
        stet = _read_line(line)
    except (ValueError, RecursionError):
        return False
    return stet is not None and name_stet(stet) == name


def _tell(stet: Stet) -> str:
    """A stet as an annotation."""
    said = [("tagging", STET), ("classifying", stet.check), ("commenting", stet.reason)]
    said += [("identifying", one) for one in stet.concerns]
    target: dict[str, object] = {"source": "draft.md"}
    if stet.exact:
        quote = {"exact": stet.exact, "prefix": stet.before, "suffix": stet.after}
        target["selector"] = {"type": "TextQuoteSelector", **quote}
    annotation = {
        "@context": "http://www.w3.org/ns/anno.jsonld",
        "type": "Annotation",
        "motivation": "assessing",
        "created": stet.when,
        "body": [{"type": "TextualBody", "purpose": why, "value": value} for why, value in said if value],
        "target": target,
    }
    return json.dumps({key: value for key, value in annotation.items() if value}, ensure_ascii=False)


def _read_line(line: str) -> Stet | None:
    """The stet that a line holds; None where it is another annotation."""
    found = json.loads(line)
    if not isinstance(found, Mapping):
        message = "no object with a body and a target"
        raise ValueError(message)  # noqa: TRY004 - as a fault of the text, like those of the JSON reader
    said = said_of(found)
    if STET not in said.get("tagging", ()):
        return None
    quote = quote_of(found)
    return Stet(
        check="".join(said.get("classifying", ())[:1]),
        exact=str(quote.get("exact", "")),
        before=str(quote.get("prefix", "")),
        after=str(quote.get("suffix", "")),
        concerns=tuple(said.get("identifying", ())),
        reason="".join(said.get("commenting", ())[:1]),
        when=str(found.get("created", "")),
    )


def load_annotation(line: str) -> Mapping[str, object]:
    """What a line holds; nothing where it is no object."""
    try:
        found = json.loads(line) if line.strip() else {}
    except (ValueError, RecursionError):
        return {}
    return found if isinstance(found, Mapping) else {}


def said_of(found: Mapping[str, object]) -> dict[str, list[str]]:
    """What an annotation's bodies say, by their purpose."""
    said: dict[str, list[str]] = {}
    for body in _list(found.get("body")):
        if isinstance(body, Mapping):
            said.setdefault(str(body.get("purpose", "")), []).append(str(body.get("value", "")))
    return said


def quote_of(found: Mapping[str, object]) -> Mapping[str, object]:
    """The words that an annotation is on, as its selector quotes them; empty where it is on the whole."""
    target = found.get("target")
    selector = target.get("selector") if isinstance(target, Mapping) else None
    return selector if isinstance(selector, Mapping) else {}


def _list(value: object) -> list[object]:
    return value if isinstance(value, list) else [] if value is None else [value]
