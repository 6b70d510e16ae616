"""The checks of the argument, on papers with seeded faults, and on what was made of others' prose.

Sources: the project's sample papers (``papers``); the articles of PLOS, the academic prose of GUM, the annotated
student papers of the OpenStax Writing Guide and the revised student essays of ArgRewrite V.2, as ``CONTRIBUTING.md``
lists them; of near copies the short answers of P. Clough and M. Stevenson 2011. What is made of them is told in
``tools/measuring/argument.py``, ``hard_arguments.py`` and ``claims.py``.
"""

from __future__ import annotations

import importlib
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from fairhand.readiness.measure import loudest_allowed, wilson_lower_bound

ROOT = Path(__file__).resolve().parents[2]
CHECKS = ("claim-unsupported", "off-focus", "repeated-argument", "point-missing", "section-missing")
CLAIMS, PAPERS, HARD = 20, 60, 150
"""Papers made of each sort: a tenth, and a fifth, of those that ``measured.toml`` was made from."""


@pytest.fixture(scope="module")
def measuring() -> Iterator[Callable[[str], Any]]:
    """The modules that make papers and count alarms, by name."""
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(ROOT / "tools"))
        yield lambda name: importlib.import_module(f"measuring.{name}")


@pytest.mark.parametrize("which", ["harbour-strike", "rain-gardens"])
def test_seeded_faults_of_the_argument_are_caught(
    outside_data: Callable[[str], Path], measuring: Callable[[str], Any], which: str
) -> None:
    """Each is told at its place, with the weight that the check has earned; on the clean paper nothing is."""
    folder = outside_data("papers") / which
    tally = measuring("tally")
    found = {name: paper for name, paper, _ in measuring("whole_papers").sample_papers() if name.startswith(which)}
    faulty, clean = found[f"{which} faulty"], found[f"{which} clean"]
    told = tally.findings_in(faulty, CHECKS)
    faults = json.loads((folder / "gold.json").read_text("utf-8"))["faults"]
    wanted = [fault for fault in faults if fault["type"] in CHECKS]
    for fault in wanted:
        at = faulty.draft.index(fault["quote"])
        end = at + len(fault["quote"])
        spans = [finding.span for finding in told if finding.check == fault["type"]]
        hits = [span for span in spans if span is None or (span.start <= end and at < span.end)]
        assert hits, fault
    false = tally.findings_in(clean, CHECKS)
    print(f"\n{which}: {len(wanted)} of {len(wanted)} seeded faults told; {len(false)} alarms on the clean paper")
    assert false == ()


@pytest.mark.parametrize(
    ("check", "module", "measure", "papers", "seed", "is_right", "sees"),
    [
        ("claim-unsupported", "claims", "measure_claims", CLAIMS, 41, 0.85, 0.5),
        ("off-focus", "argument", "measure_straying", PAPERS, 31, 0.75, 0.45),
        ("off-focus", "hard_arguments", "measure_kindred_strays", HARD, 35, 0.7, 0.35),
        ("repeated-argument", "argument", "measure_repeating", PAPERS, 32, 0.9, 0.9),
        ("repeated-argument", "hard_arguments", "measure_retellings", HARD, 36, 0.5, 0.85),
        ("point-missing", "argument", "measure_points", PAPERS, 33, 0.85, 0.75),
        ("point-missing", "hard_arguments", "measure_headings", HARD, 37, 0.85, 0.3),
    ],
)
def test_how_often_each_is_right(
    outside_data: Callable[[str], Path],
    measuring: Callable[[str], Any],
    check: str,
    module: str,
    measure: str,
    papers: int,
    seed: int,
    is_right: float,
    sees: float,
) -> None:
    """On others' prose, spoiled where it is known: the share of alarms that are right, and of faults that are seen.

    Three of the ways are hard: a stray paragraph that has most of a document's words, an argument told again by another
    between paragraphs that rest on one page, and a point whose page is cited elsewhere.
    """
    for name in ("articles-jats", "sentences", "student-drafts", "student-papers", "quotations", "near-copies"):
        outside_data(f"data/{name}")
    tally = measuring("tally").Tally("made")
    getattr(measuring(module), measure)(tally, papers, seed)
    right, alarms = tally.right[check], tally.alarms[check]
    seen, spoiled = tally.seen[check], tally.spoiled[check]
    print(
        f"\n{check}, {measure}: {right} of {alarms} alarms right ({wilson_lower_bound(right, alarms):.3f} at least), ",
        end="",
    )
    print(f"{seen} of {spoiled} faults seen")
    assert right / alarms >= is_right
    assert seen / spoiled >= sees
    assert loudest_allowed(check)
