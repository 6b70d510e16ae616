"""What becomes of a quotation, case by case."""

from __future__ import annotations

import pytest

from fairhand.fidelity.allowed import rules_for
from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.model.source import Page, SourceText

FERRY = prepare(
    SourceText(
        "ferry",
        (
            Page("40", "A ferry ran from Easter to the first frost. Nobody thought it odd. “We paid,” one"),
            Page(
                "41",
                "widow recalled, and the ferryman’s ledger bears her out.12 It lists 38,600 crossings, of which not "
                "one was free. The council did not close the ferry; it had never troubled to open it.\n"
                "In ‘bad’ winters—and there were many—the cable froze, the wages stopped, and the boys sang:\n"
                "Haul away the morning,\nHaul away the tide.",
            ),
            Page("42", "I was told by two pilots that the well-known cable was never weighed. Nobody thought it odd."),
        ),
        paged=True,
    )
)
QUAY = prepare(
    SourceText("quay", (Page(None, "The quay was sold on a wet Friday to a man from Corran."),), paged=False)
)


def find(text: str, *labels: str, style: str = "chicago") -> QuotationMatch:
    """The quotation, looked for in the ferry's history first."""
    return find_quotation(text, FERRY, labels, {"quay": QUAY}, rules_for(style))


@pytest.mark.parametrize(
    "text",
    [
        "The council did not close the ferry; it had never troubled to open it",
        "the ferryman's ledger bears her out",
        "Nobody thought it odd.",
        "bad",
        "the well-known cable",
    ],
)
def test_the_sources_own_words_are_verbatim(text: str) -> None:
    """Words as they stand are verbatim, whatever the form of apostrophe or mark."""
    assert find(text).outcome in ("verbatim", "allowed")
    assert find(text).wordings is None


@pytest.mark.parametrize(
    "text",
    [
        "[The council] did not close the ferry",
        "[I]t had never troubled to open it",
        "[they were] told by two pilots",
        "It list[ed] 38,600 crossings",
        "It list[] 38,600 crossings",
        "Nobody [at Corran] thought it odd",
        "Nobody thought [sic] it odd",
        "Nobody thought it odd [emphasis added]",
        "not one was free. . . . it had never troubled to open it",
        "A ferry ran . . . to the first frost",
        "A ferry ran […] to the first frost.",
        'In "bad" winters -- and there were many -- the cable froze',
        "Haul away the morning, / Haul away the tide",
        "the ferryman’s ledger bears her out. It lists 38,600 crossings",
        "the council did not close the ferry",
        "“We paid,” one widow recalled",
    ],
)
def test_marked_and_customary_changes_are_allowed(text: str) -> None:
    """Brackets, ellipses, quotation marks, line ends and note numbers change nothing."""
    match = find(text)
    assert match.outcome in ("verbatim", "allowed"), match
    assert not match.points, match


@pytest.mark.parametrize(
    ("text", "draft", "source"),
    [
        ("it had never troubled to shut it", ["shut"], ["open"]),
        ("It lists 36,800 crossings", ["36", "800"], ["38", "600"]),
        ("they was told by two pilots that the well-known", ["they"], ["I"]),
        ("of which exactly not one was free", ["exactly"], []),
        ("nobody thought it very odd", ["very"], []),
    ],
)
def test_changed_words_differ_and_are_shown(text: str, draft: list[str], source: list[str]) -> None:
    """A word changed or added without brackets is shown beside the source's own."""
    match = find(text)
    assert match.outcome == "differs"
    assert match.wordings is not None
    assert [w for s in match.wordings.draft_differs for w in s.of(match.wordings.draft).split(",")] == draft
    if source:
        assert [w for s in match.wordings.source_differs for w in s.of(match.wordings.source).split(",")][
            -len(source) :
        ] == source


