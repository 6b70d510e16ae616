"""How often each check is right, measured again on fewer papers than ``measured.toml`` was.

Source: the novel of the Project Dialogism Novel Corpus, open-access articles of PLOS, the academic prose of GUM, and
the prose of students and learners; what was made of them, and what was read, is told in ``docs/decisions/0031``.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fairhand.readiness.measure import FEWEST_ALARMS, LOUD, loudest_allowed, measured_table, wilson_lower_bound

TOOLS = Path(__file__).resolve().parents[2] / "tools"
SETS = (
    "papers",
    *(f"data/{n}" for n in "quotations articles-jats sentences student-drafts student-papers near-copies".split()),
    "data/learner-sentences",
)
SHARE = 0.2
"""The share of the made papers that are made again."""
MEASURED = [name for name, row in measured_table().items() if not row.get("exact")]


@pytest.fixture(scope="module")
def rows(outside_data: Callable[[str], Path]) -> dict[str, Any]:
    """The row of each check, measured now."""
    for name in SETS:
        outside_data(name)
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(TOOLS))
        table: Any = importlib.import_module("measuring.table")
    return {row.check: row for row in table.rows_of(table.measure_all(SHARE))}


@pytest.mark.parametrize("check", MEASURED)
def test_a_loud_check_is_seldom_wrong(rows: dict[str, Any], check: str) -> None:
    """The lower bound of a loud check's precision is .80 or more, over twenty alarms and more."""
    row = rows[check]
    bound = wilson_lower_bound(row.right, row.alarms)
    print(f"\n{check}: {row.right} of {row.alarms} alarms right, {bound:.3f} at least")
    if loudest_allowed(check) == "must":
        assert row.alarms >= FEWEST_ALARMS
        assert bound >= LOUD


def test_the_alarms_in_found_prose_were_read(rows: dict[str, Any]) -> None:
    """Those that nobody has read count as wrong, and are few; ``tools/measure_checks.py --unread`` shows them."""
    found_prose: Any = importlib.import_module("measuring.found_prose")
    unread, alarms = list(found_prose.unread()), found_prose.listen()
    print(f"\nfound prose: {len(alarms) - len(unread)} of {len(alarms)} alarms read")
    assert len(unread) <= 0.05 * len(alarms), [alarm.key for alarm in unread]
