"""Published and worked figures for how much has been found.

Source: Chapman 1951; Kastner et al. 2009; Good 1953; Chao 1984; worked examples of their formulas (common practice).
scikit-bio is a second reading of the same formulas, where it is installed.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.evidence.share_found import coverage_of, estimate_by_two_routes, estimate_richness
from fairhand.session.opened import OpenPaper

LISTS = [9 * [1] + 6 * [2] + 3 * [3] + 2 * [5], [0, 1, 1, 4, 2, 5, 2, 4, 1, 2]]


def test_two_routes() -> None:
    """18 and 15 with 9 in common; the range never goes below what was found."""
    found = estimate_by_two_routes(18, 15, 9)
    assert [round(x, 2) for x in (found.total, found.error)] == [29.4, 3.86]
    assert [round(x, 1) for x in (found.low, found.high)] == [21.8, 37.0]
    assert (found.found, found.at_least, found.enough) == (24, 24, True)


def test_too_few_to_tell() -> None:
    """5 and 4 with none in common tell nothing."""
    found = estimate_by_two_routes(5, 4, 0)
    assert (found.total, round(found.error, 1), found.enough) == (29, 17.3, False)


def test_a_database_against_citation_chasing() -> None:
    """24 and 20 with 12 in common."""
    found = estimate_by_two_routes(24, 20, 12)
    assert (found.found, round(found.total, 1), round(found.error, 1), round(found.share, 2)) == (32, 39.4, 4.6, 0.81)


def test_coverage_and_richness() -> None:
    """Both worked lists, plain and corrected."""
    assert sum(LISTS[0]) == 40
    assert [round(coverage_of(one), 4) for one in LISTS] == [0.775, 0.8636]
    assert [estimate_richness(one, corrected=False).total for one in LISTS] == [26.75, 10.5]
    assert [round(estimate_richness(one).total, 2) for one in LISTS] == [25.14, 9.75]


@given(st.lists(st.integers(0, 30)))
def test_as_a_reference_library_has_it(counts: list[int]) -> None:
    """Any counts give what scikit-bio gives."""
    alpha = pytest.importorskip("skbio.diversity.alpha", reason="scikit-bio is not installed: pip install scikit-bio")
    if any(counts):
        assert estimate_richness(counts).total == pytest.approx(alpha.chao1(counts))
        assert coverage_of(counts) == pytest.approx(alpha.goods_coverage(counts))


@given(st.integers(0, 60), st.integers(0, 60), st.integers(0, 60))
def test_no_estimate_is_below_what_was_found(first: int, second: int, both: int) -> None:
    """Nor is its range."""
    found = estimate_by_two_routes(first, second, min(first, second, both))
    assert found.total >= found.found - 1e-9
    assert found.found <= found.at_least <= max(found.high, found.found)


@pytest.mark.parametrize("name", ["harbour-strike", "rain-gardens"])
def test_main_points_of_whole_papers(outside_data: Callable[[str], Path], name: str) -> None:
    """Single sources and dependent pairs are those that the papers' key names, and no others."""
    import json

    folder = outside_data("papers") / name
    key = json.loads((folder / "gold.json").read_text("utf-8"))["support"]
    support = OpenPaper(folder).look().support
    single = {s.point.id for s in support if s.point.weight == "main" and len(s.sources) == 1}
    pairs = {(s.point.id, frozenset((d.first, d.second))) for s in support for d in s.dependences}
    assert single == {one["point"] for one in key if one["issue"] == "single-source"}
    assert pairs == {(one["point"], frozenset(one["sources"])) for one in key if one["issue"] == "not-independent"}
    print(f"{name}: {len(single)} single-source and {len(pairs)} dependent, none besides")