@pytest.mark.parametrize(
    ("text", "dropped"),
    [
        ("The council did close the ferry", "not"),
        ("A ferry ran from Easter to the frost", "first"),
        ("the cable froze, and the boys sang", "the wages stopped"),
    ],
)
def test_words_dropped_without_a_mark_are_a_gap(text: str, dropped: str) -> None:
    """A word left out without an ellipsis is a gap, a negation too."""
    match = find(text)
    assert match.outcome == "gap"
    assert match.wordings is not None
    assert [span.of(match.wordings.source) for span in match.wordings.source_differs] == [dropped]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("A ferry ran . . . from Easter to the first frost", "nothing was left out"),
        ("it had never troubled to open it . . . The council did not close the ferry", "another order"),
        ("the council did not . . . burn the harbour records entirely", "not found"),
    ],
)
def test_bad_ellipses_differ_and_say_why(text: str, says: str) -> None:
    """An idle ellipsis, parts in another order and a part that stands nowhere are told."""
    match = find(text)
    assert match.outcome == "differs"
    assert says in match.says


def test_parts_pages_apart_differ() -> None:
    """An ellipsis may not bridge several pages."""
    filler = " ".join(f"word{n}" for n in range(900))
    source = prepare(
        SourceText(
            "long", (Page("1", f"The tide came in early that year. {filler} Nobody was drowned at all."),), paged=True
        )
    )
    match = find_quotation("The tide came in early . . . Nobody was drowned at all", source, (), {}, rules_for("apa"))
    assert match.outcome == "differs"
    assert "words of the source lie between" in match.says


def test_a_page_is_wrong_only_where_none_of_its_pages_is_cited() -> None:
    """A quotation over a page break may cite either page or both; on another page it stands elsewhere."""
    over = "one widow recalled"
    assert find(over, "40").outcome == find(over, "41").outcome == find(over, "40", "41").outcome == "verbatim"
    assert find(over).pages == ("40", "41")
    assert [page for page, _ in find(over).place] == [0, 1]
    elsewhere = find("not one was free", "40")
    assert (elsewhere.outcome, elsewhere.wrong_page, elsewhere.pages) == ("elsewhere", True, ("41",))
    both = find("not one was dear, the council did not close the ferry", "42")
    assert both.wrong_page


def test_of_several_places_the_cited_one_is_taken() -> None:
    """Words that stand twice are found where they are cited."""
    assert find("Nobody thought it odd", "42").pages == ("42",)
    assert find("Nobody thought it odd", "40").pages == ("40",)
    assert find("Nobody thought it odd", "41").outcome == "elsewhere"


def test_the_first_letter_is_judged_by_the_manual() -> None:
    """A changed first letter is silent in Chicago and APA; MLA asks for brackets."""
    text = "the council did not close the ferry"
    assert find(text, style="apa").outcome == "allowed"
    assert find(text, style="mla").outcome == "differs"
    assert find("[t]he council did not close the ferry", style="mla").outcome == "allowed"


def test_points_and_capitals_within_are_told_apart_from_words() -> None:
    """A comma or capital changed within is no changed word; the match says that points differ."""
    match = find("The council did not close the ferry, it had never troubled to open it")
    assert match.outcome == "allowed"
    assert match.points
    assert match.wordings is not None
    assert find("The Council did not close the ferry").points


def test_sources_without_pages_have_no_wrong_page() -> None:
    """A page cited of a web page cannot be checked."""
    match = find_quotation("sold on a wet Friday", QUAY, ("3",), {}, rules_for("mla"))
    assert (match.outcome, match.pages) == ("verbatim", ())


def test_other_sources_are_named() -> None:
    """Four exact words, or six nearly so, are claimed for another source; fewer are not."""
    assert find("sold on a wet Friday").outcome == "other-source"
    assert find("sold on a wet Friday").source == "quay"
    assert find("The quay was sold on a dry Friday to a man").outcome == "other-source"
    assert find("a wet Friday").outcome == "not-found"


