"""Small papers for the revision's tests."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Points
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis

ENTRIES = (
    Entry("lind-2019", "book", "The Long Quay", authors=(Name("Lind", "Ada"),), issued=Issued(2019), page="10-12"),
    Entry("reyes-2018", "book", "Salt Prices", authors=(Name("Reyes", "Bo"),), issued=Issued(2018), page="40-41"),
)


def source(id_: str, pages: Mapping[str, str]) -> SourceText:
    """A source with pages."""
    return SourceText(id_, tuple(Page(label, text) for label, text in pages.items()), paged=True)


TEXTS = {
    "lind-2019": source("lind-2019", {"10": "Of the harbour men 640 were permanent.", "11": "The quay was sold."}),
    "reyes-2018": source(
        "reyes-2018",
        {
            "40": "The lock-out cost the harbour 38,600 pounds of revenue in all. The"
            " pilots had a guild hall which burned in 1902."
        },
    ),
}


@pytest.fixture
def analysis_of() -> Callable[..., Analysis]:
    """The analysis of a draft with the two sources above."""

    def make(draft: str, points: Points | None = None, *, with_texts: bool = True) -> Analysis:
        paper = Paper("p", draft, ENTRIES, TEXTS if with_texts else {}, points or Points(), style="apa-7")
        return Analysis(paper, lambda _: None)

    return make
