"""The arguments that name a place, or a day."""

from __future__ import annotations

import datetime as dt
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])


class PaperFolder(click.ParamType[Path]):
    """A paper's folder, or a file in it."""

    name = "paper"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Path:  # noqa: ARG002
        """The folder of the paper at that place."""
        from fairhand.desk.places import find_paper

        return find_paper(Path(value))


class Day(click.ParamType[dt.date]):
    """A day, as 2027-01-18."""

    name = "day"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dt.date:
        """The day that the text names."""
        if isinstance(value, dt.date):
            return value
        try:
            return dt.date.fromisoformat(str(value))
        except ValueError:
            self.fail(f"{value} is no day; write it as 2027-01-18", param, ctx)


class Noon(Day):
    """A day's noon, in the zone of this machine."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dt.datetime:
        """Noon of the day that the text names."""
        day = super().convert(value, param, ctx)
        return dt.datetime.combine(day, dt.time(12)).astimezone()


def paper_argument(command: F) -> F:
    """Gives the command an argument PAPER: the paper's folder; the one it stands in, if none is named."""
    return click.argument("paper", type=PaperFolder(), default=".")(command)


def typed(folder: Path) -> str:
    """A paper's folder as it is named after a command from where one stands; nothing where one stands in it.

    >>> typed(Path().absolute())
    ''
    >>> typed(Path().absolute() / "the desk" / "seals")
    " 'the desk/seals'"
    """
    here = Path().absolute()
    path = folder.absolute()
    if path == here:
        return ""
    return f" {shlex.quote((path.relative_to(here) if path.is_relative_to(here) else path).as_posix())}"


DAY, NOON = Day(), Noon()
