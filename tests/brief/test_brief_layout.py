"""The sheet's shape: headings, wrapped lines, lists, rows, labels."""

from __future__ import annotations

import datetime as dt

from fairhand.brief.dates import find_dates, find_times
from fairhand.brief.layout import read_sheet
from fairhand.brief.numbers import find_quantities, find_tolerance, number_value


def _shape(text: str) -> list[tuple[str, str, str]]:
    return [(p.kind, p.heading, p.text) for p in read_sheet("a.txt", text).passages]


def test_wrapped_lines_are_one_paragraph() -> None:
    """Lines that break where the next word would not have fitted belong together; short ones stand alone."""
    text = "Length\n\nThe essay should be about two thousand words and it should be\nwritten for the general reader.\n"
    assert _shape(text) == [
        ("heading", "Length", "Length"),
        (
            "prose",
            "Length",
            "The essay should be about two thousand words and it should be written for the general reader.",
        ),
    ]


def test_lists_and_rows_are_passages_of_their_own() -> None:
    """Bullets, boxes and table rows are parted; the cells of a row are kept apart by a tab."""
    text = "WHAT YOU NEED\n- a map\n- a table\n[ ] five keywords\n\nArgument ..... 40\n| Form | 60 |\n"
    assert [(kind, words) for kind, _, words in _shape(text)] == [
        ("heading", "WHAT YOU NEED"),
        ("item", "a map"),
        ("item", "a table"),
        ("item", "five keywords"),
        ("row", "Argument\t40"),
        ("row", "Form\t60"),
    ]


def test_a_label_before_a_column_governs_the_lines_under_it() -> None:
    """A label in the margin is the heading of the lines that hang beside it."""
    text = "Deadlines       Outline: Friday 30 October\n                Essay:   Friday 4 December\n"
    passages = read_sheet("a.txt", text).passages
    assert [(p.key, p.heading) for p in passages] == [("Deadlines", ""), ("Essay", "Deadlines")]


def test_questions_can_be_headings() -> None:
    """In a sheet of questions and answers each question governs its answer."""
    text = "How long should it be?\nAbout 900 words, and captions do not count in that.\n"
    assert _shape(text)[1][:2] == ("prose", "How long should it be?")


def test_numbers_in_words_and_figures_agree() -> None:
    """Words and figures have one value."""
    words = ["seven", "twenty-one", "fifteen hundred", "two thousand five hundred", "1,500", "a dozen"]
    assert [number_value(w) for w in words] == [7, 21, 1500, 2500, 1500, 12]


def test_quantities_keep_their_limits_apart() -> None:
    """Two numbers joined by "and" are no range unless "between" says so; a tolerance is read."""
    assert [(q.low, q.high) for q in find_quantities("between 5 and 7")] == [(5, 7)]
    five, two = find_quantities("five and two at most")
    assert (five.low, five.high, two.low, two.high) == (5, 5, None, 2)
    tolerance = find_tolerance("2,000 words (10% either way)", 2000)
    assert tolerance is not None
    assert tolerance[:2] == (1800, 2200)
    assert find_tolerance("10% of the grade", 2000) is None


def test_years_and_weekdays_place_a_date() -> None:
    """The year is the next that the weekday agrees with; numeric dates are read by their weekday too."""
    given = dt.date(2026, 11, 20)
    assert find_dates("Friday, January 15", given)[0].on == dt.date(2027, 1, 15)
    (numeric,) = find_dates("Fri 5/3/2027", given)
    assert (numeric.on, numeric.doubt) == (dt.date(2027, 3, 5), "")


def test_hours_are_read_in_every_form() -> None:
    """Twelve-hour, twenty-four-hour, noon, midnight, and hours in words."""
    text = "9 a.m., 5pm, 11:59 p.m., 17.00, 16:30, noon, midnight, four o'clock in the afternoon, 12 noon"
    assert [t.at for t in find_times(text)] == [
        *("09:00", "17:00", "23:59", "17:00", "16:30", "12:00", "23:59", "16:00", "12:00"),
    ]


def test_clauses_numbered_by_points_are_items() -> None:
    """Marks such as "2.1" and "iii." open clauses; the next clause of a level is not introduced by the one before."""
    text = "2.0 The report shall have these parts:\n    2.1 Theory\n    2.2 Results\n3.0 Set it in 12 point.\n"
    passages = read_sheet("a.txt", text).passages
    assert [(p.marker, p.text) for p in passages][1:] == [
        ("2.1", "Theory"),
        ("2.2", "Results"),
        ("3.0", "Set it in 12 point."),
    ]
    assert passages[1].lead
    assert not passages[3].lead


def test_capitals_throughout_are_no_headings() -> None:
    """Where the whole sheet is in capitals, its list keeps to one line each and its prose is prose."""
    text = "ESSAY TWO\nREQUIREMENTS:\n*THREE PAGES, TYPED\n*TWO SOURCES\nNO BLOGS AT ALL.\n"
    assert [kind for kind, _, _ in _shape(text)] == ["heading", "heading", "item", "item", "prose"]


def test_the_lines_of_a_form_are_no_headings() -> None:
    """A label with what it holds, among its like, is a line of a form."""
    text = (
        "Length: 900 words\nReferencing: APA 7\n"
        + "Where: the course page, as one file that anybody can open " * 2
        + "\n"
    )
    assert [kind for kind, _, _ in _shape(text)] == ["prose", "prose", "prose"]


def test_a_row_with_a_weight_is_a_row_of_a_rubric() -> None:
    """However long its cells are."""
    text = "Evidence | 20% | " + "More than ten good sources, all of them read and used | " * 3 + "Too few\n"
    assert read_sheet("a.txt", text).passages[0].weighed