def test_absence_is_said() -> None:
    """Words of no source are not found; without a text nothing is guessed."""
    assert find("the harbour commissioners were of one mind on the matter").outcome == "not-found"
    none = find_quotation("sold on a wet Friday", None, ("3",), {"quay": QUAY}, rules_for("mla"))
    assert (none.outcome, none.source) == ("no-text", "quay")
    assert find_quotation("sold on a wet Friday", None, (), {}, rules_for("mla")).outcome == "no-text"


def test_footnotes_do_not_interrupt_the_text() -> None:
    """A quotation runs on over a page with footnotes, and one from a footnote is found on its page."""
    first = "The pilots had agreed to wait for the\n3 See the ledger for the year."
    pages = (Page("8", first, first.index("3 See")), Page("9", "evening tide, and nobody thought it odd."))
    source = prepare(SourceText("foot", pages, paged=True))
    over = find_quotation("agreed to wait for the evening tide", source, ("8",), {}, rules_for("apa"))
    assert (over.outcome, over.pages) == ("verbatim", ("8", "9"))
    noted = find_quotation("See the ledger for the year", source, ("8",), {}, rules_for("apa"))
    assert (noted.outcome, noted.pages) == ("verbatim", ("8",))
    assert noted.place[0][1].of(first) == "See the ledger for the year"


def test_matter_at_a_page_break_is_no_gap() -> None:
    """A footnote or running head that stands between two pages' text is not words left out."""
    source = prepare(
        SourceText(
            "foot",
            (
                Page("8", "The pilots had agreed among them-\n3 See the ledger for 1911.\nHarbour Papers"),
                Page("9", "selves to wait for the evening tide."),
                Page("10", "Nothing came of it, and the matter was left to\n4 Minutes, 8 May."),
                Page("11", "the new harbour master."),
            ),
            paged=True,
        )
    )
    rules = rules_for("apa")
    assert (
        find_quotation("the matter was left to the new harbour master", source, ("10",), {}, rules).outcome == "allowed"
    )
    assert find_quotation("the matter was left to the harbour master", source, ("10",), {}, rules).outcome == "gap"


def test_the_closing_point_may_suit_the_sentence_around_it() -> None:
    """A comma for a full stop at the end is silent; a question mark of the writer's own is told."""
    assert find("A ferry ran from Easter to the first frost,").outcome == "allowed"
    assert not find("A ferry ran from Easter to the first frost,").points
    assert find("A ferry ran from Easter to the first frost?").points


def test_another_sources_own_words_are_its_own() -> None:
    """Where the cited source comes near but another has the very words, the other is named."""
    near = prepare(
        SourceText("near", (Page(None, "The quay was sold on a wet Monday to a man from Corran."),), paged=False)
    )
    match = find_quotation("sold on a wet Friday to a man", near, (), {"quay": QUAY}, rules_for("apa"))
    assert (match.outcome, match.source) == ("other-source", "quay")


@pytest.mark.parametrize(
    ("text", "source"),
    [
        ("someone had paid", "some one had paid"),
        ("the storm—and the tide", "the storm-and the tide"),
        ("the infil tration rate", "the infiltration rate"),
    ],
)
def test_words_spaced_otherwise_are_told_as_points(text: str, source: str) -> None:
    """Words that differ in nothing but spaces or hyphens are no changed words, but it is told."""
    prepared = prepare(SourceText("s", (Page("1", f"They say that {source} at Corran."),), paged=True))
    match = find_quotation(f"say that {text} at Corran", prepared, (), {}, rules_for("apa"))
    assert (match.outcome, match.points, match.likeness) == ("allowed", True, 1.0)


@pytest.mark.parametrize(
    ("page", "text", "outcome"),
    [
        ("The surplus12 was never spent at all.", "The surplus was never spent", "allowed"),
        ("The surplus,[3] was never spent at all.", "The surplus, was never spent", "allowed"),
        ("They found vitamin B12 in the eggs.", "They found vitamin B in the eggs", "differs"),
        ("They counted 38,600 crossings in all.", "They counted 38 crossings in all", "gap"),
        ("They counted some (12) crossings in all.", "They counted some crossings in all", "gap"),
        ("O rope, O tide,    25\nO frozen cable", "O rope, O tide, / O frozen cable", "allowed"),
        ("It was sold in\n1925 to a man", "It was sold in to a man", "gap"),
    ],
)
def test_note_and_line_numbers_are_told_from_figures(page: str, text: str, outcome: str) -> None:
    """A note's or a line's number may be left out; a figure of the text may not."""
    prepared = prepare(SourceText("s", (Page("1", page),), paged=True))
    assert find_quotation(text, prepared, (), {}, rules_for("apa")).outcome == outcome


