"""The form of the writer's own prose: marks, dashes, ranges, numerals, headings."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.brief.block_quotations import find_block_rule
from fairhand.copyedit.form.headings import find_empty_sections, find_lone_subsections
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.model.requirement import Brief, Requirement
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

FORM = (
    *("mark-spacing", "dash", "range-hyphen", "numeral-opening", "heading-alone", "mark-unpaired", "quotation-stop"),
    *("block-quotation", "exhibit-mention", "abbreviation"),
)


def findings_in(draft: str, style: str = "apa-7", named: tuple[str, ...] = FORM) -> list[Finding]:
    """What the checks of form say of a draft."""
    checks = [check for check in CHECKS if check.name in named]
    return list(run_checks(Analysis(Paper("p", draft, style=style), lambda _: None), checks, allowed=lambda _: "must"))


def marked(draft: str, check: str, style: str = "apa-7") -> list[str]:
    """The words that one check marks."""
    return [f.span.of(draft) for f in findings_in(draft, style, (check,)) if f.span is not None]


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The tide rose , and fell.", ["rose ,"]),
        ("The tide rose .", ["rose ."]),
        ("It rose,then it fell.", ["rose,then"]),
        ("It rose at night.The quay stood dry.", ["night.The"]),
        ("It rose ( by a foot), it seems.", ["( "]),
        ("It rose,, and fell.", ["rose,,"]),
        ("It rose and fell..", ["fell.."]),
        ("It rose . . . and fell.", []),
        ("It rose ... and fell.", []),
        ("A ratio of 1 : 2, or 1,200 men, at 10:30.", []),
        ("See www.tides.org,and `x ,y` too.", []),
        ("She wrote “it rose ,then fell” there.", []),
        ("e.g., the U.S.A. and Node.js, v1.2.3 and file.Txt", []),
        ("The tide(s) rose [sic] and fell.", []),
        ("It rose [NB: true?], and fell.", []),
        ("> It rose ,then fell.", []),
    ],
)
def test_marks_are_set_close(draft: str, told: list[str]) -> None:
    """Common practice: no blank before a mark, one after it; quotations, code, ratios and points of omission let be."""
    assert marked(draft, "mark-spacing") == told


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The tide - so they said - fell.", [" - ", " - "]),
        ("It fell by 3 - 4 feet; model A - B; a well-known tide.", []),
        ("The tide -- so they said -- fell – again – there.", []),
        ("The tide --- so they said --- fell — again — there.", []),
        ("- a list\n- of things", []),
        ("“The tide - so they said - fell.”", []),
    ],
)
def test_a_hyphen_is_no_dash(draft: str, told: list[str]) -> None:
    """APA 7, 6.6 (from memory); figures, codes and what the fair copy sets right are let be."""
    assert marked(draft, "dash") == told


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("From 1914-1918 and 1914-18 it fell.", ["1914-1918", "1914-18"]),
        ("A rise of 20-30 percent.", ["20-30"]),
        ("On pp. 315-16 of the log.", ["315-16"]),
        ("By ISO 639-3, on 555-1234, in 1914–1918, 2019-05-12.", []),
        ("A vote of 7-2, and COVID-19.", []),
    ],
)
def test_a_range_has_an_en_dash(draft: str, told: list[str]) -> None:
    """APA 7, 6.6 (from memory): between the ends of a range; MLA 9 has the hyphen there."""
    assert marked(draft, "range-hyphen") == told
    assert marked(draft, "range-hyphen", "mla-9") == []


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The men rested. 40 men came along.", ["40"]),
        ("45% of the men came along.", ["45%"]),
        ("They rested till 1918. 40 men came along.", ["40"]),
        ("The men rested. 1914 was a dry year.", []),
        ("It stood on p. 40 of the log book.", []),
        ("The men rested. 9 For example, they sat.", []),
        ("1. The men rested all day.\n2. They came along.", []),
        ("2,4-D was used on the fields, and 5-HT too.", []),
    ],
)
def test_no_sentence_opens_with_a_numeral(draft: str, told: list[str]) -> None:
    """APA 7, 6.33 (from memory); years, lists and notes let be."""
    assert marked(draft, "numeral-opening") == told


def test_headings_have_something_under_them() -> None:
    """A heading with neither text nor heading under it is told; the list of works, which is made, is not."""
    draft = "# T\n\n## A\n\n### B\n\nText.\n\n### C\n\n## D\n\n![x](y.png)\n\n## References\n"
    assert marked(draft, "heading-alone") == ["C"]
    assert [title for _, title in find_empty_sections(read_manuscript("## A\n\n> q\n\n## B\n"))] == ["B"]


def test_one_subsection_is_asked_about() -> None:
    """MLA 9, 1.5 (from memory): a section with a single subsection; a query, and never of the paper's title."""
    draft = "# T\n\n## A\n\nText.\n\n### B\n\nText.\n\n## C\n\nText.\n\n### D\n\nText.\n\n### E\n\nText.\n"
    (found,) = findings_in(draft, named=("heading-alone",))
    assert (found.weight, found.span and found.span.of(draft)) == ("query", "B")
    assert not list(find_lone_subsections(read_manuscript("# T\n\n## A\n\nText.\n\n### References\n\nText.\n")))


