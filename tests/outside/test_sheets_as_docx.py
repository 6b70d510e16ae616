"""Files of word processors read as sheets.

**Source**: ``data/docx``, the test files of several open-source word processors and converters (its README names each).
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.errors import FileUnreadable
from fairhand.session.assignment.sheets import read_sheets


def test_no_file_of_a_word_processor_stops_the_reading(
    outside_data: Callable[[str], Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Each is read as a sheet, or is said in one line to hold no text."""
    files = sorted(outside_data("data/docx").rglob("*.docx"))
    refused = []
    for file in files:
        try:
            read_sheets(file, dt.date(2027, 1, 1))
        except FileUnreadable as error:
            refused.append(str(error))
    with capsys.disabled():
        print(f"\n{len(files)} DOCX files as sheets: {len(files) - len(refused)} read, {len(refused)} without text")
    assert all("there is no text in it" in each and "\n" not in each for each in refused)
    assert len(refused) <= 11