def test_sheets_of_a_pdf_that_were_counted_are_not_held_against_journal_pages() -> None:
    """Where a PDF's sheets were counted from 1, a page beyond the count cannot be judged; one within it can."""
    pages = (Page("1", "The quay was sold on a Friday."), Page("2", "Nobody bought it."))
    counted = prepare(SourceText("s", pages, paged=True, file="sources/s.pdf", labels_from="counted"))
    assert find_quotation("sold on a Friday", counted, ("341",), {}, rules_for("apa")).outcome == "verbatim"
    assert find_quotation("sold on a Friday", counted, ("2",), {}, rules_for("apa")).outcome == "elsewhere"


@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        ("counted boats [4], [5], and the [weir::low] gauge at noon on every day", "allowed"),
        ("counted boats [4], [5], and the [weir::low] gauge at noon on that day", "differs"),
        ("counted boats [4], [5], and the [weir::low] gauge at noon every day", "gap"),
        ("counted boats [4], [5], and the [low] gauge at noon on every day", "allowed"),
    ],
)
def test_brackets_of_the_source_are_no_changes(text: str, outcome: str) -> None:
    """Words copied with the source’s own brackets are no fault; a bracket of the writer's is a change still."""
    page = Page("9", "We counted boats [4], [5], and the [weir::low] gauge at noon on every day of that week.")
    found = find_quotation(text, prepare(SourceText("r", (page,), paged=True)), ("9",), {}, rules_for("apa"))
    assert found.outcome == outcome


@pytest.mark.parametrize(
    ("text", "outcome", "broken"),
    [
        ("I cannot lift it. I have not tried.", "allowed", True),
        ("I cannot lift it", "verbatim", False),
        ("I cannot lift it, and I have not tried.", "differs", False),
        ("I have tried. I am tired of it.", "gap", False),
        ("I have been told to rest. I am tired of it.", "gap", False),
    ],
)
@pytest.mark.parametrize("marks", ['""', "“”", "''", "‘’"])
def test_a_speech_that_its_teller_breaks_is_no_gap(marks: str, text: str, outcome: str, *, broken: bool) -> None:
    """Words outside the source's own marks, in one paragraph, may be left out, and it is told; words within may not."""
    words = "<I cannot lift it,> said the porter, the keepers' man. <I have not tried. I have been told to rest.>\n\n"
    words += "<Is it heavy?> asked the clerk. <I am tired of it.>"
    page = Page("3", words.replace("<", marks[0]).replace(">", marks[1]))
    found = find_quotation(text, prepare(SourceText("s", (page,), paged=True)), ("3",), {}, rules_for("mla"))
    assert (found.outcome, found.broken_speech) == (outcome, broken)
    if broken:
        assert found.wordings is not None
        assert "said the porter" in found.wordings.source_differs[0].of(found.wordings.source)
        assert "who speaks" in found.says


@pytest.mark.parametrize(
    "text",
    [
        'He called it "quite lost and gone" for ever and shut the door.',
        'She asked him: "Is it shut?" He nodded twice, "So it is," and the light went out.',
    ],
)
def test_quoted_words_that_are_dropped_are_a_gap(text: str) -> None:
    """Words within the source's marks are no teller's, wherever they stand."""
    prepared = prepare(SourceText("s", (Page("3", text),), paged=True))
    quoted = "He called it for ever and shut the door" if "called" in text else "She asked him: and the light went out"
    assert find_quotation(quoted, prepared, ("3",), {}, rules_for("mla")).outcome == "gap"
