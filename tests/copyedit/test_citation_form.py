"""The form of citations as they are typed: stops beside them, names, years and pages by the style."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.proof.offering import offers, put_offered
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

HERE = Path(__file__).parent
LIST = (
    Entry("okafor", "book", "The Long Quay", authors=(Name("Okafor", "Ben"),), issued=Issued(2004)),
    Entry("lind", "book", "Salt and Its Prices", authors=(Name("Lind", "Eva"),), issued=Issued(2019)),
    Entry("drum", "book", "Two Lakes", authors=(Name("Drummond", "Ada"), Name("Ekwall", "Pia")), issued=Issued(2015)),
    Entry(
        "marsh",
        "article-journal",
        "First Lichens",
        authors=(Name("Marsh", "Olu"), Name("Tveit", "Eva"), Name("Vale", "Anna")),
        issued=Issued(2012),
        page="88-104",
    ),
    Entry("board", "report", "A List of Quays", authors=(Name(literal="Harbour Board"),), issued=Issued(2001)),
)


def paper_of(line: str) -> tuple[str, Paper]:
    """The check of one line of a list, and its paper: check, style and draft are parted by bars."""
    check, style, draft = (part.strip() for part in line.split("|", 2))
    sources = () if check == "list-unsourced" else LIST
    return check.replace("unsourced", "typed"), Paper("p", draft.replace("\\n", "\n"), sources, style=style)


def heard(check: str, paper: Paper) -> list[Finding]:
    """What a check says of a paper."""
    run = [one for one in CHECKS if one.name == check]
    return list(run_checks(Analysis(paper, lambda _: None), run, allowed=lambda _: "must"))


def told(line: str) -> list[Finding]:
    """What is said of one line of a list."""
    return heard(*paper_of(line))


def lines_of(name: str) -> list[str]:
    """The lines of a list."""
    return [line for line in (HERE / name).read_text("utf-8").splitlines() if line and not line.startswith("#")]


@pytest.mark.parametrize("line", lines_of("form_faults.txt"))
def test_a_slip_beside_a_citation_is_told(line: str) -> None:
    """Each line of our own list, by its check."""
    assert {finding.check for finding in told(line)} == {paper_of(line)[0]}


@pytest.mark.parametrize("line", lines_of("form_right.txt"))
def test_what_only_looks_like_one_is_let_be(line: str) -> None:
    """Each lawful look-alike."""
    assert told(line) == []


OFFERING = ("citation-stop", "citation-names", "quotation-mechanics", "dash", "heading-form")


@pytest.mark.parametrize("line", [one for one in lines_of("form_faults.txt") if one.startswith(OFFERING)])
def test_what_is_offered_mends_it(line: str) -> None:
    """With the marks put in as they are offered, nothing more is told that was offered, and no word is lost."""
    check, paper = paper_of(line)
    offered = [finding for finding in heard(check, paper) if offers(finding)]
    mended = put_offered(paper.draft, offered)
    again = heard(check, replace(paper, draft=mended))
    assert not [finding for finding in again if offers(finding)], mended
    if check != "citation-names":
        assert re.findall(r"\w+", mended) == re.findall(r"\w+", paper.draft)
