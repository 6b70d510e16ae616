"""``fairhand citations``: how each citation was understood."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say, say_rows
from fairhand.model.span import line_at


@click.command("citations")
@paper_argument
def command(paper: Path) -> None:
    """Show which source each citation in the draft of PAPER was taken to mean, and why."""
    from fairhand.session.opened import OpenPaper

    analysis = OpenPaper(paper).look()
    draft = analysis.paper.draft
    if not analysis.resolved:
        say("The draft cites nothing yet.")
    for resolved in analysis.resolved:
        line = line_at(draft, resolved.cite.span.start)
        say(f"line {line}: {' '.join(resolved.cite.span.of(draft).split())}", 2, 6)
        say_rows([(resolved.entry or "?", resolved.why)], 6)
