"""Typst sets what it is given, alike on every machine."""

from __future__ import annotations

import datetime as dt

import pytest

from fairhand.errors import EngineFailed
from fairhand.model.request import TypesetJob
from fairhand.press.typst_press import BLANK_PICTURE, typeset

TITLED = '#set document(title: "A fair hand")\n#set text(font: "Tinos", lang: "en")\n'
DAY = dt.datetime(2026, 3, 3, 12, tzinfo=dt.UTC)


def test_same_job_gives_same_bytes() -> None:
    """A job set twice with the same date gives the same PDF."""
    job = TypesetJob(TITLED + "Foul papers.", dated=DAY)
    assert typeset(job).pdf == typeset(job).pdf


def test_places_and_pages_are_told() -> None:
    """Each labelled place comes back with its page and its height on it."""
    done = typeset(TypesetJob(TITLED + '#metadata("top")<place>One\n#pagebreak()\nTwo#metadata("end")<place>'))
    assert done.pages == 2
    assert [done.places["top"][0], done.places["end"][0]] == [1, 2]


def test_unreadable_picture_is_left_blank() -> None:
    """A broken picture does not keep the paper from being set, and is told."""
    job = TypesetJob(TITLED + '#image("plan", alt: "a plan")', {"plan": b"\x89PNG broken"})
    done = typeset(job)
    assert [problem.where for problem in done.problems] == ["plan"]


def test_whole_picture_is_set_without_a_word() -> None:
    """A picture that can be read brings no problem."""
    assert typeset(TypesetJob(TITLED + '#image("plan", alt: "a plan")', {"plan": BLANK_PICTURE})).problems == ()


def test_character_without_glyph_is_told() -> None:
    """A character that no face at hand has does not keep the paper from being set, and is told."""
    done = typeset(TypesetJob(TITLED + '#"a \\u{13000} b"'))
    assert done.pages == 1
    assert any("displayed" in problem.what for problem in done.problems)


def test_faulty_source_is_refused_in_one_line() -> None:
    """Source that typst refuses raises in one line."""
    with pytest.raises(EngineFailed) as failed:
        typeset(TypesetJob("#nothing-of-that-name"))
    assert "\n" not in str(failed.value)
