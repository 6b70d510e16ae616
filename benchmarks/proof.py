"""What a proof costs: 5, 30 and 200 pages set, their lines read off the print, a mark anchored, and the page shown.

Run as ``python benchmarks/proof.py [PAGES...]``. The draft is invented prose with a citation in each paragraph, by a
seeded generator. All is measured in one run; the page is asked for a second time, as after a mark was set.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from measuring import measured, tell
from pause import HERE, write_draft
from starlette.testclient import TestClient

from fairhand.fair_copy.typesetting import to_typst
from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.printed_lines import read_printed_lines
from fairhand.session.correction.proof import anchor_mark, read_proof
from fairhand.session.demo import lay_out_demo
from fairhand.session.opened import OpenPaper
from fairhand.web.app import make_app

WORDS_A_PAGE = 205
"""Of double-spaced lines with a proof's wide margins."""


def measure(pages: int, desk: Path) -> None:
    """The figures for a draft of about so many pages."""
    folder = desk / "tram-libraries"
    draft = "# Of Trams\n\n" + "\n\n".join(write_draft(pages * WORDS_A_PAGE))
    (folder / "draft.md").write_text(draft, "utf-8")
    paper = OpenPaper(folder)
    copy = paper.fair_copy(proof=True)
    job = to_typst(copy)
    setting = measured(lambda: paper.engines.typeset(job))
    pdf = paper.engines.typeset(job).pdf
    reading = measured(lambda: read_printed_lines(pdf, copy.layout.margins_pt))
    proof = read_proof(paper)
    at = len(proof.text) // 2
    mark = ProofMark("", "", "query", "")
    anchoring = measured(lambda: anchor_mark(mark, Span(at, at + 12), proof, draft))
    client = TestClient(make_app(desk, "secret"), base_url=HERE, headers={"origin": HERE})
    client.get("/?key=secret")
    address = "/paper/tram-libraries/proof"
    first, again = (measured(lambda: client.get(address)) for _ in range(2))
    print(f"{proof.lines[-1].page} pages, {len(proof.lines)} lines")
    tell("seconds to set it", setting, "single run")
    tell("seconds to read its lines, as many times as it takes to set", reading / setting, f"{reading:.3f} s")
    tell("seconds to anchor a mark", anchoring, "single run")
    tell("seconds to show its page at first", first, "single run")
    tell("of that, the page shown again", again / first, f"{again:.3f} s")


def main() -> None:
    """Each length in turn."""
    for pages in [int(said) for said in sys.argv[1:]] or [5, 30, 200]:
        with tempfile.TemporaryDirectory() as place:
            measure(pages, lay_out_demo(Path(place)).parent)


if __name__ == "__main__":
    main()
