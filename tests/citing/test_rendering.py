"""A draft's citations are set in the style asked for, each in its place, and the rest of the draft is left alone."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.mention import Cite, Locator, Mention, Resolved
from fairhand.citing.recognise import recognise
from fairhand.citing.rendering import (
    CitationRequest,
    RenderedCitations,
    citation_key,
    citation_request,
    read_answer,
    reference_request,
)
from fairhand.citing.resolve import resolve
from fairhand.citing.styles import find_style
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.inline import Note, Styled, Text, plain
from fairhand.model.span import Span
from fairhand.press.pandoc import run_pandoc

SOURCES = [
    {
        "id": "ame",
        "type": "article-journal",
        "author": [{"family": "Ame", "given": "Ana"}, {"family": "Bone", "given": "Bo"}],
        "issued": {"date-parts": [[2019]]},
        "title": "The Weight of Salt: Five Winters",
        "container-title": "Tides",
        "volume": "4",
        "page": "11-19",
    },
    {
        "id": "cole",
        "type": "book",
        "author": [{"family": "Cole", "given": "Vic"}],
        "issued": {"date-parts": [[2003]]},
        "title": "Rope",
        "publisher": "Quay Books",
        "publisher-place": "Quay",
    },
    {
        "id": "cole-w",
        "type": "book",
        "author": [{"family": "Cole", "given": "Wyn"}],
        "issued": {"date-parts": [[1999]]},
        "title": "A Bell",
        "publisher": "Quay Books",
        "publisher-place": "Quay",
    },
]
ENTRIES, _ = read_csl_json(json.dumps(SOURCES))


def ask(draft: str, style: str) -> CitationRequest:
    """The request for a draft."""
    manuscript = read_manuscript(draft)
    mentions = recognise(manuscript, ENTRIES)
    return citation_request(manuscript, mentions, resolve(manuscript, mentions, ENTRIES), ENTRIES, find_style(style))


def answer(draft: str, style: str) -> RenderedCitations:
    """The answer for a draft."""
    request = ask(draft, style)
    return read_answer(run_pandoc(request), request)


def text_of_set(draft: str, style: str) -> str:
    """The draft with its citations replaced; a note stands in braces where it is put."""
    out = draft
    for one in reversed(answer(draft, style).mentions):
        note = one.inlines[0] if one.note else None
        words = f"{{{plain(note.children)}}}" if isinstance(note, Note) else plain(one.inlines)
        out = out[: one.span.start] + words + out[one.span.end :]
    return out


def test_the_words_of_the_sentence_stay() -> None:
    """Of a citation in the sentence only the parenthesis is replaced, and a page alone stays a page alone."""
    draft = "Ame and Bone (2019) weighed it, and it was light (p. 12)."
    assert text_of_set(draft, "apa-7") == draft
    assert text_of_set(draft, "chicago-author-date-17") == draft.replace("p. 12", "12")
    assert text_of_set(draft, "mla-9") == "Ame and Bone weighed it, and it was light (12)."
    assert text_of_set(draft, "ieee") == "Ame and Bone [1] weighed it, and it was light [1, p. 12]."


def test_a_page_alone_gets_its_year_where_none_was_given() -> None:
    """A draft written by author and page has the years that an author-date style needs."""
    assert text_of_set("Vic Cole says it holds (Cole 4).", "apa-7") == "Vic Cole says it holds (Cole, 2003, p. 4)."


def test_a_line_alone_stands_without_the_comma_of_the_name_left_out() -> None:
    """Of verse in MLA form. **Source**: MLA Handbook 9, 6.20 (from memory)."""
    draft = "Ame and Bone say “it is” (line 2), and “no” (lines 3–4)."
    assert text_of_set(draft, "mla-9") == draft.replace("–", "-")


def test_notes_take_the_place_of_parentheses() -> None:
    """The first note is full, later ones short, and a note goes behind the punctuation."""
    draft = "It held (Vic Cole, 2003, p. 4). It broke (Ame & Bone, 2019, p. 12). It held again (Cole, 2003, p. 5)."
    found = answer(draft, "chicago-notes-17").mentions
    assert [plain(one.inlines[0].children) for one in found if isinstance(one.inlines[0], Note)] == [
        "Vic Cole, Rope (Quay: Quay Books, 2003), 4.",
        "Ana Ame and Bo Bone, “The Weight of Salt: Five Winters,” Tides 4 (2019): 12.",
        "Cole, Rope, 5.",
    ]
    assert all(one.note and one.after_punctuation for one in found)
    assert found[0].span.of(draft) == "(Vic Cole, 2003, p. 4)"


def test_a_later_note_names_namesakes_in_full() -> None:
    """Two authors of one surname are told apart. **Source**: CMOS 17, 14.32."""
    draft = "A (V. Cole, 2003, p. 4). B (W. Cole, 1999, p. 5). C (V. Cole, 2003, p. 6)."
    assert text_of_set(draft, "chicago-notes-17").endswith("C {Vic Cole, Rope, 6.}.")


def test_a_citation_within_the_writers_own_note_makes_no_other() -> None:
    """It runs on in the note, its parenthesis kept, and the note counts at its number for what came before."""
    note = "[^a]: So Ame and Bone (2019, p. 12) (Vic Cole, 2003, p. 4)."
    draft = f"It held.[^a] And again (Ame & Bone, 2019, p. 13).\n\n{note}"
    got = text_of_set(draft, "chicago-notes-17")
    assert "again {Ame and Bone, “Weight of Salt,” 13.}." in got
    article, book = (
        "“The Weight of Salt: Five Winters,” Tides 4 (2019): 12",
        "Vic Cole, Rope (Quay: Quay Books, 2003), 4",
    )
    assert got.endswith(f"So Ame and Bone, {article} ({book}).")


def test_a_name_whose_page_follows_has_one_note() -> None:
    """The note stands where the page stood."""
    got = text_of_set("Ame and Bone (2019) weighed it, and it was light (p. 12).", "chicago-notes-17")
    assert got.startswith("Ame and Bone weighed it, and it was light {Ana Ame and Bo Bone,")


def test_numbers_set_high_go_behind_the_punctuation() -> None:
    """Only styles whose numbers are superscript move them."""
    (high,) = answer("It held (Vic Cole, 2003).", "ama-11").mentions
    (level,) = answer("It held (Vic Cole, 2003).", "ieee").mentions
    assert (high.inlines, high.after_punctuation) == ((Styled("superscript", (Text("1"),)),), True)
    assert (plain(level.inlines), level.after_punctuation, level.note) == ("[1]", False, False)


def test_what_is_not_understood_stays_as_written() -> None:
    """A citation of an unknown source is not among the rendered, and the list holds only what is cited."""
    found = answer("It held (Nobody, 1999, p. 4), others say (Ame & Bone, 2019).", "apa-7")
    assert [one.mention for one in found.mentions] == [1]
    assert [entry for entry, _ in found.references] == ["ame"]


def test_words_after_the_place_are_kept() -> None:
    """A remark such as *emphasis added* stays in the parenthesis."""
    assert text_of_set("It held (Cole, 2003, p. 4, emphasis added).", "mla-9") == "It held (Cole 4, emphasis added)."


def test_signals_stay_in_front_when_works_are_put_in_order() -> None:
    """APA orders the works of a parenthesis; *see* stays first. **Source**: APA 7, 8.12."""
    got = text_of_set("It held (see Cole, 2003; Ame & Bone, 2019).", "apa-7")
    assert got == "It held (see Ame & Bone, 2019; Cole, 2003)."


@pytest.mark.parametrize(
    ("place", "mla", "apa"),
    [
        ("1.2.34-36", "(Cole 1.2.34-36)", "(Cole, 2003, 1.2.34–36)"),
        ("lines 5-7", "(Cole, lines 5-7)", "(Cole, 2003, lines 5–7)"),
        ("para. 4", "(Cole, par. 4)", "(Cole, 2003, para. 4)"),
        ("chap. 3", "(Cole, ch. 3)", "(Cole, 2003, Chapter 3)"),
        ("p. B2", "(Cole B2)", "(Cole, 2003, p. B2)"),
        ("pp. xiv-xvi", "(Cole xiv-xvi)", "(Cole, 2003, pp. xiv–xvi)"),
        ("2:45", "(Cole 2:45)", "(Cole, 2003, Vol. 2, p. 45)"),
    ],
)
def test_places_other_than_pages(place: str, mla: str, apa: str) -> None:
    """Acts, lines, paragraphs, chapters and volumes have each style's words.

    **Source**: MLA 9, 6.16–6.26; APA 7, 8.13.
    """
    draft = f"It held (Cole, 2003, {place})."
    assert [text_of_set(draft, style) for style in ("mla-9", "apa-7")] == [f"It held {mla}.", f"It held {apa}."]


def test_the_key_changes_with_the_citations_and_not_with_the_prose() -> None:
    """Words around a citation do not ask the engine again; another page, source or style does."""
    key = citation_key(ask("It held (Ame & Bone, 2019, p. 12).", "apa-7"))
    assert citation_key(ask("# A title\n\nThe rope held well (Ame & Bone, 2019, p. 12).", "apa-7")) == key
    assert citation_key(ask("It held (Ame & Bone, 2019, p. 13).", "apa-7")) != key
    assert citation_key(ask("It held (Ame & Bone, 2019, p. 12).", "mla-9")) != key


def test_a_list_alone() -> None:
    """Entries are set without a draft, in the style's order, whatever odd values stand in a record."""
    odd = [
        *SOURCES,
        {"id": "x y; *", "type": "book", "title": "<i>Half", "volume": [1], "issued": {"date-parts": [["?"]]}},
    ]
    entries, _ = read_csl_json(json.dumps(odd))
    request = reference_request(entries, find_style("mla-9"))
    references = read_answer(run_pandoc(request), request).references
    assert [entry for entry, _ in references] == ["ame", "cole", "cole-w", "x y; *"]


