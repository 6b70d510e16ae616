"""Papers made by hand, by others than this program's authors, open as they are.

Source: the folders of ``papers`` in the data set that ``FAIRHAND_DATA`` names; see ``CONTRIBUTING.md``.
"""

import os
from pathlib import Path

import pytest

from fairhand.desk.cache import fingerprint
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import find_paper

PAPERS = Path(os.environ.get("FAIRHAND_DATA") or Path(__file__).parents[3] / "shared") / "papers"


@pytest.mark.skipif(
    not PAPERS.is_dir(), reason=f"no papers at {PAPERS}: set FAIRHAND_DATA (CONTRIBUTING.md says whence)"
)
def test_papers_made_by_hand_open_and_are_left_as_they_are() -> None:
    """Each has its draft, sheet, data and sources; there is nothing to complain of, and nothing is written."""
    for folder in sorted(PAPERS.iterdir()):
        before = sorted((path, path.stat().st_mtime_ns) for path in folder.rglob("*"))
        paper = read_paper(find_paper(folder))
        assert {"draft.md", "points.json", "sources.json"} <= set(paper.files)
        assert [sheet.name.partition(".")[0] for sheet in paper.sheets] == ["brief"]
        assert sorted(paper.sources) == sorted(path.stem for path in (folder / "sources").iterdir())
        assert paper.files["draft.md"].text == (folder / "draft.md").read_text(encoding="utf-8")
        assert paper.problems == ()
        assert fingerprint(folder) == fingerprint(folder)
        assert sorted((path, path.stat().st_mtime_ns) for path in folder.rglob("*")) == before
