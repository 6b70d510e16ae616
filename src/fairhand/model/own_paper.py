"""Another paper of the writer's own."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.model.source import SourceText


@dataclass(frozen=True, slots=True)
class OwnPaper:
    """What the writer wrote elsewhere on the desk."""

    name: str
    """The folder's name."""
    title: str
    """The title of its draft, or the folder's name."""
    text: SourceText
    """Its draft, as one part without pages."""
    put_away: bool = False
    """Whether it was put away when it had come back."""
