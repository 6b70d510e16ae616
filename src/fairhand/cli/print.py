"""``fairhand print``: the fair copy."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say
from fairhand.errors import MatterLeft

KINDS = ("pdf", "docx", "odt", "html", "md")


@click.command("print")
@paper_argument
@click.option("--as", "kind", type=click.Choice(KINDS), default="pdf", show_default=True, help="The kind of file.")
@click.option("--to", type=click.Path(path_type=Path), help="Where to write it (default: fair/ in the paper's folder).")
@click.option(
    "--proof", is_flag=True, help="For marking by hand: lines numbered, margins wide, a leaf of the marks (PDF)."
)
@click.option("--anyway", is_flag=True, help="Print although asides or TKs are left; they are left out.")
@click.option("--bibliography", is_flag=True, help="Print the annotated bibliography instead, from the notes.")
def command(paper: Path, kind: str, to: Path | None, proof: bool, anyway: bool, bibliography: bool) -> None:
    """Make the fair copy of PAPER. Asides and TKs never print."""
    from fairhand.session.hand_in.printing import print_paper
    from fairhand.session.research.annotated import print_annotated

    try:
        printed = (
            print_annotated(paper, kind, to=to, proof=proof)
            if bibliography
            else print_paper(paper, kind, to=to, proof=proof, anyway=anyway)
        )
    except MatterLeft as left:
        if not sys.stdin.isatty() or not click.confirm(f"{left}.\nPrint without them?"):
            message = f"{left}, or print without them (--anyway)"
            raise MatterLeft(message) from left
        printed = print_paper(paper, kind, to=to, proof=proof, anyway=True)
    pages = f" ({printed.pages} pages)" if printed.pages else ""
    say(f"Printed {printed.path}{pages}.")
    for note in printed.notes:
        say(f"Note. {note}", 2)
