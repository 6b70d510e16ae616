"""Writes the reference pages of ``docs/`` from the code: ``python tools/write_reference.py``.

A test holds the pages to what this would write.
"""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli import COMMANDS, commands
from fairhand.readiness.measure import loudest_allowed, measured_table
from fairhand.readiness.table import CHECKS

DOCS = Path(__file__).resolve().parents[1] / "docs"
ABOUT_CHECKS = """# Checks

What each check looks for, in the order in which they run. Its weight is how loud it may be: a *must*, a *should*, or a
*query*, which asks. A single finding can be quieter than its check. How the precision decides the weight stands in
`src/fairhand/readiness/measure.py`.

| check | pass | weight | looks for | rule | right of its alarms |
| --- | --- | --- | --- | --- | --- |
"""
ENDINGS = """Each ends with 0 where it was done (or the paper is ready), with 1 where the paper is not ready or
something is to be answered, and with 2 where the request could not be met.
"""
MADE = "<!-- Written from the code by tools/write_reference.py: change it there. -->\n\n"


def command_page() -> str:
    """Every command with its help, as the terminal shows it."""
    out = [MADE, "# Commands\n\n", ENDINGS]
    top = commands.make_context("fairhand", [], resilient_parsing=True)
    for name in COMMANDS:
        command = commands.get_command(top, name)
        if command is None:
            continue
        context = click.Context(command, info_name=name, parent=top, max_content_width=100, terminal_width=100)
        out.append(f"\n## {name}\n\n{COMMANDS[name]}\n\n```text\n{command.get_help(context)}\n```\n")
    return "".join(out)


def check_page() -> str:
    """Every check with its pass, weight and rule."""
    rows = []
    for check in CHECKS:
        cells = (f"`{check.name}`", check.in_pass, min_weight(check.name, check.weight), check.looks_for, check.rule)
        rows.append(f"| {' | '.join((*cells, precision(check.name)))} |")
    return "".join((MADE, ABOUT_CHECKS, *(f"{row}\n" for row in rows)))


def min_weight(name: str, weight: str) -> str:
    """The check's own weight, or the quieter one that it has earned."""
    allowed = loudest_allowed(name)
    order = ["query", "should", "must"]
    return min(weight, allowed or "query", key=order.index)


def precision(name: str) -> str:
    """What was measured of a check, in words."""
    row = measured_table()[name]
    if row.get("exact"):
        return "reads off the file"
    return f"{row['right']} of {row['alarms']}: {row['on']}"


PAGES = {"commands.md": command_page, "checks.md": check_page}
"""The pages that are written, and by what."""

if __name__ == "__main__":
    for page, write in PAGES.items():
        (DOCS / page).write_text(write(), "utf-8")