@given(st.text(alphabet="ab.,;: -()[]“”\"'’0123456789\n#>*A|^%", max_size=80))
def test_any_text_is_looked_through(draft: str) -> None:
    """Places lie within the draft, and so does what is put in instead."""
    for finding in findings_in(draft):
        assert finding.span is not None
        assert 0 <= finding.span.start < finding.span.end <= len(draft)
        assert all(0 <= one.span.start <= one.span.end <= len(draft) for one in finding.instead)


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("It (the tide rose. It fell.", ["("]),
        ("The tide rose). It fell.", [")"]),
        ("It rose a) at night and b) by day, and 1) 2) too.", []),
        ("It (the tide (so they say)) rose [12].", []),
        ("It said “low water. Then it rose.", ["“"]),
        ("It said “low water.\n\n“And then it rose.”", []),
        ('The ladder is 5\'10" high, and 6" wide.', []),
        ("It rose :) and fell.", []),
        ("It lies in (0, 1] and not in [0, 1).", []),
    ],
)
def test_marks_come_in_pairs(draft: str, told: list[str]) -> None:
    """Common practice; lists by letters, inches, and a quotation that goes on in the next paragraph are let be."""
    assert marked(draft, "mark-unpaired") == told


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("It was “low water”, and “dry”.", ["”,", "”."]),
        ('It was "low water", he said.', ['",']),
        ("It was “low water,” and “dry.” It was “low?”, was it.", []),
        ("It was “low water” (Lind, 2009, p. 2).", []),
        ("Type “a@b”, “<i>” or “12”, or “x”.", []),
        ("> It was “low water”, he said.", []),
    ],
)
def test_stops_stand_within_the_marks(draft: str, told: list[str]) -> None:
    """APA 7, 6.8 (from memory): full stop and comma before the closing mark; in British English not asked."""
    assert marked(draft, "quotation-stop") == told
    assert marked(draft, "quotation-stop", "harvard") == []


@pytest.mark.parametrize(("count", "style", "told"), [(40, "apa-7", 1), (39, "apa-7", 0), (99, "chicago-notes-17", 0)])
def test_a_long_quotation_is_a_block(count: int, style: str, told: int) -> None:
    """APA 7, 8.27: forty words or more; Chicago 17, 13.10 (from memory): a hundred."""
    draft = f"It says: “{' '.join(['tide'] * count)}” (Lind, 2009, p. 2)."
    assert len(marked(draft, "block-quotation", style)) == told


def test_a_short_block_is_asked_about() -> None:
    """APA 7, 8.27: a block of fewer than forty words is a query, verse is not; reckoned lines only ask."""
    draft = "It says:\n\n> the tide rose in the night (p. 2)\n\nand more.\n\n> the tide rose  \n> in the night\n"
    (found,) = findings_in(draft, named=("block-quotation",))
    assert found.weight == "query"
    assert not findings_in(draft, "mla-9", ("block-quotation",))
    (found,) = findings_in(f"It says: “{'the tide rose ' * 40}now” (Lind 2).", "mla-9", ("block-quotation",))
    assert (found.weight, "lines" in found.says) == ("query", True)


def test_tables_and_figures_are_spoken_of() -> None:
    """APA 7, 7.5 (from memory): each is mentioned; one that is mentioned is there; a source's own is let be."""
    figure = "![Rain](rain.png)\n\nFigure 1. Rain by month.\n\n"
    told = findings_in(f"It rained.\n\n{figure}So it did.", named=("exhibit-mention",))
    assert [f.says for f in told] == ["The text never speaks of Figure 1."]
    assert not findings_in(f"It rained (see fig. 1).\n\n{figure}", named=("exhibit-mention",))
    assert not findings_in(f"It rained, as the figure below shows.\n\n{figure}", named=("exhibit-mention",))
    assert marked(f"It rained (Figures 1 and 2).\n\n{figure}", "exhibit-mention") == ["Figures 1 and 2"]
    assert marked(f"Figure 1, and Figure 3 of the report.\n\n{figure}", "exhibit-mention") == []
    assert marked("It rained (Lind, 2009, Table 2).", "exhibit-mention") == []
    table = "It rained (Table 1).\n\nTable 1\n\n| a | b |\n| --- | --- |\n| 1 | 2 |\n"
    assert [f.says for f in findings_in(table, named=("exhibit-mention",))] == ["Table 1 has no title."]


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The Tidal Water Board (TWB) met. The Tidal Water Board (TWB) sat.", ["Tidal Water Board (TWB)"]),
        ("The TWB had met at the quay in the cold night. The Tidal Water Board (TWB) sat.", ["TWB"]),
        ("The Tidal Water Board (TWB) met. The TWB sat. The Town Wine Bar (TWB) shut.", []),
        ("# Abstract\n\nThe Tidal Water Board (TWB).\n\n# Text\n\nThe Tidal Water Board (TWB) sat.", []),
        ("The *Tidal Water Board* (TWB) met, and sat down. The Tidal Water Board (TWB) sat.", []),
    ],
)
def test_an_abbreviation_is_explained_once(draft: str, told: list[str]) -> None:
    """APA 7, 6.25 (from memory): where it is first used; the abstract stands for itself."""
    assert marked(draft, "abbreviation") == told


