"""What holds of any quotation and any source."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.fidelity.alignment import align
from fairhand.fidelity.allowed import rules_for
from fairhand.fidelity.prepared import WORD, prepare, word_spans, words_of
from fairhand.fidelity.quotation import find_quotation
from fairhand.fidelity.quoted import Token, take_apart
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span

WORDS = st.sampled_from(
    ["the", "quay", "was", "sold", "not", "off", "[she]", "[w]as", "…", ". . .", "—", "sold-off", "’s", "12"]
)
PROSE = st.lists(WORDS, max_size=40).map(" ".join)
RULES = rules_for("mla")


@given(st.text(), st.lists(st.text(), max_size=3))
def test_any_text_is_judged(text: str, pages: list[str]) -> None:
    """No quotation and no source stop the reader, and every place lies within its page."""
    source = prepare(SourceText("any", tuple(Page(str(n), page) for n, page in enumerate(pages)), paged=True))
    for quoted in (text, *pages):
        match = find_quotation(quoted, source, ("1",), {"any": source}, RULES)
        assert all(0 <= s.start < s.end <= len(pages[k]) for k, s in match.place)


@given(PROSE, st.lists(PROSE, max_size=3))
def test_any_prose_is_judged(text: str, pages: list[str]) -> None:
    """The differing words shown lie within the wordings, in order and apart."""
    source = prepare(SourceText("any", tuple(Page(str(n), page) for n, page in enumerate(pages)), paged=True))
    match = find_quotation(text, source, ("1",), {}, RULES)
    assert 0 <= match.likeness <= 1
    if match.wordings is not None:
        for shown, spans in (
            (match.wordings.draft, match.wordings.draft_differs),
            (match.wordings.source, match.wordings.source_differs),
        ):
            bounds = [bound for span in spans for bound in (span.start, span.end)]
            assert bounds == sorted(bounds)
            assert all(0 <= bound <= len(shown) for bound in bounds)


@given(st.text(alphabet="abc dé-’\n—ﬁ1\u00ad", min_size=1), st.integers(0, 30), st.integers(1, 30))
def test_every_stretch_of_whole_words_is_found_in_its_source(page: str, start: int, length: int) -> None:
    """Whatever whole words are taken from a page stand on it verbatim, however its lines and hyphens fall."""
    spans = word_spans(page)[start : start + length]
    if spans:
        source = prepare(SourceText("any", (Page("1", page),), paged=True))
        match = find_quotation(page[spans[0].start : spans[-1].end], source, ("1",), {}, RULES)
        assert match.outcome in ("verbatim", "allowed")
        assert not match.points


@given(st.text())
def test_folded_words_and_their_places_go_together(text: str) -> None:
    """There is one folded word for each word's place, and none holds a space."""
    words = words_of(text)
    assert len(words) == len(word_spans(text)) == sum(1 for _ in WORD.finditer(text))
    assert all(word and not any(map(str.isspace, word)) for word in words)


@given(st.text())
def test_tokens_lie_in_their_quotation(text: str) -> None:
    """The tokens of a quotation stand in it in order."""
    quoted = take_apart(text)
    starts = [token.span.start for segment in quoted.segments for token in segment.tokens]
    assert starts == sorted(starts)


@given(st.lists(st.sampled_from("abcd"), max_size=60), st.lists(st.sampled_from("abcd"), max_size=60))
def test_a_pairing_keeps_the_order_and_every_token(tokens: list[str], words: list[str]) -> None:
    """Each token of the quotation is paired once, in order, and so is each word of the source between."""
    pairs = align([Token(word, Span(0, 1)) for word in tokens], words)
    if not tokens:
        return
    assert [k for k, _ in pairs if k is not None] == list(range(len(tokens)))
    taken = [s for _, s in pairs if s is not None]
    assert taken == list(range(taken[0], taken[-1] + 1)) if taken else True
