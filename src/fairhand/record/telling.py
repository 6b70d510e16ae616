"""A sitting in words, and what the record shows and does not show."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from fairhand.language.counts import count_of, open_with
from fairhand.record.sittings import Sitting

SHOWS = (
    "This list is made from the states that were saved while the paper was written. Each state is bound to all before "
    "it by its hash, so that none can be changed, left out or put in between without the hashes after it changing too."
)
SHOWS_NOT = (
    "It does not show who wrote, what was thought, or what was done away from these files; the hours are those of the "
    "machine's clock; a file that another program changed is told as it was found at the next opening; and whoever "
    "holds the record could have made it anew from the beginning. It remembers for its writer, and certifies nothing."
)
ABOVE = "Above the line, words that came into the draft; below, words that went out."
"""Stands under the picture."""
KEPT_SHORT = 12
"""Letters of a hash that are shown in running text."""


def say_when(sitting: Sitting) -> str:
    """From when to when.

    >>> hour = dt.datetime(2027, 2, 8, 18, 5, tzinfo=dt.UTC)
    >>> say_when(Sitting(hour, hour + dt.timedelta(minutes=40), (1,)))
    '18:05–18:45'
    """
    start, end = f"{sitting.start:%H:%M}", f"{sitting.end:%H:%M}"
    return start if start == end else f"{start}–{end}"


def say_states(sitting: Sitting) -> str:
    """The numbers of its states.

    >>> hour = dt.datetime(2027, 2, 8, 18, tzinfo=dt.UTC)
    >>> say_states(Sitting(hour, hour, (4,))), say_states(Sitting(hour, hour, (4, 5, 6)))
    ('state 4', 'states 4–6')
    """
    first, last = sitting.states[0], sitting.states[-1]
    return f"state {first}" if first == last else f"states {first}–{last}"


def say_day(day: dt.date) -> str:
    """A day with its weekday and year.

    >>> say_day(dt.date(2027, 2, 8))
    'Monday 8 February 2027'
    """
    return f"{day:%A} {day.day} {day:%B %Y}"


def say_moment(made: str) -> str:
    """A moment as one says it.

    >>> say_moment("2027-02-19T15:20:00+01:00")
    'Friday 19 February 2027 at 15:20'
    """
    try:
        moment = dt.datetime.fromisoformat(made)
    except ValueError:
        return made
    return f"{say_day(moment.date())} at {moment:%H:%M}"


def say_sitting(sitting: Sitting) -> tuple[str, ...]:
    """What was done, a sentence for each kind of thing.

    >>> from fairhand.record.sittings import Words
    >>> hour = dt.datetime(2027, 2, 8, 18, tzinfo=dt.UTC)
    >>> say_sitting(Sitting(hour, hour, (1,), (Words("Why", 40, 3),), notes=2, outside=("draft.md",)))
    ('Draft: 40 words in, 3 out (Why).', '2 notes added.', 'Written with another program: draft.md.')
    """
    out = []
    if sitting.draft:
        whole = _in_and_out(sitting.came, sitting.went)
        if len(sitting.draft) == 1:
            out.append(f"Draft: {whole} ({sitting.draft[0].part}).")
        else:
            parts = "; ".join(f"{one.part}, {_in_and_out(one.came, one.went)}" for one in sitting.draft)
            out.append(f"Draft: {whole}: {parts}.")
    out += [f"{one.part[0].upper()}{one.part[1:]}: {_in_and_out(one.came, one.went)}." for one in sitting.beside]
    if sitting.sources:
        out.append(f"{count_of(len(sitting.sources), 'source')} added: {'; '.join(sitting.sources)}.")
    if sitting.notes:
        out.append(f"{count_of(sitting.notes, 'note')} added.")
    if sitting.points:
        out.append(f"{count_of(sitting.points, 'point')} added.")
    if sitting.readers:
        out.append(f"Readers: {'; '.join(sitting.readers)}.")
    if sitting.others:
        out.append(f"Also written: {', '.join(sitting.others)}.")
    if sitting.outside:
        out.append(f"Written with another program: {', '.join(sitting.outside)}.")
    return tuple(out) or ("Nothing that counts in words.",)


def _in_and_out(came: int, went: int) -> str:
    if not came:
        return f"{count_of(went, 'word')} out" if went else "no word changed"
    return count_of(came, "word") + " in" + (f", {went:,} out" if went else "")


def sum_up(sittings: Sequence[Sitting]) -> str:
    """The whole in a sentence or two.

    >>> sum_up(())
    'Nothing was saved yet.'
    """
    if not sittings:
        return "Nothing was saved yet."
    first, last = sittings[0].start, sittings[-1].end
    days = len({one.start.date() for one in sittings})
    came, went = sum(one.came for one in sittings), sum(one.went for one in sittings)
    told = f"{open_with(len(sittings), 'sitting')} on {open_with(days, 'day').lower()}"
    span = f", from {say_day(first.date())} to {say_day(last.date())}" if first.date() != last.date() else ""
    return f"{told}{span}: {count_of(came, 'word')} came into the draft, and {went:,} went out."
