"""Commas, semicolons and fused sentences: the slips of lists of our own told by their check, none in good sentences."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from fairhand.copyedit.remarked import read_comment
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

LISTS = Path(__file__).parent / "grammar"
SLIP = re.compile(r"\[([^>\]]*)>([^\]]*)\]")
CHECK = {
    "opening": "comma-opening",
    "fused": "fused-sentence",
    "unneeded": "comma-unneeded",
    "nonrestrictive": "comma-nonrestrictive",
    "semicolon": "semicolon",
    "compound": "comma-compound",
}
"""By list: the check that tells of it."""
FLOORS = {
    "opening": 0.85,
    "fused": 0.78,
    "unneeded": 0.92,
    "nonrestrictive": 0.85,
    "semicolon": 0.92,
    "compound": 0.80,
}
"""The share of each list that is told, at least."""


def told(text: str) -> list[Finding]:
    """What these checks say of a draft."""
    checks = [check for check in CHECKS if check.name in CHECK.values()]
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), checks, allowed=lambda _: "must"))


def lines_of(name: str) -> Iterator[str]:
    """The sentences of a list."""
    lines = (LISTS / f"{name}.txt").read_text("utf-8").splitlines()
    return (line for line in lines if line and not line.startswith("#"))


def is_told(line: str, check: str) -> bool:
    """Whether a slip is told by its check, at the very place of the mark."""
    slip = SLIP.search(line)
    assert slip is not None
    at = slip.start()
    for finding in told(SLIP.sub(r"\1", line)):
        if finding.check == check and any(abs(one.span.start - at) < 2 for one in finding.instead):
            return True
    return False


@pytest.mark.parametrize("name", FLOORS)
def test_the_slips_of_a_list_are_told(name: str) -> None:
    """Most of them, each at its place."""
    lines = list(lines_of(name))
    missed = [line for line in lines if not is_told(line, CHECK[name])]
    print(f"\n{name}: {len(lines) - len(missed)} of {len(lines)}; not told:", *missed, sep="\n")
    assert len(lines) - len(missed) >= FLOORS[name] * len(lines)


def test_good_sentences_are_let_be() -> None:
    """None of those that break a rule in looks only, none of these lists' own once mended, none of other lists'."""
    names = ("commas_right", "right", "fused", "opening", "unneeded", "nonrestrictive", "compound", "semicolon")
    good = [SLIP.sub(r"\2", line) for name in names for line in lines_of(name)]
    wrong = [(line, found) for line in good if (found := told(line))]
    assert wrong == []


def test_what_some_handbooks_leave_to_the_ear_is_only_asked_about() -> None:
    """*Therefore* without a comma: a question in American English, let be in British; *however* is told in both."""
    checks = [check for check in CHECKS if check.name == "comma-opening"]
    for style, draft, weights in (
        ("mla-9", "Therefore the plan failed.", ["query"]),
        ("mhra", "Therefore the plan failed.", []),
        ("mhra", "However the plan failed.", ["should"]),
        ("mla-9", "At the beginning of the long and bitter winter of 1709 the wells froze.", ["query"]),
        ("mhra", "At the beginning of the long and bitter winter of 1709 the wells froze.", []),
    ):
        analysis = Analysis(Paper("p", draft, (), style=style), lambda _: None)
        assert [found.weight for found in run_checks(analysis, checks, allowed=lambda _: "must")] == weights


def test_the_rule_is_named_with_the_words_that_open() -> None:
    """By the handbook's word for it, and a comma is offered at its place."""
    (found,) = told("When the train stopped the passengers looked up.")
    assert "introductory element" in found.says
    assert "“When”" in found.says
    assert [(one.span.start, one.words) for one in found.instead] == [(22, ",")]


def test_a_fused_sentence_is_told_with_the_word_that_begins_the_second() -> None:
    """By the handbook's word for it; an adverb between the two is told not to join them."""
    (found,) = told("The map is wrong he drew it from memory.")
    assert "fused sentence" in found.says
    assert "“he”" in found.says
    (found,) = told("The law was clear however, the judges did not agree.")
    assert "“However” does not join them" in found.says


