"""One reading of a short sheet, for the tests of each kind."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


@pytest.fixture
def values_of() -> Reading:
    """The values of one kind that a sheet's text gives, given out on 1 September 2026 unless said otherwise."""

    def read(kind: str, text: str, given: dt.date = dt.date(2026, 9, 1)) -> list[dict[str, Value]]:
        brief = read_brief([("sheet.txt", text)], given)
        return [dict(r.values) for r in brief.requirements if r.kind == kind]

    return read
