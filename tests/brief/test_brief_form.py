"""Style, format, sections and elements. Wordings: common practice of assignment sheets."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


@pytest.mark.parametrize(
    ("text", "style", "edition"),
    [
        ("Use MLA format, 9th edition.", "mla", 9),
        ("APA 7 throughout.", "apa", 7),
        ("References follow Chicago style (notes and bibliography, 17th edition).", "chicago-notes", 17),
        ("Referencing: Chicago author-date.", "chicago-author-date", None),
        ("Harvard referencing is required.", "harvard", None),
        ("American Sociological Association (ASA) citation style.", "asa", None),
        ("Use whatever citation style you like (MLA, APA), but be consistent.", "any-consistent", None),
    ],
)
def test_a_style_is_read(values_of: Reading, text: str, style: str, edition: int | None) -> None:
    """The style by its name, with the edition where one is named beside it."""
    assert values_of("style", text) == [{"style": style, "edition": edition}]


def test_either_of_two_styles_is_two_requirements(values_of: Reading) -> None:
    """An edition belongs to the style that it stands beside."""
    assert values_of("style", "Referencing: MLA (9th edition) or Chicago notes.") == [
        {"style": "mla", "edition": 9},
        {"style": "chicago-notes", "edition": None},
    ]


@pytest.mark.parametrize(
    "text", ["I tend to use Chicago for my own work.", "Do not use MLA.", "Mechanics and MLA    10%\nArgument    90%"]
)
def test_a_style_in_passing_is_not_asked(values_of: Reading, text: str) -> None:
    """The teacher's taste, a denial and a criterion's name set no style."""
    assert values_of("style", text) == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12-point Garamond, double-spaced.", {"font-size": "12 pt", "font": "Garamond", "spacing": "double"}),
        ("Calibri 11, line spacing of one and a half.", {"font-size": "11 pt", "font": "Calibri", "spacing": "1.5"}),
        ('1" margins on all sides.', {"margins": "1 in"}),
        ("Set margins of 2.5 cm.", {"margins": "2.5 cm"}),
        ("Page numbers in the upper right.", {"page-numbers": "top right"}),
        ("Please number the pages.", {"page-numbers": True}),
        ("Page numbers ...... bottom centre", {"page-numbers": "bottom centre"}),
        ("No title page. A running head is required.", {"no-title-page": True, "running-head": True}),
        ("A title page is required.", {"title-page": True}),
        ("Indent paragraphs half an inch.", {"paragraph-indent": "0.5 in"}),
        ("The lines should be numbered.", {"line-numbers": True}),
        ("Upload a Word file (.docx), not PDF.", {"file-type": "docx"}),
        ("Save as a PDF and name the file Surname_Essay2.", {"file-type": "pdf", "file-name": "Surname_Essay2"}),
        ("Hand in a printed copy.", {"printed": True}),
    ],
)
def test_rules_of_form_are_read(values_of: Reading, text: str, expected: dict[str, Value]) -> None:
    """Each rule with its value in one normal form."""
    assert {str(v["what"]): v["value"] for v in values_of("format", text)} == expected


@pytest.mark.parametrize(
    "text",
    [
        "You don't need a title page or an abstract.",
        "No paper copy is wanted.",
        "Give specific page numbers when you quote.",
        "The word count excludes the title page.",
        "The scale has 10 points.",
    ],
)
def test_what_is_not_wanted_is_not_asked(values_of: Reading, text: str) -> None:
    """Denials and other uses of the same words give no rule of form."""
    assert values_of("format", text) == []


def test_sections_are_named_in_order(values_of: Reading) -> None:
    """Inline lists, lists of lines and headings that follow all name sections; their lengths are left out."""
    inline = "Organize it in four parts: Introduction, Method, Findings, and Conclusion."
    assert [v["name"] for v in values_of("section", inline)] == ["introduction", "method", "findings", "conclusion"]
    listed = "The report must have these sections:\n\n  - Summary\n  - Entry options (500 words)\n  - References\n"
    assert [v["name"] for v in values_of("section", listed)] == ["summary", "entry options", "references"]
    headed = (
        "Your essay should have two main sections.\n\nWhere it began\n"
        "Begin with the first printed recipe that you can find, and say who printed it and for whom it was meant.\n\n"
        "Where it went\n"
        "Then follow the recipe for fifty years, and say what was changed in it, and what the changes tell us now.\n"
    )
    assert [v["name"] for v in values_of("section", headed)] == ["where it began", "where it went"]


@pytest.mark.parametrize(
    ("text", "what", "low"),
    [
        ("State your thesis in the first paragraph.", "thesis", None),
        ("Reply to at least two counterarguments.", "counterargument", 2),
        ("Include a map or other figure.", "figure", None),
        ("Two figures at minimum.", "figure", 2),
        ("One table of your own making is required.", "table", 1),
        ("At least four direct quotations from the novel.", "direct-quotation", 4),
        ("Followed by at least three keywords.", "keywords", 3),
        ("Do not use the first person.", "no-first-person", None),
        ("State the word count on the first page.", "word-count-stated", None),
        ("Sub-headings are expected.", "headings", None),
        ("Include a short literature review.", "literature-review", None),
    ],
)
def test_an_element_is_read(values_of: Reading, text: str, what: str, low: int | None) -> None:
    """Elements with their least number, where one is stated."""
    assert {"what": what, "min": low} in values_of("element", text)


@pytest.mark.parametrize(
    "text",
    [
        "No abstract is required.",
        "Use headings if you find them helpful.",
        "You don't need a conclusion.",
        "A thesis from another university may be useful.",
    ],
)
def test_an_element_that_is_left_free_is_not_asked(values_of: Reading, text: str) -> None:
    """Denials and permissions give no element."""
    assert values_of("element", text) == []


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("It should contain an abstract, an introduction, results and a discussion.", 4),
        ("It should have an introduction, a body and a conclusion.", 0),
        ("Prepare it in the format given below.\n1. Summary\n2. The Strike\n3. References\n", 3),
        ('End with a "Next Steps" section.', 1),
    ],
)
def test_what_the_paper_contains_is_its_sections(values_of: Reading, text: str, names: int) -> None:
    """Three usual names make a list one of sections; fewer are elements."""
    assert len(values_of("section", text)) == names


def test_an_article_is_part_of_a_name_in_capitals() -> None:
    """So is none in small letters; a heading of the writer's own may take a section's place."""
    text = "These sections are required:\n- The Strike\n- Aftermath (or a heading of your own)\n- a conclusion\n"
    asked = [r for r in read_brief([("sheet.txt", text)]).requirements if r.kind == "section"]
    assert [(r.values["name"], r.force) for r in asked] == [
        ("the strike", "must"),
        ("aftermath", "may"),
        ("conclusion", "must"),
    ]
