"""desk.toml, course.toml and paper.toml."""

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from fairhand.desk.settings import read_course_settings, read_desk_settings, read_paper_settings
from fairhand.model.settings import Answer


def test_a_desk_is_read() -> None:
    """What the writer sets for all papers is read; what later parts need is kept as it stands."""
    desk, problems = read_desk_settings('name = "Ida Vance"\ntime_zone = "Europe/Oslo"\nspelling = "gb"\nhours = 3\n')
    assert (desk.name, desk.time_zone, desk.spelling, dict(desk.other)) == (
        "Ida Vance",
        "Europe/Oslo",
        "GB",
        {"hours": 3},
    )
    assert problems == []


def test_faults_are_named_with_their_line_and_the_rest_is_read() -> None:
    """A faulty line costs that line alone."""
    desk, problems = read_desk_settings(
        'name = "Ida"\ntime_zone = Europe/Oslo\nspelling = "US"\nsources_per_main_point = =\n'
    )
    assert (desk.name, desk.spelling, desk.time_zone) == ("Ida", "US", "")
    assert [problem.where.split(", column")[0] for problem in problems] == ["desk.toml, line 2", "desk.toml, line 4"]


def test_wrong_kinds_are_named() -> None:
    """A value of the wrong kind is a problem, and the default holds."""
    desk, problems = read_desk_settings(
        'name = 5\nspelling = "FR"\nsources_per_main_point = true\ntime_zone = "Mars/Base"\n'
    )
    assert (desk.name, desk.spelling, desk.sources_per_main_point, desk.time_zone) == ("", "", 2, "")
    assert {problem.where for problem in problems} == {
        f"desk.toml, {key}" for key in ("name", "spelling", "sources_per_main_point", "time_zone")
    }


def test_a_course_is_read() -> None:
    """A course keeps its folder's name, and a late rule for whoever reads it."""
    course, problems = read_course_settings(
        'title = "History 210"\nteacher = "Dr Sand"\n[late]\nrate = 5\n', "hist-210"
    )
    assert (course.folder, course.title, course.teacher) == ("hist-210", "History 210", "Dr Sand")
    assert (course.other, problems) == ({"late": {"rate": 5}}, [])


def test_answers_are_read() -> None:
    """An answer is a table of values, words, or a waiver with who said so and when."""
    settings, problems = read_paper_settings(
        """
given = 2026-02-03
[requirements."length.paper"]
answer = {low = 5, high = 7, unit = "pages"}
by = "Dr Sand"
when = 2026-02-10
[requirements.style]
answer = "Chicago, notes"
[requirements."sources.any"]
waived = true
note = "said in class"
[requirements.element.thesis]
places = ["end", "start"]
"""
    )
    assert problems == []
    assert settings.given == dt.date(2026, 2, 3)
    assert settings.answers == {
        "length.paper": Answer({"low": 5, "high": 7, "unit": "pages"}, by="Dr Sand", when="2026-02-10"),
        "style": Answer(note="Chicago, notes"),
        "sources.any": Answer(waived=True, note="said in class"),
        "element.thesis": Answer({"places": ("end", "start")}),
    }


def test_a_day_is_read_in_each_form_that_toml_has() -> None:
    """The day the sheet was given may be a TOML date, a moment, or text; anything else is a problem."""
    for line in ("2026-02-03", "2026-02-03T10:00:00", '"2026-02-03"'):
        assert read_paper_settings(f"given = {line}")[0].given == dt.date(2026, 2, 3)
    settings, problems = read_paper_settings('given = "next Tuesday"')
    assert settings.given is None
    assert "is no date" in problems[0].what


@given(st.text(max_size=300))
def test_any_text_is_read(text: str) -> None:
    """No text crashes the reading of settings, and every fault has a place."""
    for read in (read_desk_settings, read_paper_settings):
        _, problems = read(text)
        assert all(problem.where and problem.what and problem.mend for problem in problems)


def test_deep_nesting_is_told() -> None:
    """Values nested beyond all sense are told, and do not crash."""
    _, problems = read_paper_settings("a = " + "[" * 100_000 + "]" * 100_000)
    assert len(problems) == 1
