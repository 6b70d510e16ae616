"""What the checks of the argument say."""

from __future__ import annotations

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.requirement import Requirement
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import claim_unsupported, paragraph_quoted, point_missing, quoted_much

LIND = Entry("lind", "book", "Quays", authors=(Name("Lind", "Ada"),), issued=Issued(2019), page="10-11")
TEXT = SourceText(
    "lind", (Page("10", "The lock-out cost the harbour 38,600 pounds."), Page("11", "It ended.")), paged=True
)
DRAFT = (
    "The quay was let to strangers in that year, and its masters did not know what they had done (Lind, 2019, p."
    " 10).\n\n"
    "The lock-out was dear, as everyone in the town agreed. It cost the harbour 38,600 pounds by the end of the"
    " year.\n\n"
    "So the harbour was ruined by a quarrel that nobody in it had wanted, and the town by the harbour that had fed"
    " it.\n"
)


def analysis(points: Points | None = None, *requirements: Requirement) -> Analysis:
    """A small paper."""
    paper = Paper("p", DRAFT, (LIND,), {"lind": TEXT}, points or Points(), requirements=requirements, style="apa-7")
    return Analysis(paper, lambda _: None)


def test_an_unsupported_claim_is_told_with_where_it_stands() -> None:
    """The figure, what is wanting, and the source that states it."""
    (remark,) = claim_unsupported.find(analysis())
    assert remark.says == (
        "“38,600 pounds” has no citation, and none near it vouches for it. It seems to stand in Lind (2019), p. 10."
    )
    assert remark.concerns == ("lind",)


def test_where_no_sources_are_asked_for_no_claim_is_told() -> None:
    """A sheet that asks for none is not outdone."""
    task = Requirement("task", {"verb": "reflect"}, "Reflect.", Span(0, 8))
    assert list(claim_unsupported.find(analysis(None, task))) == []


def test_only_main_points_are_missed() -> None:
    """An optional point may be left out."""
    support = (Support("lind", "11"),)
    points = Points(
        points=(Point("p1", "Grain grew dear.", "main", support), Point("p2", "Hay rotted.", "optional", support))
    )
    (remark,) = point_missing.find(analysis(points))
    assert remark.span is None
    assert remark.concerns == ("p1", "lind")
    assert remark.says.startswith("The main point “Grain grew dear.” (p1) is not argued: no paragraph between")


def test_a_point_that_is_only_promised_is_told_with_the_place_of_the_promise() -> None:
    """The opening names the one and nothing argues it; of the other it says nothing."""
    support = (Support("lind", "11"),)
    points = Points(
        points=(Point("p1", "Strangers let the quay.", "main", support), Point("p2", "Hay rotted.", "main", support))
    )
    told = [remark.says for remark in point_missing.find(analysis(points))]
    assert [said.endswith(" The introduction promises it (line 1).") for said in told] == [True, False]


def test_a_paragraph_of_quotations_is_asked_about() -> None:
    """One that is mostly others' words, and a paper of which a quarter is."""
    quoted = "“" + "all that stood on the quay was sold to strangers in a single day of that spring " * 3 + "”"
    draft = (
        f"{DRAFT}\nSo says the record: {quoted} (Lind, 2019, p. 10). It goes on in the same way for some pages more."
    )
    known = Analysis(Paper("p", draft, (LIND,), {"lind": TEXT}, style="apa-7"), lambda _: None)
    (remark,) = paragraph_quoted.find(known)
    assert remark.says == "51 of the 71 words of this paragraph are quoted. What do you say of them?"
    (remark,) = quoted_much.find(known)
    assert "of the words of the paper are quoted" in remark.says
    assert list(paragraph_quoted.find(analysis())) == []
    assert list(quoted_much.find(analysis())) == []