def test_no_odd_value_stops_the_engine() -> None:
    """Every field may hold anything: the list is set, the sound records among them too."""
    odd = [
        "",
        "x" * 300,
        "<i>",
        "</b>x",
        '“q"',
        "\\",
        "\u202e",
        "p. 3",
        "2019-13-45",
        "99999",
        "&amp;",
        1e300,
        True,
        None,
    ]
    odd += [["a", 2], [{"family": ["x"]}], {"date-parts": [[2019, 40]]}, {"raw": 3}, {"date-parts": "x", "season": "x"}]
    fields = [
        "title-short",
        "container-title",
        "page",
        "volume",
        "DOI",
        "URL",
        "edition",
        "publisher",
        "language",
        "author",
    ]
    fields += ["editor", "issued", "accessed", "original-date", "title"]
    records = [
        {"id": f"{field}-{number}", "type": "book", "title": f"Salt {number}", field: value}
        for field in fields
        for number, value in enumerate(odd)
    ]
    entries, _ = read_csl_json(json.dumps([*records, *SOURCES]))
    for style in ("mla-9", "apa-7"):
        request = reference_request(entries, find_style(style))
        assert len(read_answer(run_pandoc(request), request).references) == len(entries)


@settings(max_examples=60)
@given(
    st.text(max_size=30),
    st.text(max_size=10),
    st.text(max_size=10),
    st.sampled_from(["mla-9", "apa-7", "chicago-notes-17", "ama-11"]),
)
def test_any_cite_makes_a_request(title: str, place: str, prefix: str, style: str) -> None:
    """No words in a citation or a record break the request, and each place lies in the draft."""
    draft = f"So it is ({title}) they say."
    manuscript = read_manuscript(draft)
    end = len(draft) - len(" they say.")
    entry = replace(ENTRIES[0], csl={**ENTRIES[0].csl, "title": title})
    cite = Cite(Span(10, end - 1), names=("Ame",), locator=Locator("page", place, Span(10, 10)), prefix=prefix)
    for form in ("parenthetical", "narrative", "page-only", "note"):
        mention = Mention(Span(9, end), form, 0, (cite,))
        resolved = Resolved(0, cite, "ame", None, ("ame",), "")
        request = citation_request(manuscript, (mention,), (resolved,), (entry,), find_style(style))
        json.loads(request.stdin)
        assert all(
            0 <= place.whole.start <= place.span.start <= place.span.end <= len(draft) for place in request.places
        )
