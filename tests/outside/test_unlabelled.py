"""Remarks to oneself and gaps without a label: what published and student prose is told of, which left none.

Source: open-access articles of PLOS, the academic prose of GUM, student drafts, papers and answers
(``tools/measuring``).
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.copyedit.own_prose import own_prose
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.unlabelled import find_unlabelled

TOOLS = Path(__file__).resolve().parents[2] / "tools"
SETS = [f"data/{name}" for name in "articles-jats sentences student-drafts student-papers near-copies".split()]


def test_finished_prose_is_told_of_none(outside_data: Callable[[str], Path]) -> None:
    """At most one alarm in 100,000 words, brackets with glosses, dates, formulas and numbered references and all."""
    for name in SETS:
        outside_data(name)
    count, told = 0, []
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(TOOLS))
        for found in importlib.import_module("measuring.corpora").prose():
            for own in own_prose(read_manuscript("\n\n".join(found.paragraphs)), ()):
                count += len(own.text.split())
                told += [(found.name, each.span.of(own.text)) for each in find_unlabelled(own.text)]
    print(f"\n{len(told)} told in {count} words: {told}")
    assert count > 400_000
    assert len(told) <= count / 100_000
