from __future__ import annotations

from fairhand.citing.named import find_named
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Name

ENTRIES = (
    Entry("board", "webpage", "Lamps", authors=(Name(literal="Harbour Lights Board"),)),
    Entry("sands", "book", "Silt and Care", authors=(Name("Sands", "Odile"),)),
    Entry("vale-a", "book", "Ropes", authors=(Name("Vale", "Anna"),)),
    Entry("vale-b", "book", "The Tar Barrel", authors=(Name("Vale", "Bruno"),)),
)


def test_a_source_may_be_named_without_being_cited() -> None:
    """A body, a person and a title name their work; a surname that two share, or words in a quotation, name none."""
    draft = (
        "The Harbour Lights Board warns us. Vale and the porter say that “Odile Sands” left. *The Tar Barrel* is old.\n"
    )
    assert find_named(read_manuscript(draft), ENTRIES) == {"board", "vale-b"}
