"""The checks on finished, good student papers: every loud alarm was read, and few are wrong.

Source: the annotated student papers of the OpenStax Writing Guide (CC BY-NC-SA 4.0). Their lists of works are facts;
what was read stands in ``student_papers_read.toml`` with its reason, without the papers' text.
"""

from __future__ import annotations

import importlib.util
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

HERE = Path(__file__).parent
MOST_WRONG = 1
"""Wrong alarms that a paper may have."""
FILM = (
    ("Diawara, M.", "Black Spectatorship: Problems of Identification and Resistance", 1988),
    ("Obenson, Tambay", "Alfred Hitchcock’s ‘Rear Window’ Has Been Remade", 2018),
    ("Watson, Amy", "Film Industry—Statistics and Facts", 2020),
)
EVICTED = (("Desmond, Matthew", "Evicted: Poverty and Profit in the American City", 2016),)


@pytest.fixture(scope="module")
def student_citations() -> Any:
    """The reader of these papers, and two of their lists."""
    path = HERE / "test_student_citations.py"
    spec = importlib.util.spec_from_file_location("student_citations", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize(
    ("name", "style", "list_of_works"),
    [
        ("m00062", "apa-7", "APA"),
        ("m00072", "mla-9", FILM),
        ("m00092", "mla-9", EVICTED),
        ("m00118", "mla-9", "MLA"),
        ("m00134", "mla-9", ()),
        ("m00170", "mla-9", ()),
    ],
)
def test_a_good_paper_is_hardly_ever_wronged(
    outside_data: Callable[[str], Path], student_citations: Any, name: str, style: str, list_of_works: Any
) -> None:
    """Of what is told loudly at most one is wrong."""
    draft = student_citations.read_paper(outside_data("data/student-papers") / f"{name}.cnxml").text
    if isinstance(list_of_works, str):
        entries = getattr(student_citations, list_of_works)
    else:
        entries = student_citations.works(*list_of_works)
    told = run_checks(Analysis(Paper(name, draft, entries, style=style), lambda _: None), CHECKS)
    read = tomllib.loads((HERE / "student_papers_read.toml").read_text("utf-8"))["read"]
    wrong = []
    for finding in told:
        if finding.weight == "query":
            continue
        words = finding.span.of(draft) if finding.span else finding.says
        judged = [
            one
            for one in read
            if (one["paper"], one["check"]) == (name, finding.check) and one["words"] in " ".join(words.split())
        ]
        if not any(one["right"] for one in judged):
            wrong.append((finding.check, words[:60]))
    loud = sum(finding.weight != "query" for finding in told)
    print(f"\n{name}: {loud} loud alarms, {len(wrong)} of them wrong; {len(told) - loud} queries")
    assert len(wrong) <= MOST_WRONG, wrong