def test_an_unnecessary_comma_is_told_with_what_it_parts() -> None:
    """Each kind in words of its own, and the comma alone is to go."""
    for draft, words in (
        ("The reason for the delay, was the weather.", "parts the subject, which ends at “delay”, from its verb"),
        ("He said, that the bridge would hold.", "parts “said” from the clause that it takes"),
        ("Crops such as, maize and millet need little rain.", "what “as” brings in follows without one"),
    ):
        (found,) = told(draft)
        assert "unnecessary comma" in found.says
        assert words in found.says
        (mark,) = found.instead
        assert (mark.span.of(draft), mark.words) == (",", "")


def test_what_could_be_left_out_has_a_comma_on_either_side() -> None:
    """The one that is missing is offered, and what it belongs to is named; the one that stands is not told as well."""
    for draft, words in (
        ("Maria Teller who had been a clerk, wrote the first report.", "“Maria Teller” names one alone"),
        ("The river, which had flooded twice was dammed in 1911.", "the clause that “which” opens"),
        ("Jonas Vik, the keeper of the lighthouse saw the ship first.", "“the keeper” only adds to the subject"),
        ("This change however, came too late.", "“however” has a comma after it and wants one before it"),
    ):
        (found,) = told(draft)
        assert "nonrestrictive" in found.says
        assert words in found.says
        assert [one.words for one in found.instead] == [","]


def test_a_semicolon_or_colon_beside_a_part_is_told_with_what_belongs_there() -> None:
    """A comma, a colon or nothing; a series of semicolons and a colon after a whole sentence are let be."""
    for draft, words, mark in (
        ("Although the harvest was good; the price rose.", "“Although” makes it a subordinate clause", ","),
        ("He wrote two books; which nobody read.", "what “which” opens could not stand alone", ","),
        ("The town had three industries; glass, paper and salt.", "a series that could not stand alone", ":"),
        ("The kit includes: a lamp, a rope and two blankets.", "A colon after “includes”", ""),
    ):
        (found,) = told(draft)
        assert words in found.says
        assert [one.words for one in found.instead] == [mark]


def test_a_long_compound_sentence_without_its_comma_is_asked_about() -> None:
    """In British English not where *and* joins; short ones are let be in both."""
    checks = [check for check in CHECKS if check.name == "comma-compound"]
    long = "The council promised new houses for the dockers {} the money was spent on a road to the castle."
    for style, draft, count in (
        ("mla-9", long.format("and"), 1),
        ("mhra", long.format("and"), 0),
        ("mhra", long.format("but"), 1),
        ("mla-9", "They sang but he danced.", 0),
    ):
        analysis = Analysis(Paper("p", draft, (), style=style), lambda _: None)
        found = run_checks(analysis, checks, allowed=lambda _: "must")
        assert [one.weight for one in found] == ["query"] * count


@given(
    st.lists(
        st.sampled_from(
            "When however the they who which Anna Brand was were , ; : and so that such as ships lay it fell . To by"
            " closing including although said".split(" ")
        ),
        max_size=20,
    )
)
@hypothesis_settings(max_examples=80)
def test_no_run_of_words_breaks_a_check(words: list[str]) -> None:
    """Whatever is written, each mark lies within the draft, at the place that is told."""
    draft = " ".join(words)
    for finding in told(draft):
        assert finding.span is not None
        assert finding.span.of(draft).strip()
        assert all(finding.span.contains(one.span) for one in finding.instead)


def test_what_is_not_the_writers_prose_is_let_be() -> None:
    """Headings, block quotations, quotations and titles."""
    for draft in (
        "## When the train stopped the passengers looked up",
        "> The ferry was late the passengers waited on the pier.\n",
        "He wrote “the ferry was late the passengers waited, that was all” (Vale 12).",
        "*However the Plan Failed* is a novel.",
    ):
        assert told(draft) == []


def test_a_teachers_remark_on_a_comma_is_learnt_by_its_name() -> None:
    """As margins have it; a remark that says more names no error."""
    for remark, check in (
        ("No comma after introductory clause", "comma-opening"),
        ("Unnecessary comma!", "comma-unneeded"),
        ("Commas around a nonrestrictive clause", "comma-nonrestrictive"),
        ("missing comma before but", "comma-compound"),
        ("semicolon", "semicolon"),
    ):
        lapse = read_comment(remark)
        assert lapse is not None
        assert lapse.check == check
    assert read_comment("I like the comma here.") is None
