"""What is a slip of spelling, what is let be, and what was meant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.own_prose import OwnParagraph, own_prose
from fairhand.copyedit.words.misspelled import Spelling, country_written, find_misspelled, find_other_country
from fairhand.copyedit.words.own_words import add_word, drop_word, read_words
from fairhand.copyedit.words.suggestions import suggest_words
from fairhand.language.lexicon import Country
from fairhand.language.sorted_lines import SortedLines
from fairhand.manuscript.draft import read_manuscript


def slips(text: str, against: Spelling | None = None) -> list[str]:
    """The words told of a draft, each with what is offered first."""
    own = own_prose(read_manuscript(text), ())
    return [f"{each.word}: {each.instead[0]}" for each in find_misspelled(own, against or Spelling("US"))]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("The shed was seperately lit.", ["seperately: separately"]),
        ("The comittee of our goverment’s men.", ["comittee: committee", "goverment: government"]),
        ("Alot of rain fell.", ["Alot: A lot"]),
        ("They didnt reach thier quay.", ["didnt: didn't", "thier: their"]),
        ("A well-documentted ebb.", ["documentted: documented"]),
        ("Beacuse it rained, they left.", ["Beacuse: Because"]),
    ],
)
def test_slips_are_told(text: str, told: list[str]) -> None:
    """A slip is told wherever it stands in the writer's own words, with the likeliest word first."""
    assert slips(text) == told


@pytest.mark.parametrize(
    "text",
    [
        "The Zemblan envoy met Kinbote and van Dael.",
        "Kinbote argues so. Later Kinbote wavers.",
        "He wrote “goverment” and *raison d'etre*.",
        "> The goverment of the isle.",
        "See `goverment` at https://goverment.example/wich.",
        "The DNA of the mRNA, the pH and the 12th run.",
        "A biofilm, its heteronormativity, a counternarrative; post-Fordist, co-ordinated and re-read.",
        "The lex talionis tradition.",
        "The qanat fed the qanat garden of one qanat.",
        "They organise and organize the colour.",
    ],
)
def test_what_is_no_slip_is_let_be(text: str) -> None:
    """Names, quotations, italics, code, abbreviations, words of the field, other languages, words that recur."""
    assert slips(text, Spelling("GB")) == []


def test_words_of_the_writer_and_of_the_sources_are_known() -> None:
    """The personal list and the list of sources hold whatever the draft says; so does the text of a source."""
    text = "The goverment was adducted."
    assert slips(text, Spelling("US", own=frozenset({"goverment", "adducted"}))) == []
    assert slips(text, Spelling("US", is_at_hand=lambda word: word == "adducted")) == ["goverment: government"]


def test_the_other_countrys_spelling_is_told_once() -> None:
    """Each word once, with how this country spells it; a word that both have is let be."""
    own = [OwnParagraph("The colour, the colour, towards a programme; the centre of the catalogue.", 0, ())]
    assert [(each.word, each.instead) for each in find_other_country(own, Spelling("US"))] == [
        ("colour", ("color",)),
        ("centre", ("center",)),
    ]


@pytest.mark.parametrize(
    ("text", "country"),
    [("The colour of the harbour; one color.", "GB"), ("A labor of color.", "US"), ("The quay.", None)],
)
def test_the_draft_tells_its_country(text: str, country: Country | None) -> None:
    """Whose spelling it has more of."""
    assert country_written([OwnParagraph(text, 0, ())]) == country


def test_the_words_around_and_at_hand_move_a_suggestion_up() -> None:
    """A word that the draft or its sources have, or that often stands beside its neighbour, is likelier."""
    assert suggest_words("lingeage", "US")[0][0] == "lineage"
    assert suggest_words("lingeage", "US", at_hand=frozenset({"language"}))[0][0] == "language"
    alone, beside = ([word for word, _ in suggest_words("tath", "US", *near)] for near in ((), ("so", "the")))
    assert beside.index("that") <= alone.index("that")


def test_the_list_of_words_is_kept_as_the_writer_wrote_it() -> None:
    """One word on a line; remarks and blank lines stay; a word stands there once."""
    text = "# my words\nbioswale  # the ditch\n"
    assert read_words(text) == ("bioswale",)
    assert add_word(text, "Bioswale") == text
    assert drop_word(add_word(text, "qanat"), "QANAT") == text


@given(
    st.dictionaries(st.text(st.characters(exclude_characters="\t\n\r", exclude_categories=["Cs"])), st.integers(0, 9))
)
def test_a_sorted_list_finds_its_lines_and_no_others(lines: dict[str, int]) -> None:
    """Every key is found with its fields, and what is no key is not."""
    data = b"".join(sorted(f"{key}\t{value}\n".encode() for key, value in lines.items()))
    found = SortedLines(data)
    assert all(found.find(key) == (str(value),) for key, value in lines.items())
    assert found.find("no such key among them") is None


@given(st.text())
def test_any_text_is_looked_through(text: str) -> None:
    """Places lie within the draft, and hold the word that is told."""
    own = own_prose(read_manuscript(text), ())
    assert all(each.span.of(text) == each.word for each in find_misspelled(own, Spelling("US")))
