"""The three settings files, from their TOML to values."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Literal

from fairhand.desk.clock import find_zone
from fairhand.desk.toml_reading import Taking, read_toml
from fairhand.model.problem import Problem
from fairhand.model.requirement import Value
from fairhand.model.settings import Answer, CourseSettings, DeskSettings, PaperSettings

_OF_ANSWER = ("answer", "waived", "by", "when", "note")


def read_desk_settings(text: str) -> tuple[DeskSettings, list[Problem]]:
    """What ``desk.toml`` says, with a problem for each setting that is not as it should be."""
    table, problems = read_toml(text, "desk.toml")
    got = Taking(table, "desk.toml", problems)
    zone = got.take("time_zone", str, "")
    if zone and not find_zone(zone):
        got.refuse("time_zone", f"no time zone is called {zone!r}; one is Europe/London, say")
        zone = ""
    settings = DeskSettings(
        name=got.take("name", str, ""),
        time_zone=zone,
        spelling=_read_spelling(got),
        sources_per_main_point=_read_number(got, "sources_per_main_point", 2),
        sources_per_optional_point=_read_number(got, "sources_per_optional_point", 1),
        outside=got.take("outside", bool, default=False),
        other=got.other,
    )
    return settings, got.problems


def read_course_settings(text: str, course: str) -> tuple[CourseSettings, list[Problem]]:
    """What ``course.toml`` says, with a problem for each setting that is not as it should be.

    Args:
        text: The file's text.
        course: The name of the course's folder.
    """
    name = f"courses/{course}/course.toml"
    table, problems = read_toml(text, name)
    got = Taking(table, name, problems)
    settings = CourseSettings(
        folder=course,
        title=got.take("title", str, ""),
        teacher=got.take("teacher", str, ""),
        institution=got.take("institution", str, ""),
        style=got.take("style", str, ""),
        other=got.other,
    )
    return settings, got.problems


def read_paper_settings(text: str) -> tuple[PaperSettings, list[Problem]]:
    r"""What ``paper.toml`` says, with a problem for each setting that is not as it should be.

    >>> settings, problems = read_paper_settings('style = "APA 7"\n[requirements."length.paper"]\nwaived = true\n')
    >>> settings.style, settings.answers["length.paper"].waived, problems
    ('APA 7', True, [])
    """
    table, problems = read_toml(text, "paper.toml")
    got = Taking(table, "paper.toml", problems)
    settings = PaperSettings(
        title=got.take("title", str, ""),
        course=got.take("course", str, ""),
        given=_read_day(got, "given"),
        style=got.take("style", str, ""),
        assignment=got.take("assignment", str, ""),
        answers=_read_answers(got.take("requirements", dict, {}), got.problems),
        other=got.other,
    )
    return settings, got.problems


def _read_spelling(got: Taking) -> Literal["US", "GB", ""]:
    spelling = got.take("spelling", str, "").upper().removeprefix("EN-").replace("UK", "GB")
    known: dict[str, Literal["US", "GB", ""]] = {"US": "US", "GB": "GB", "": ""}
    if spelling not in known:
        got.refuse("spelling", 'it should be "US" or "GB"')
    return known.get(spelling, "")


def _read_number(got: Taking, key: str, default: int) -> int:
    number = got.take(key, int, default)
    if number >= 0:
        return number
    got.refuse(key, "it should not be below nought")
    return default


def _read_day(got: Taking, key: str) -> dt.date | None:
    value = got.take(key, object, None)
    if isinstance(value, dt.datetime):
        return value.date()
    if value is None or isinstance(value, dt.date):
        return value
    try:
        return dt.date.fromisoformat(str(value).strip())
    except ValueError:
        got.refuse(key, f"{value!r} is no date; write it as 2026-03-02")
        return None


def _read_answers(table: Mapping[str, object], problems: list[Problem], before: str = "") -> dict[str, Answer]:
    """The answers by requirement id; ``[requirements.length.paper]`` without quotation marks is read as meant."""
    answers: dict[str, Answer] = {}
    for key, value in table.items():
        name = f"{before}{key}"
        if not isinstance(value, dict):
            where = f"paper.toml, requirements, {name}"
            problems.append(Problem(where, "it is no table", f'write [requirements."{name}"] above it'))
        elif value and all(isinstance(part, dict) for part in value.values()) and "answer" not in value:
            answers |= _read_answers(value, problems, f"{name}.")
        else:
            answers[name] = _read_answer(Taking(value, f"paper.toml, {name}", problems))
    return answers


def _read_answer(got: Taking) -> Answer:
    """One answer: ``answer`` holds a table of values, or words; a value may also stand by itself."""
    answer = got.table.get("answer")
    note = got.take("note", str, "")
    waived, by = got.take("waived", bool, default=False), got.take("by", str, "")
    when = str(got.table.get("when", ""))
    given = dict(answer) if isinstance(answer, dict) else {}
    given |= {key: value for key, value in got.other.items() if key not in _OF_ANSWER}
    values = {key: read_value(value) for key, value in given.items()}
    if answer is not None and not isinstance(answer, dict):
        words = read_value(answer)
        note = note or (", ".join(words) if isinstance(words, tuple) else str(words))
    return Answer(values=values, waived=waived, by=by, when=when, note=note)


def read_value(value: object) -> Value:
    """A TOML value as a requirement's value: dates and times in ISO form, a list as its words.

    >>> read_value(dt.date(2026, 3, 2)), read_value(["b", "a"]), read_value(5)
    ('2026-03-02', ('b', 'a'), 5)
    """
    if value is None or isinstance(value, str | int | float | bool):
        return value
    if isinstance(value, list):
        return tuple(str(part) for part in value)
    if isinstance(value, dt.datetime | dt.date | dt.time):
        return value.isoformat()
    return str(value)
