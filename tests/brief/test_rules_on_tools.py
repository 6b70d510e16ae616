"""A sheet's rule on programs that look through the language: forbidden, asked about, declared, allowed, or none."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.brief.read import read_brief

LINES = (Path(__file__).parent / "rules_on_tools.txt").read_text("utf-8").splitlines()
SAID = [tuple(line.split("\t")) for line in LINES if not line.startswith("#")]


@pytest.mark.parametrize(("rule", "words"), SAID)
def test_the_rule_is_read(rule: str, words: str) -> None:
    """And nothing is a rule on tools that only speaks of language, editing or tools."""
    brief = read_brief([("sheet.txt", f"Paper 2\n\nWrite an essay of 1,000 words on a place you know. {words}\n")])
    found = [one.values["rule"] for one in brief.requirements if one.values.get("what") == "tools"]
    assert found == ([] if rule == "none" else [rule])
