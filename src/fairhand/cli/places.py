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


class PaperFirst(click.Command):
    """A command whose first word names the paper; it may be left out where one stands in the paper's folder.

    The paper may be named by ``--paper`` too, as some commands once had it.
    """

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The words after the command, with the paper in the first place."""
        said = self.make_parser(ctx).parse_args(list(args))[0]
        if isinstance(older := said.get("older"), str):
            return super().parse_args(ctx, [older, *args])
        first = said.get("paper")
        left_out = not (isinstance(first, str) and names_a_paper(first)) and names_a_paper(".")
        return super().parse_args(ctx, [".", *args] if left_out else args)


def names_a_paper(word: str) -> bool:
    """Whether a word after a command is a paper's folder, or the name of a paper on the desk that one stands on.

    >>> names_a_paper("no such folder")
    False
    """
    from fairhand.desk.places import find_paper, is_paper
    from fairhand.errors import NoPaperHere

    try:
        named = Path(word)
        return not named.is_file() and (not named.exists() or is_paper(named)) and is_paper(find_paper(named))
    except (NoPaperHere, OSError, ValueError):
        return False


EARLIEST, LATEST = 2000, 2199
"""The first and the last year that a day of a plan may have."""


class Day(click.ParamType[dt.date]):
    """A day, as 2027-01-18."""

    name = "day"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dt.date:
        """The day that the text names."""
        if isinstance(value, dt.date):
            return value
        try:
            day = dt.date.fromisoformat(str(value))
        except ValueError:
            self.fail(f"{value} is no day; write it as 2027-01-18", param, ctx)
        if not EARLIEST <= day.year <= LATEST:
            self.fail(f"{value} is too far from today; write a year from {EARLIEST} to {LATEST}", param, ctx)
        return day


class Noon(Day):
    """A day's noon, in the zone of this machine."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dt.datetime:
        """Noon of the day that the text names."""
        day = super().convert(value, param, ctx)
        return dt.datetime.combine(day, dt.time(12)).astimezone()


def paper_argument(command: F) -> F:
    """Gives the command an argument PAPER: the paper's folder; the one it stands in, if none is named."""
    return click.argument("paper", type=PaperFolder(), default=".")(command)


def older_paper_option(command: F) -> F:
    """Gives the command the option ``--paper``, another way to name the paper, of which the help says nothing."""
    return click.option("--paper", "older", hidden=True, expose_value=False)(command)


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
