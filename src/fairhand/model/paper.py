"""One paper, as everything above the disk sees it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field

from fairhand.model.entry import Entry
from fairhand.model.focus import Focus
from fairhand.model.own_paper import OwnPaper
from fairhand.model.point import Points
from fairhand.model.problem import Problem
from fairhand.model.requirement import Brief, Requirement
from fairhand.model.ruling import Ruling
from fairhand.model.settings import Answer, CourseSettings, DeskSettings, PaperSettings
from fairhand.model.source import SourceText
from fairhand.model.stet import Stet

DEFAULT_STYLE = "apa-7"
"""The style of a paper for which nobody has named one; it is said, and asked."""


@dataclass(frozen=True)
class Paper:
    """A paper's folder, read once and never changed; whatever is missing is empty."""

    name: str
    """The folder's name."""
    draft: str = ""
    entries: tuple[Entry, ...] = ()
    texts: Mapping[str, SourceText] = field(default_factory=dict)
    """The sources' texts by entry id, read when first asked for; a source of which no text is at hand is not in it."""
    points: Points = field(default_factory=Points)
    focus: Focus = field(default_factory=Focus)
    """What the paper is about, and the questions to read for."""
    brief: Brief = field(default_factory=Brief)
    requirements: tuple[Requirement, ...] = ()
    """The brief's requirements with the writer's corrections in them, waived ones included."""
    answers: Mapping[str, Answer] = field(default_factory=dict)
    """What the writer said of them, by requirement id."""
    settings: PaperSettings = field(default_factory=PaperSettings)
    course: CourseSettings = field(default_factory=CourseSettings)
    desk: DeskSettings = field(default_factory=DeskSettings)
    stets: tuple[Stet, ...] = ()
    """What the writer lets stand."""
    words: tuple[str, ...] = ()
    """Words that the writer added to the list of the desk."""
    own_papers: tuple[OwnPaper, ...] = ()
    """The writer's other papers on the desk, which the draft is held against too."""
    rulings: tuple[Ruling, ...] = ()
    """What the writer decided of the independence of two sources."""
    style: str = DEFAULT_STYLE
    """Name of the citation style, as ``citing.styles`` knows it."""
    style_csl: bytes | None = None
    """A CSL file of the writer's own, where the style is none of the shipped ones."""
    style_why: str = ""
    """Who chose the style: the sheet, the course, the writer, or nobody yet."""
    style_named: bool = True
    """Whether anybody chose it."""
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    """The pictures that the draft shows, by the path it gives."""
    problems: tuple[Problem, ...] = ()
    now: dt.datetime | None = None
    """The present hour, in the desk's zone; None where deadlines are not judged."""