@pytest.mark.parametrize(
    ("sheet", "rule"),
    [
        ("Quotations of more than forty words should be set as block quotations.", (41, "words")),
        ("Set quotations longer than four lines as block quotations.", (5, "lines")),
        ("Long quotations (over 40 words) should be indented.", (41, "words")),
        ("Include at least one block quotation of forty words or more.", (40, "words")),
        ("Quotations of a hundred words or more are set off.", (100, "words")),
        ("Include one block quotation. Write 40 words about it.", None),
    ],
)
def test_a_sheet_may_say_what_is_a_block(sheet: str, rule: tuple[int, str] | None) -> None:
    """The sheet's own measure goes before the manual's."""
    found = find_block_rule([sheet])
    assert (found and (found.number, found.unit)) == rule


def test_the_sheet_goes_before_the_manual() -> None:
    """Chicago would run in what the sheet wants as a block; without the sheet it lets a short block be."""
    draft = f"It says: “{' '.join(['tide'] * 45)}” (Lind 2009, 2).\n\n> {' '.join(['tide'] * 45)}\n"
    checks = [check for check in CHECKS if check.name == "block-quotation"]
    brief = Brief(texts={"brief.txt": "Quotations of more than forty words should be set as block quotations."})
    asked = Paper("p", draft, style="chicago-notes-17", brief=brief)
    (found,) = run_checks(Analysis(asked, lambda _: None), checks, allowed=lambda _: "must")
    assert (found.weight, found.rule[:9]) == ("should", "the sheet")
    assert not findings_in(draft, "chicago-notes-17", ("block-quotation",))


@pytest.mark.parametrize(
    ("sheet", "forbidden"),
    [
        ("Avoid slang and contractions.", True),
        ("Contractions are not acceptable in formal prose.", True),
        ("Do not use contractions (write “do not”).", True),
        ("Write without contractions or jargon.", True),
        ("Contractions are welcome; it need not be stiff.", False),
        ("Discuss the contraction of the cotton trade.", False),
        ("There is no account of muscle contraction.", False),
    ],
)
def test_a_sheet_may_forbid_contractions(sheet: str, forbidden: bool) -> None:
    """They are told only where it does, outside quotations, and with its words."""
    draft = "It's late; they don't know “I can't” or the town's 'tis."
    checks = [check for check in CHECKS if check.name == "contraction"]
    paper = Paper("p", draft, brief=Brief(texts={"brief.txt": sheet}))
    told = run_checks(Analysis(paper, lambda _: None), checks, allowed=lambda _: "must")
    assert [f.span.of(draft) for f in told if f.span] == (["It's", "don't", "'tis"] if forbidden else [])
    assert all(found.rule.startswith("the sheet: “") for found in told)


@pytest.mark.parametrize(
    ("draft", "style", "told"),
    [
        ("It was 'low' and the workers' 'dry' days.", "apa-7", ["'low'"]),
        ("It was “a 'neap' tide”, the 't' gene, and the sailors’ talk.", "mla-9", []),
        ("It was 'low', 'dry' and “mild”.", "harvard", ["“mild”"]),
        ("It was “low” and “mild”.", "harvard", []),
        ("It was 'low'.", "ieee", []),
    ],
)
def test_quotation_marks_are_of_one_kind(draft: str, style: str, told: list[str]) -> None:
    """APA 7, 6.7 (from memory): double, and single within them; British English has either, but one of them."""
    assert marked(draft, "quotation-marks", style) == told


@pytest.mark.parametrize(
    ("draft", "style", "told"),
    [
        ("It fell by 12 percent, by 9 percent and by ten percent.", "apa-7", ["12 percent"]),
        ("It fell by 12% and by 9%.", "apa-7", []),
        ("It fell by 12 percent and by 9 percent.", "mla-9", []),
        ("It fell by 12 percent, 9 percent and 3%.", "mla-9", ["3%"]),
    ],
)
def test_percentages_have_one_form(draft: str, style: str, told: list[str]) -> None:
    """APA 7, 6.44 (from memory): the sign after a numeral; elsewhere one of the two throughout."""
    assert marked(draft, "percent-sign", style) == told


def test_a_rule_on_tools_shuts_what_looks_through_the_language() -> None:
    """Marks and numerals wait for the writer's answer; headings, tables and figures are no matter of language."""
    rule = Requirement("policy", {"what": "tools", "rule": "ask"}, "Ask before you use a grammar tool.", Span(0, 34))
    paper = Paper("p", "The tide rose , and fell (Table 9).\n\n## A\n", style="apa-7", requirements=(rule,))
    checks = [check for check in CHECKS if check.name in FORM]
    told = run_checks(Analysis(paper, lambda _: None), checks, allowed=lambda _: "must")
    assert {found.check for found in told} == {"exhibit-mention", "heading-alone"}
