"""A page to write on: one of the writer's texts, plain, kept by a button and, with scripts, at each pause."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.session.editing import read_text, save_text
from fairhand.web.asked import Asked
from fairhand.web.both import Versions, show_both
from fairhand.web.error_pages import page_of

PAUSE_MS = 400
"""Milliseconds without a key after which what is typed is kept."""


@dataclass(frozen=True)
class PlainPage:
    """The page of one text."""

    leaf: str
    """The last part of its address."""
    file: str
    title: str
    empty: str
    """What to do while nothing is written."""
    step: str
    """What to do then."""
    template: str = "plain_page.html"

    def show(self, asked: Asked, **values: Any) -> Response:
        """The text as it stands on disk, with what else the template names."""
        written = read_text(self.folder(asked), self.file)
        return asked.page(
            self.template,
            title=self.title,
            step=self.step if written.text.strip() else self.empty,
            here=self.at(asked),
            written=written,
            pause=PAUSE_MS,
            says="",
            **values,
        )

    def save(self, asked: Asked, **query: str) -> Response:
        """The text as it was typed, never over what another program wrote; the page again, or a word on its line.

        Args:
            asked: The request.
            query: What the page's address says then.
        """
        if asked.is_small:
            return self._keep(asked)
        try:
            self._write(asked)
        except DraftChangedOnDisk:
            now = read_text(self.folder(asked), self.file)
            return show_both(asked, Versions(self.file, asked.form.matter("text"), now.text, now.seen or ""))
        see = asked.form.text("see")
        return asked.go(self.at(asked, at=see, **({"see": see} if see else {}), **query))

    def folder(self, asked: Asked) -> Path:
        """Where the text stands."""
        return asked.paper.folder

    def at(self, asked: Asked, *, at: str = "", **query: str) -> str:
        """The address of the page."""
        return asked.to(self.leaf, at=at, **query)

    def save_text(self, asked: Asked, text: str, seen: str | None) -> str:
        """The text kept; the hash of its bytes."""
        return save_text(self.folder(asked), self.file, text, seen).sha256

    def _keep(self, asked: Asked) -> Response:
        """At a pause: the hash that the next one is made from; what stands against it is said, and nothing replaced."""
        try:
            return asked.piece("kept.html", says="Kept.", seen=self._write(asked))
        except DraftChangedOnDisk:
            says = f"Another program changed {self.file} while you were writing. Nothing is lost: save, and choose."
            return asked.piece("kept.html", status=409, says=says, seen=asked.form.text("seen"))
        except FairhandError as error:
            says = f"Not kept. {error}."
            return asked.piece("kept.html", status=page_of(error)[0], says=says, seen=asked.form.text("seen"))

    def _write(self, asked: Asked) -> str:
        typed, seen = asked.form.matter("text"), asked.form.text("seen") or None
        present = read_text(self.folder(asked), self.file)
        if typed == present.text:
            return present.seen or ""  # sent twice, or nothing changed
        return self.save_text(asked, typed, seen)
