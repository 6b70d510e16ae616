"""``fairhand open``: the desk in a browser."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from fairhand.cli.places import NOON


@click.command("open")
@click.argument("desk", type=click.Path(path_type=Path, file_okay=False), default=".")
@click.option("--no-browser", is_flag=True, help="Only print the address.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="The port (default: a free one).")
@click.option("--on", "at", type=NOON, help="Judge deadlines as of that day (2027-02-08).")
def command(desk: Path, no_browser: bool, port: int, at: dt.datetime | None) -> None:
    """Show the desk at DESK in your browser; a new folder is made there. Nothing leaves this machine."""
    from fairhand.desk.places import find_desk
    from fairhand.session.beginning import begin_folder
    from fairhand.web.serving import serve

    if begin_folder(desk):
        click.echo(f"{desk} is a new folder.")
    serve(find_desk(desk) or desk, click.echo, open_browser=not no_browser, port=port, at=at)
