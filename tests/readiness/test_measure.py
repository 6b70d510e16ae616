"""How loud each check may be."""

from __future__ import annotations

import pytest

from fairhand.readiness.measure import loudest_allowed, loudest_earned, measured_table, wilson_lower_bound
from fairhand.readiness.table import CHECKS


def test_wilson_lower_bound() -> None:
    """Source: R. G. Newcombe, Statistics in Medicine 17 (1998), table I (from memory)."""
    assert wilson_lower_bound(81, 263) == pytest.approx(0.2553, abs=5e-5)
    assert wilson_lower_bound(15, 148) == pytest.approx(0.0624, abs=5e-5)


def test_every_check_has_its_row() -> None:
    """A check without a measured precision would stay silent."""
    assert {check.name for check in CHECKS} == set(measured_table())
    assert all(loudest_allowed(check.name) for check in CHECKS)


def test_an_unknown_check_says_nothing() -> None:
    """What has no row has earned no voice."""
    assert loudest_allowed("no-such-check") is None


@pytest.mark.parametrize(
    ("right", "alarms", "loudest"),
    [(20, 20, "must"), (19, 19, "query"), (95, 100, "must"), (87, 100, "query"), (60, 100, None), (0, 0, None)],
)
def test_a_check_is_as_loud_as_its_row(right: int, alarms: int, loudest: str | None) -> None:
    """Loud from .80 over twenty alarms, asking above .60, by the lower bound; else silent."""
    assert loudest_earned(right, alarms) == loudest


def test_a_row_says_what_was_measured() -> None:
    """A check either reads off the file, or has its alarms counted and says on what."""
    for name, row in measured_table().items():
        assert set(row) in ({"exact"}, {"right", "alarms", "on"}), name
        assert row.get("exact") is True or (0 <= row["right"] <= row["alarms"] and len(row["on"]) < 120), name
