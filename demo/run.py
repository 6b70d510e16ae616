"""The demo: a desk with one paper, judged, printed and opened in a folder that may be kept or thrown away."""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

from fairhand.cli import commands
from fairhand.session.demo import lay_out_demo

AS_OF = "2027-02-08"
"""The day that the demo's deadlines are judged by."""


def run(*words: str) -> None:
    """Shows a command and what it prints."""
    print(f"\n$ fairhand {' '.join(words)}\n", flush=True)
    commands.main(args=list(words), prog_name="fairhand", standalone_mode=False)


def main() -> None:
    """Lays the desk out, judges the paper, prints it twice, and opens the desk where somebody is there to look."""
    for stream in (sys.stdout, sys.stderr):
        stream.reconfigure(encoding="utf-8")  # type: ignore[union-attr]
    desk = Path(tempfile.mkdtemp(prefix="fairhand-demo-"))
    paper = lay_out_demo(desk)
    print(f"The demo's desk is in {desk}.")
    run("ready", str(paper), "--on", AS_OF)
    run("print", str(paper), "--as", "pdf", "--anyway")
    run("print", str(paper), "--as", "docx", "--anyway")
    print(f"\nMend the draft, {paper / 'draft.md'}, in any editor, and ask again:\n$ fairhand ready {paper}")
    if sys.stdin.isatty() and not os.environ.get("CI"):
        run("open", str(desk), "--on", AS_OF)


if __name__ == "__main__":
    main()
