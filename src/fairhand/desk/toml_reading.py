"""TOML read as far as it can be: each fault is named with its line, and the rest is kept."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from fairhand.model.problem import Problem

_T = TypeVar("_T")
_AT_LINE = re.compile(r"\(at (?:line (\d{1,9}), column (\d{1,9})|end of document)\)")
_MOST_FAULTS = 10
"""After so many faulty lines the file is taken for something else than TOML."""
_KINDS = {str: "text in quotation marks", int: "a whole number", bool: "true or false", dict: "a table"}


def read_toml(text: str, name: str) -> tuple[dict[str, object], list[Problem]]:
    r"""What a TOML text holds, leaving out its faulty lines.

    >>> read_toml('title = "Tides"\nstyle = MLA\n', "paper.toml")[0]
    {'title': 'Tides'}

    Args:
        text: The file's text.
        name: The file's name.

    Returns:
        The values, and a problem for each faulty line.
    """
    lines = text.replace("\r\n", "\n").split("\n")
    problems: list[Problem] = []
    while True:
        try:
            return tomllib.loads("\n".join(lines)), problems
        except tomllib.TOMLDecodeError as error:
            place = _AT_LINE.search(str(error))
            what = str(error)[: place.start()].rstrip() if place else str(error)
            number = int(place[1]) if place and place[1] else _last_line(lines)
            column = f", column {place[2]}" if place and place[2] else ""
            where = f"{name}, line {number}{column}"
            problems.append(Problem(where, f"it is not TOML ({what})", "mend that line; it is left out now"))
            if len(problems) == _MOST_FAULTS or not lines[number - 1 : number] or not lines[number - 1]:
                return {}, problems
            lines[number - 1] = ""
        except RecursionError:
            return {}, [*problems, Problem(name, "its tables are nested too deeply", "write it more simply")]


def _last_line(lines: list[str]) -> int:
    return max((number for number, line in enumerate(lines, 1) if line.strip()), default=1)


@dataclass
class Taking:
    """A TOML table whose known settings are taken out one by one, each with its type looked at."""

    table: Mapping[str, object]
    where: str
    """The file, and the table in it."""
    problems: list[Problem] = field(default_factory=list)
    taken: set[str] = field(default_factory=set)

    def take(self, key: str, kind: type[_T], default: _T) -> _T:
        """The value of a setting, or the default where it is missing or of another type (which is a problem)."""
        self.taken.add(key)
        value = self.table.get(key, default)
        if isinstance(value, kind) and not (kind is int and isinstance(value, bool)):
            return value
        self.refuse(key, f"it should be {_KINDS.get(kind, kind.__name__)}")
        return default

    def refuse(self, key: str, what: str) -> None:
        """The problem that a setting is not as it should be."""
        self.problems.append(Problem(f"{self.where}, {key}", what, "mend it; it is left out now"))

    @property
    def other(self) -> dict[str, object]:
        """The settings that were not taken."""
        return {key: value for key, value in self.table.items() if key not in self.taken}
