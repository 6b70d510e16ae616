"""The quotations of two whole papers, right and with seeded faults, against their sources' pages.

Data: the project's own sample papers (a clean text, the same with faults, and what the faults are). Quotations are
taken by their marks alone and looked for in every source, with the page that stands after them; resolving the citation
is another room's matter.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from fairhand.fidelity.allowed import rules_for
from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import PreparedSource, prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.model.entry import Entry
from fairhand.reading.labels import labels_in
from fairhand.reading.source import read_source

PAPERS = ("harbour-strike", "rain-gardens")
QUOTED = re.compile(r"“([^”]+)”|\"([^\"]+)\"|(?<=\n)> ([^\n]+) (?=\()")
AFTER = re.compile(r"[^()“”\"]{0,40}\((?:[^()]*?[ ,])?(?:pp?\. )?(\d{1,3}(?:–\d{1,3})?)\)")
"""The page that stands last in the parenthesis after a quotation; four figures are a year."""
OUTCOMES = {
    "misquote": {"differs"},
    "quote-wrong-page": {"elsewhere"},
    "quote-silent-omission": {"gap"},
    "quote-altered-without-bracket": {"differs"},
}


def sources_of(paper: Path) -> dict[str, PreparedSource]:
    """The paper's sources, read and prepared."""
    out = {}
    for record in json.loads((paper / "sources.json").read_text(encoding="utf-8")):
        entry = Entry(record["id"], record["type"], page=record.get("page", ""), url=record.get("URL", ""))
        name = f"sources/{entry.id}.txt"
        out[entry.id] = prepare(read_source((paper / name).read_bytes(), name, entry)[0])
    return out


def matches_in(paper: Path, name: str) -> Iterator[tuple[str, QuotationMatch]]:
    """Each quotation of four words and more, with its best match in any source."""
    sources = sources_of(paper)
    text = (paper / name).read_text(encoding="utf-8")
    for found in QUOTED.finditer(text):
        quoted = next(group for group in found.groups() if group)
        if len(quoted.split()) < 4:
            continue
        after = AFTER.match(text, found.end())
        labels = labels_in(after[1]) if after else ()
        tried = [find_quotation(quoted, source, labels, {}, rules_for("chicago")) for source in sources.values()]
        yield quoted, max(tried, key=lambda match: (match.outcome != "not-found", match.likeness))


@pytest.mark.parametrize("name", PAPERS)
def test_clean_quotations_stand_at_their_pages(name: str, outside_data: Callable[[str], Path]) -> None:
    """In the clean paper every quotation is verbatim, or changed as the manuals allow, on the page cited."""
    matches = list(matches_in(outside_data(f"papers/{name}"), "clean.md"))
    wrong = [(quoted, m.outcome, m.pages, m.says) for quoted, m in matches if m.outcome not in ("verbatim", "allowed")]
    print(f"\n{name}: {len(matches) - len(wrong)} of {len(matches)} clean quotations stand at their pages")
    assert not wrong
    assert not any(match.points for _, match in matches)


@pytest.mark.parametrize("name", PAPERS)
def test_seeded_faults_have_their_outcome(name: str, outside_data: Callable[[str], Path]) -> None:
    """Each misquotation, silent omission, unbracketed change and wrong page is told for what it is."""
    paper = outside_data(f"papers/{name}")
    found = list(matches_in(paper, "draft.md"))
    faults = json.loads((paper / "gold.json").read_text(encoding="utf-8"))["faults"]
    seeded = [fault for fault in faults if fault["type"] in OUTCOMES]
    caught = 0
    for fault in seeded:
        outcomes = {match.outcome for quoted, match in found if quoted in fault["quote"]}
        caught += outcomes == OUTCOMES[fault["type"]]
    wrong = sum(match.outcome not in ("verbatim", "allowed") for _, match in found)
    print(f"\n{name}: {caught} of {len(seeded)} seeded faults caught, {wrong - caught} others found")
    assert caught == len(seeded) == wrong
