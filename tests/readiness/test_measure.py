"""How loud each check may be."""

from __future__ import annotations

import pytest

from fairhand.readiness.measure import loudest_allowed, measured_table, wilson_lower_bound
from fairhand.readiness.table import CHECKS


def test_wilson_lower_bound() -> None:
    """Source: R. G. Newcombe, Statistics in Medicine 17 (1998), table I (from memory)."""
    assert wilson_lower_bound(81, 263) == pytest.approx(0.2553, abs=5e-5)
    assert wilson_lower_bound(15, 148) == pytest.approx(0.0624, abs=5e-5)


def test_every_check_has_its_row() -> None:
    """A check without a measured precision would stay silent."""
    assert {check.name for check in CHECKS} == set(measured_table())
    assert all(loudest_allowed(check.name) for check in CHECKS)


def test_a_check_is_as_loud_as_its_row() -> None:
    """An unknown check says nothing."""
    assert loudest_allowed("no-such-check") is None
