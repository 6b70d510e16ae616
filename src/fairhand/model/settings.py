"""What the writer has set down once: for the desk, for a course, for one paper."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from fairhand.model.requirement import Value


@dataclass(frozen=True)
class DeskSettings:
    """The contents of ``desk.toml``."""

    name: str = ""
    """The writer's name, as it stands on a paper."""
    time_zone: str = ""
    """An IANA name; empty for the machine's own."""
    spelling: Literal["US", "GB", ""] = ""
    sources_per_main_point: int = 2
    sources_per_optional_point: int = 1
    """How many independent sources a point needs: the writer's own rule."""
    outside: bool = False
    """Whether the writer allows registries and addresses elsewhere to be asked."""
    other: Mapping[str, object] = field(default_factory=dict)
    """Settings of later parts, kept as read."""


@dataclass(frozen=True)
class CourseSettings:
    """The contents of ``course.toml``."""

    folder: str = ""
    title: str = ""
    teacher: str = ""
    institution: str = ""
    style: str = ""
    other: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class Answer:
    """What the writer says of one requirement: answered, corrected or waived."""

    values: Mapping[str, Value] = field(default_factory=dict)
    """Values that stand in place of those read off the sheet."""
    waived: bool = False
    by: str = ""
    """Who said so: the teacher, usually."""
    when: str = ""
    note: str = ""
    """The answer in words, where it is not a value."""


@dataclass(frozen=True)
class PaperSettings:
    """The contents of ``paper.toml``."""

    title: str = ""
    course: str = ""
    """Name of the course's folder under ``courses/``."""
    given: dt.date | None = None
    """The day that the sheet was given out."""
    style: str = ""
    assignment: str = ""
    """Which of the papers that the sheet asks for this one is."""
    answers: Mapping[str, Answer] = field(default_factory=dict)
    """By requirement id."""
    other: Mapping[str, object] = field(default_factory=dict)
