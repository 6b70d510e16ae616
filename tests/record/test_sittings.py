"""Sittings, sections and days."""

from __future__ import annotations

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from fairhand.record.days import Day, draw_days, list_days
from fairhand.record.document import Document, find_disorder, read_document, write_document
from fairhand.record.page import read_page, write_page
from fairhand.record.sittings import Kept, Sitting, Words, compare_sections, list_sittings
from fairhand.record.telling import say_sitting, sum_up

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
TEXT = st.text(alphabet="ab \n#.", max_size=60)


def test_what_is_struck_out_again_within_a_sitting_is_not_counted() -> None:
    """The end of a sitting is held against its beginning."""
    texts = {1: "One two.", 2: "One two three four.", 3: "One two."}
    states = [Kept(seq, "draft.md", HOUR + dt.timedelta(minutes=seq), "written") for seq in texts]
    (sitting,) = list_sittings(states, texts.get)
    assert [(one.came, one.went) for one in sitting.draft] == [(2, 0)]


def test_a_word_that_moves_to_another_section_went_out_of_one_and_came_into_the_other() -> None:
    """Two sections of one name are told apart."""
    before = "# T\n\n## A\n\nrain\n\n## B\n\nsun\n\n## B\n\nwind\n"
    after = "# T\n\n## A\n\n## B\n\nsun rain\n\n## B\n\nwind hail\n"
    assert list(compare_sections(before, after)) == [Words("A", 0, 1), Words("B", 1, 0), Words("B (2)", 1, 0)]


@given(TEXT, TEXT)
def test_words_in_less_words_out_is_what_the_draft_grew_by(then: str, now: str) -> None:
    """Whatever the sections: none is counted twice, and none is lost."""
    from fairhand.language.words import words

    grown = sum(one.came - one.went for one in compare_sections(then, now))
    assert grown == len(list(words(now))) - len(list(words(then)))


def test_a_state_that_cannot_be_read_is_passed_over() -> None:
    """The next one is held against the last that could be."""
    texts = {1: "One two.", 2: None, 3: "One two three."}
    states = [Kept(seq, "draft.md", HOUR + dt.timedelta(hours=seq), "written") for seq in texts]
    assert [one.came for one in list_sittings(states, texts.get)] == [2, 0, 1]


def test_the_picture_has_a_bar_for_each_day_and_says_so_in_words() -> None:
    """Nothing is told by colour, and the description gives the sums."""
    days = tuple(Day(HOUR.date() + dt.timedelta(days=number), 10 * number, number) for number in range(1, 40))
    drawn = draw_days(days)
    assert drawn.count("<rect") == 2 * len(days)
    assert "7,800 words came in and 780 went out, on 39 days" in drawn
    assert {part.split('"')[0] for part in drawn.split('fill="')[1:]} == {"currentColor", "none"}


def test_a_sitting_of_settings_alone_is_told() -> None:
    """Nothing that counts in words is still something."""
    assert say_sitting(Sitting(HOUR, HOUR, (1,))) == ("Nothing that counts in words.",)
    assert sum_up([Sitting(HOUR, HOUR, (1,), (Words("A", 1, 0),))]) == (
        "One sitting on one day: 1 word came into the draft, and 0 went out."
    )
    assert list_days([Sitting(HOUR, HOUR, (1,))]) == ()


def test_a_list_that_leaves_a_state_out_is_in_disorder() -> None:
    """So is one that tells it at another hour."""
    link = (1, "draft.md", HOUR.isoformat(), "written", 3, "", 0, None, "ab", "cd")
    whole = Document("Tides", HOUR.isoformat(), (Sitting(HOUR, HOUR, (1,)),), (link,))
    assert find_disorder(whole) == ()
    assert find_disorder(Document("Tides", HOUR.isoformat(), (), (link,)))
    late = Sitting(HOUR, HOUR + dt.timedelta(hours=1), (1,))
    assert find_disorder(Document("Tides", HOUR.isoformat(), (late,), (link,)))


@given(st.text(max_size=40), st.lists(st.text(max_size=20), max_size=3))
def test_whatever_it_tells_a_printed_record_reads_back(title: str, sources: list[str]) -> None:
    """Angle brackets, quotation marks and half letters too."""
    sitting = Sitting(HOUR, HOUR, (1,), (Words(title, 1, 2),), sources=tuple(sources))
    document = Document(title, HOUR.isoformat(), (sitting,), ())
    try:
        page = write_page(document)
    except UnicodeEncodeError:
        return
    assert read_document(read_page(page, "a.html"), "a.html") == (document, True)
    assert read_document(write_document(document), "a.html")[1]
