from __future__ import annotations

import json
from pathlib import Path

import pytest

from fairhand.citing.attach import attach
from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript

CASES = Path(__file__).parent / "cases"


def read_case(name: str) -> dict[str, list[list[object]]]:
    """What each citation of a draft means, what is left alone, and what each quotation is taken from."""
    draft = (CASES / f"{name}.md").read_text(encoding="utf-8")
    entries, problems = read_csl_json((CASES / f"{name}.sources.json").read_text(encoding="utf-8"))
    assert not problems
    manuscript = read_manuscript(draft)
    mentions = recognise(manuscript, entries)
    resolved = resolve(manuscript, mentions, entries)
    spans = [mention.span for mention in mentions]
    cited: list[list[object]] = [
        [mentions[one.mention].span.of(draft), one.cite.year or None, one.entry, one.trouble] for one in resolved
    ]
    left: list[list[object]] = [
        [bracket.span.of(draft)]
        for bracket in manuscript.brackets
        if bracket.mark == "(" and not any(span.overlaps(bracket.span) for span in spans)
    ]
    quoted: list[list[object]] = []
    for one in attach(manuscript, mentions, resolved, entries):
        words = " ".join(manuscript.quotations[one.quotation].text.split()[:5])
        quoted.append([words, one.entry, one.locator.text if one.locator else None, one.sure])
    return {"cited": cited, "left": left, "quoted": quoted}


@pytest.mark.parametrize("name", ["ferry-chicago", "play-mla", "sleep-apa"])
def test_each_citation_of_an_invented_paper_means_what_its_writer_meant(name: str) -> None:
    """Citations, false friends and quotations of a whole paper are understood as written beside it."""
    expected = json.loads((CASES / f"{name}.expected.json").read_text(encoding="utf-8"))
    assert read_case(name) == expected
