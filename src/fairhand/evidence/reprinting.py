"""Whether two sources print one text: a notice passed on, an article printed twice."""

from __future__ import annotations

from fairhand.evidence.passage import Passage
from fairhand.evidence.recurring import find_wording, read_running
from fairhand.model.source import SourceText

ONE_TEXT = 0.25
"""From this share of the shorter text's shingles on, the two are one text, cut or reworked."""
FEWEST = 60
"""Shingles of the shortest text that is compared so."""


def share_printed(one: SourceText, other: SourceText) -> float:
    """The share of the shorter text's runs of five words that stand in the longer; 0 where it is too short to tell."""
    first, second = (read_running(text).starts.keys() for text in (one, other))
    shorter = min(len(first), len(second))
    return len(first & second) / shorter if shorter >= FEWEST else 0.0


def find_reprint(one: SourceText, other: SourceText) -> tuple[Passage, Passage] | None:
    """A passage that both print, where so much stands in both that they are one text."""
    return find_wording(one, other) if share_printed(one, other) >= ONE_TEXT else None
