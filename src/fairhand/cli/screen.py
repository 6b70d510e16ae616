"""How things stand on the terminal: plain lines, wrapped with a hanging indent, no colour."""

from __future__ import annotations

import shutil
import textwrap
from collections.abc import Iterable, Sequence

import click

WIDEST = 92
"""Columns of the widest line: longer lines are hard to read."""


def width() -> int:
    """Columns to write in."""
    return max(40, min(WIDEST, shutil.get_terminal_size((WIDEST, 24)).columns))


def say(text: str = "", indent: int = 0, hang: int | None = None) -> None:
    """Prints a paragraph, wrapped.

    Args:
        text: What to say; line ends in it are kept.
        indent: Columns before its first line.
        hang: Columns before its further lines, as before the first where it is None.
    """
    for line in text.split("\n"):
        wrapped = textwrap.wrap(
            line,
            width(),
            initial_indent=" " * indent,
            subsequent_indent=" " * (indent if hang is None else hang),
            break_long_words=False,
            break_on_hyphens=False,
        )
        click.echo("\n".join(wrapped) if wrapped else "")


def say_rows(rows: Iterable[Sequence[str]], indent: int = 2) -> None:
    """Prints rows of two cells, the second ones under each other and wrapped."""
    kept = [(first, second) for first, second in rows]
    if not kept:
        return
    column = indent + min(max(len(first) for first, _ in kept), 30) + 2
    for first, second in kept:
        start = f"{' ' * indent}{first}".ljust(column)
        wrapped = textwrap.wrap(second, max(20, width() - column), break_long_words=False, break_on_hyphens=False) or [
            ""
        ]
        if len(start) > column:
            click.echo(start.rstrip())
            start = " " * column
        click.echo((start + wrapped[0]).rstrip())
        for line in wrapped[1:]:
            click.echo(" " * column + line)


def title(left: str, right: str = "") -> None:
    """Prints a title line, something at its right end."""
    gap = width() - len(left) - len(right)
    click.echo(f"{left}{' ' * gap}{right}" if right and gap > 1 else f"{left}  {right}".rstrip())
