"""Citations of whole papers with faults set into them, and of the same papers without.

Data: the project's own sample papers (a clean text, the same with faults, and what the faults are).
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from fairhand.citing.attach import attach
from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span

TROUBLE = {"cite-unresolved": "unknown", "cite-ambiguous": "ambiguous", "cite-wrong-year": "year"}


def test_faults_of_citation_are_found_and_clean_papers_have_none(outside_data: Callable[[str], Path]) -> None:
    """Each seeded fault shows as its own trouble at its place; a clean paper's citations and quotations have none."""
    for paper in sorted(outside_data("papers").iterdir()):
        entries, _ = read_csl_json((paper / "sources.json").read_text(encoding="utf-8"))
        faults = json.loads((paper / "gold.json").read_text(encoding="utf-8"))["faults"]
        for name in ("draft.md", "clean.md"):
            text = (paper / name).read_text(encoding="utf-8")
            manuscript = read_manuscript(text)
            mentions = recognise(manuscript, entries)
            resolved = resolve(manuscript, mentions, entries)
            attached = attach(manuscript, mentions, resolved, entries)
            seeded = [fault for fault in faults if fault["type"] in TROUBLE and name == "draft.md"]
            found = [(mentions[one.mention].span, one.trouble) for one in resolved if one.trouble and one.cite.year]
            pageless = [
                manuscript.quotations[one.quotation].span
                for one in attached
                if one.resolved is not None and one.sure and one.locator is None
            ]
            print(f"{paper.name} {name}: {len(mentions)} mentions, {len(found)} with trouble, {len(seeded)} seeded")
            assert len(found) == len(seeded)
            for fault in seeded:
                start = text.index(fault["quote"])
                place = Span(start, start + len(fault["quote"]))
                assert any(place.overlaps(span) and trouble == TROUBLE[fault["type"]] for span, trouble in found)
            if name == "draft.md":
                for fault in (fault for fault in faults if fault["type"] == "cite-missing-page"):
                    start = text.index(fault["quote"])
                    assert any(Span(start, start + len(fault["quote"])).overlaps(span) for span in pageless)
            else:
                assert all(one.sure for one in attached)
