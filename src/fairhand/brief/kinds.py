"""The visible, ordered table of the kinds of requirement: each kind's reader, and the value that names it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from fairhand.brief.due import find_due
from fairhand.brief.element import find_element
from fairhand.brief.format import find_format
from fairhand.brief.late import find_late
from fairhand.brief.late_terms import LATE_TERMS
from fairhand.brief.layout import Sheet
from fairhand.brief.length import find_length
from fairhand.brief.policy import find_policy
from fairhand.brief.rubric import find_rubric
from fairhand.brief.section import find_section
from fairhand.brief.sources import find_sources
from fairhand.brief.sources_banned import find_sources_banned
from fairhand.brief.style import find_style
from fairhand.brief.submit import find_submit
from fairhand.brief.task import find_task
from fairhand.model.requirement import Kind, Requirement

Reader = Callable[[Sheet], list[Requirement]]


@dataclass(frozen=True, slots=True)
class KindRow:
    """One kind of requirement."""

    kind: Kind
    names: tuple[str, ...]
    """Every value of the kind, in the order of ``docs/requirements.md``."""
    main: str
    """The value that ends its id; empty where the kind alone is the id."""
    read: Reader


KINDS: tuple[KindRow, ...] = (
    KindRow("task", ("verb",), "verb", find_task),
    KindRow(
        "length",
        ("unit", "min", "max", "words_per_page", "about", "excludes", "part", "uncounted", "counted"),
        "part",
        find_length,
    ),
    KindRow("due", ("what", "on", "at"), "what", find_due),
    KindRow("sources", ("min", "max", "type", "since", "cited"), "type", find_sources),
    KindRow("sources_banned", ("what",), "", find_sources_banned),
    KindRow("style", ("style", "edition"), "", find_style),
    KindRow("section", ("name", "needed"), "name", find_section),
    KindRow("element", ("what", "min", "form"), "what", find_element),
    KindRow("format", ("what", "value"), "what", find_format),
    KindRow("submit", ("by", "where"), "by", find_submit),
    KindRow("late", ("penalty", "unit", "per", "refused_after_days", *LATE_TERMS), "", find_late),
    KindRow("policy", ("what", "rule"), "what", find_policy),
    KindRow("rubric", ("criterion", "weight", "unit"), "criterion", find_rubric),
)
"""In the order in which a writer asks: what, how long, when, from what, in which form, handed in how, judged how."""

ROW_OF: dict[str, KindRow] = {row.kind: row for row in KINDS}


def base_id(requirement: Requirement) -> str:
    """The requirement's name: its kind and main value.

    >>> from fairhand.model.span import Span
    >>> base_id(Requirement("rubric", {"criterion": "Argument & analysis"}, "", Span(0, 0)))
    'rubric.argument-analysis'
    """
    main = ROW_OF[requirement.kind].main
    if not main:
        return requirement.kind
    word = re.sub(r"[^a-z0-9]+", "-", str(requirement.values.get(main, "")).lower()).strip("-")
    return f"{requirement.kind}.{word}" if word else requirement.kind


def number_ids(requirements: Iterable[Requirement]) -> tuple[Requirement, ...]:
    """The requirements with their ids; a second of the same name ends in ``-2``."""
    counts: dict[str, int] = {}
    out = []
    for requirement in requirements:
        name = base_id(requirement)
        counts[name] = counts.get(name, 0) + 1
        out.append(replace(requirement, id=name if counts[name] == 1 else f"{name}-{counts[name]}"))
    return tuple(out)
