"""The writer's other papers, as the copying is looked for in them."""

from __future__ import annotations

import re
from pathlib import Path

from fairhand.desk.other_papers import read_other_drafts
from fairhand.model.own_paper import OwnPaper
from fairhand.model.source import Page, SourceText

_TITLE = re.compile(r"^#[ \t]+(\S[^\n]{0,200}?)[ \t]*#*$", re.MULTILINE)


def load_own_papers(folder: Path) -> tuple[OwnPaper, ...]:
    """The other papers of the desk that a paper stands on, each with its draft as it stands now."""
    return tuple(
        OwnPaper(
            name=one.folder.name,
            title=_title_of(one.draft.text) or one.folder.name,
            text=SourceText(f"own paper {one.folder.name}", (Page(None, one.draft.text),), paged=False),
            put_away=one.put_away,
        )
        for one in read_other_drafts(folder)
    )


def _title_of(draft: str) -> str:
    """The first heading of the first level, without its marks of type."""
    found = _TITLE.search(draft)
    return re.sub(r"[*_`]", "", found[1]).strip() if found else ""
