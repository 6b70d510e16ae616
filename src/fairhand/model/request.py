"""What a room asks of an engine: the session runs it at the edge and hands back the answer."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field

from fairhand.model.problem import Problem


@dataclass(frozen=True)
class PandocRequest:
    """One run of pandoc."""

    args: tuple[str, ...]
    """Its arguments; a name in ``files`` stands for that file."""
    stdin: bytes = b""
    files: Mapping[str, bytes] = field(default_factory=dict)
    """Files that the run needs, by bare name."""
    output: str = ""
    """The bare name of the file that it writes, or empty where it writes to standard output."""


@dataclass(frozen=True)
class TypesetJob:
    """One run of typst."""

    source: str
    """Typst source, UTF-8."""
    files: Mapping[str, bytes] = field(default_factory=dict)
    """Pictures by the path that ``source`` names."""
    dated: dt.datetime | None = None
    """The date that the PDF carries; the same job with the same date gives the same bytes."""


@dataclass(frozen=True)
class Typeset:
    """What came of a run of typst."""

    pdf: bytes
    pages: int
    """Sheets, the title page and the list of references included."""
    places: Mapping[str, tuple[int, float]] = field(default_factory=dict)
    """Page (from 1) and distance from the page's top edge (in points) of each labelled place."""
    problems: tuple[Problem, ...] = ()
    """Pictures that could not be read, characters that no typeface has."""


@dataclass(frozen=True)
class WebRequest:
    """One thing asked of a server elsewhere; nothing is sent but what stands here."""

    address: str
    """Where: https, or this machine."""
    accept: str = "*/*"
    """The media type that is asked for."""


@dataclass(frozen=True)
class WebAnswer:
    """What a server sent."""

    address: str
    """Where it came from in the end."""
    media_type: str
    """Its media type in small letters, without parameters."""
    data: bytes
