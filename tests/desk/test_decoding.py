"""Text out of bytes, whatever they were saved in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.desk.decoding import decode_text
from fairhand.errors import FileUnreadable

SAMPLE = "The “dyke” at Ålesund held — café, 30 °C, £5."


@pytest.mark.parametrize(
    ("encoding", "told"),
    [
        ("utf-8", "UTF-8"),
        ("utf-8-sig", "UTF-8"),
        ("utf-16", "UTF-16"),
        ("utf-16-le", "UTF-16"),
        ("utf-16-be", "UTF-16"),
        ("utf-32", "UTF-32"),
        ("cp1252", "Windows-1252"),
    ],
)
def test_encodings_that_editors_write_are_read(encoding: str, told: str) -> None:
    """A draft saved in any encoding that editors offer is read letter for letter, and the encoding is named."""
    decoded = decode_text(SAMPLE.encode(encoding), "draft.md")
    assert (decoded.text, decoded.spoken, decoded.whole) == (SAMPLE, told, True)


def test_line_ends_stand() -> None:
    """Line ends are left as they are, so that offsets count what the file holds."""
    assert decode_text(b"one\r\ntwo\rthree\n", "draft.md").text == "one\r\ntwo\rthree\n"


def test_bytes_that_are_no_letter_do_not_stop_the_rest() -> None:
    """Bytes that no letter has are shown as U+FFFD, and said."""
    decoded = decode_text(b"na\xefve \x81 end", "draft.md")
    assert decoded.text == "naïve � end"
    assert not decoded.whole


@pytest.mark.parametrize("first", [b"%PDF-1.7\n", b"PK\x03\x04....", b"\x89PNG\r\n", b"{\\rtf1"])
def test_what_is_no_text_is_said(first: bytes) -> None:
    """A PDF or a word-processor file under a text file's name is told for what it is."""
    with pytest.raises(FileUnreadable, match=r"draft\.md: it is .* not text; "):
        decode_text(first + b"rest", "draft.md")


@given(st.text(st.characters(codec="utf-8", exclude_characters="\ufeff\0")))
def test_any_text_in_utf8_comes_back(text: str) -> None:
    """Whatever was written as UTF-8 is read as it was written."""
    if not text.startswith("{\\rtf"):
        assert decode_text(text.encode(), "draft.md").text.encode() == text.encode()


@given(st.binary(max_size=200))
def test_any_bytes_are_some_text_or_told(data: bytes) -> None:
    """No bytes crash the reading."""
    try:
        decode_text(data, "draft.md").text.encode()
    except FileUnreadable as error:
        assert "not text" in str(error)  # noqa: PT017 -- most bytes are text
