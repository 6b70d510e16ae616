"""The writer's hours: when there is time for the papers; kept in ``desk.toml``."""

from __future__ import annotations

from collections.abc import Mapping

from starlette.responses import Response

from fairhand.desk.answers import set_table
from fairhand.errors import FairhandError
from fairhand.planning.hours import ASSUMED_WORDS, Hours
from fairhand.planning.hours_written import WEEKDAYS, read_days, read_hours, read_stretches, write_stretches
from fairhand.session.schedule.overview import read_desk
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

MOST_MINUTES = 1440


def show(
    asked: Asked, *, faults: tuple[str, ...] = (), typed: Mapping[str, str] | None = None, status: int = 200
) -> Response:
    """A line for each weekday, the days off, and how long a sitting may be."""
    hours, problems = read_hours(read_desk(asked.papers.desk).other.get("hours"))
    return asked.page(
        "hours_page.html",
        status=status,
        title="Your hours",
        step="Write down when you can sit down to your papers, as 17:00–20:00 or 9–12, 14–16; an empty line is a day"
        " without.",
        faults=faults,
        problems=problems,
        assumed="" if hours.stated else ASSUMED_WORDS,
        weekdays=WEEKDAYS,
        written=typed or _written(hours),
    )


def save(asked: Asked) -> Response:
    """The hours kept; where a line cannot be read, the page again with what was typed."""
    typed = {name: asked.form.text(name) for name in (*WEEKDAYS, "off", "longest", "pause")}
    values, faults = _read(typed)
    if faults:
        return show(asked, faults=faults, typed=typed, status=422)
    try:
        set_table(asked.papers.desk, "desk.toml", "hours", values)
    except FairhandError as error:
        return show(asked, faults=(str(error),), typed=typed, status=page_of(error)[0])
    return asked.go("/plan")


def _written(hours: Hours) -> dict[str, str]:
    """The hours as the form shows them."""
    days = {day: write_stretches(stretches) for day, stretches in zip(WEEKDAYS, hours.week, strict=True)}
    off = "\n".join(f"{first}" if first == last else f"{first} – {last}" for first, last in hours.off)
    return {**days, "off": off, "longest": f"{hours.longest_minutes}", "pause": f"{hours.pause_minutes}"}


def _read(typed: Mapping[str, str]) -> tuple[dict[str, object], tuple[str, ...]]:
    """What was typed as settings, and a sentence for each line that cannot be read."""
    faults: list[str] = []
    values: dict[str, object] = {"from": None, "until": None}  # each day has its own hours now
    for day in WEEKDAYS:
        stretches = read_stretches(typed[day])
        if stretches is None:
            faults.append(f"{day.title()}: “{typed[day]}” tells no hours; write them as 17:00–20:00.")
        values[day] = write_stretches(stretches or ())
    off = [line.strip() for line in typed["off"].splitlines() if line.strip()]
    faults += [f"Days off: “{line}” is no day; write it as 2027-02-14." for line in off if read_days(line) is None]
    values["off"] = off
    for name, what in (("longest", "The longest sitting"), ("pause", "The pause")):
        number = read_number(typed[name], None)
        if number is not None and number <= MOST_MINUTES:
            values[name] = number
        else:
            faults.append(f"{what}: “{typed[name]}” is no number of minutes up to {MOST_MINUTES}.")
    return values, tuple(faults)


ROUTES = (get("/plan/hours", show), post("/plan/hours", save))
