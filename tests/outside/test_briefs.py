"""Assignment sheets with gold labels, by the scorer's own rule.

Sources: `briefs` (invented sheets) and `briefs-real` (sheets from open courseware) in the folder of FAIRHAND_DATA, with
`score/score_briefs.py`; and the sheets of this project's own, in `tests/brief/cases`, labelled in the same way. The
project's own came in lots, each scored once before anything was changed for it: .877 on sheets 1-14, .885 on 15-22,
.821 on 23-28 and .873 on 29-33 (F1, stated values). Sheets 34-40 are of lots written by somebody who had not seen the
grammar: .739 on twenty sheets, .851 on ten more after it was mended and .832 on a last eight (decision 0033). That says
more of unseen sheets than what is printed here. Sheets 41-45 are of two later lots, written and labelled by somebody
who had read the grammar: .802 on twelve sheets, and .838 on eight more after it was mended (decision 0052).
Sheets 46-55 are of lots of ten, five, five and five, labelled before they were run. First sight: .852 on the ten, by
somebody who had not read the grammar; .900 on the next five, .792 on five stranger ones, .894 on the last, the grammar
mended after each; without these mends the three were .898, .792 and .894. Mending by single sheets moves unseen ones
hardly at all; the last three stood at .925, .904 and .934 when they had mended it in their turn.
"""

from __future__ import annotations

import datetime as dt
import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fairhand.brief.read import read_brief, to_json

CASES = Path(__file__).parents[1] / "brief" / "cases"


def _score(scorer: Path, gold: Path, out: Path) -> dict[str, Any]:
    """The scorer's numbers for what is read off the sheets of one folder; stated values alone are counted."""
    for sheet in sorted(gold.glob("*.txt")):
        label = json.loads(sheet.with_suffix(".gold.json").read_text(encoding="utf-8"))
        day = dt.date.fromisoformat(label["given_on"])
        brief = read_brief([(sheet.name, sheet.read_text(encoding="utf-8"))], day, label.get("assignment", ""))
        (out / f"{sheet.stem}.json").write_text(json.dumps(to_json(brief)), encoding="utf-8")
    run = [sys.executable, str(scorer), str(gold), str(out), "--stated", "--json"]
    answer: dict[str, Any] = json.loads(subprocess.run(run, check=True, capture_output=True, text=True).stdout)
    return answer


@pytest.mark.parametrize(("name", "floor"), [("briefs", 0.98), ("briefs-real", 0.93), ("", 0.96)])
def test_sheets_are_read_as_labelled(
    outside_data: Callable[[str], Path], tmp_path: Path, name: str, floor: float
) -> None:
    """Precision, recall and F1 of each kind are printed; the total is held by a floor."""
    score = _score(outside_data("score/score_briefs.py"), outside_data(name) if name else CASES, tmp_path)
    print(f"\n{name or 'the project’s own sheets'}: precision, recall, F1 (stated values)")
    for kind, row in score["kinds"].items():
        print(f"  {kind:16} {row['precision']:.3f} {row['recall']:.3f} {row['f1']:.3f}")
    assert score["kinds"]["TOTAL"]["f1"] >= floor


def test_gold_evidence_stands_in_our_own_sheets() -> None:
    """Each of the project's own sheets has its labels, and each label a kind of the schema."""
    sheets = sorted(CASES.glob("*.txt"))
    assert len(sheets) >= 12
    for sheet in sheets:
        gold = json.loads(sheet.with_suffix(".gold.json").read_text(encoding="utf-8"))
        assert gold["sheet"] == sheet.name
        assert gold["requirements"]
