"""The saved states of a paper's files as sittings: what came in and went out in each, section by section."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.known import know
from fairhand.citing.reasons import describe
from fairhand.language.words import words
from fairhand.manuscript.draft import read_manuscript
from fairhand.planning.points import read_points
from fairhand.readers.register import read_register
from fairhand.reading.notes_file import read_notes

APART = dt.timedelta(minutes=30)
"""States further apart than this belong to two sittings. **Source**: common practice."""
OPENING = "the opening"
"""What a draft's title, and its words before the first heading under it, are called."""
PROSE: Mapping[str, str] = {"jottings.md": "jottings", "rough.md": "the rough draft"}
"""Files of prose beside the draft, and what they are called."""


@dataclass(frozen=True, slots=True)
class Kept:
    """One saved state, as far as the list of sittings needs it."""

    seq: int
    name: str
    at: dt.datetime
    how: str


@dataclass(frozen=True, slots=True)
class Words:
    """How many words came into a part of the draft, and how many went out of it."""

    part: str
    came: int
    went: int


@dataclass(frozen=True, slots=True)
class Sitting:
    """States that follow one another closely, and what was done in them."""

    start: dt.datetime
    end: dt.datetime
    states: tuple[int, ...]
    """Their numbers."""
    draft: tuple[Words, ...] = ()
    """By section of the draft."""
    beside: tuple[Words, ...] = ()
    """Of jottings and rough draft."""
    sources: tuple[str, ...] = ()
    """Sources that were put on the list."""
    notes: int = 0
    """Notes that were added."""
    points: int = 0
    """Points that were added."""
    readers: tuple[str, ...] = ()
    """What is said of readers: to whom it was sent, from whom it came back."""
    outside: tuple[str, ...] = ()
    """Files that another program changed."""
    others: tuple[str, ...] = ()
    """Files that were changed besides: settings, marks."""

    @property
    def came(self) -> int:
        """Words that came into the draft."""
        return sum(one.came for one in self.draft)

    @property
    def went(self) -> int:
        """Words that went out of it."""
        return sum(one.went for one in self.draft)


def part_sittings(states: Sequence[Kept]) -> list[list[Kept]]:
    """The states, those that follow one another closely together.

    >>> hour = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
    >>> times = [hour, hour + dt.timedelta(minutes=20), hour + dt.timedelta(hours=2)]
    >>> [len(these) for these in part_sittings([Kept(n, "draft.md", at, "written") for n, at in enumerate(times, 1)])]
    [2, 1]
    """
    found: list[list[Kept]] = []
    for state in states:
        if not found or abs(state.at - found[-1][-1].at) > APART:
            found.append([])
        found[-1].append(state)
    return found


def list_sittings(states: Sequence[Kept], text_of: Callable[[int], str | None]) -> tuple[Sitting, ...]:
    """What was done in each sitting, oldest first.

    Each file is held, as it stood at the end of the sitting, against how it stood before it; what was written and
    struck out again within one sitting is in neither count.

    Args:
        states: Oldest first.
        text_of: The text of a state by its number; None where it is damaged, or no text.
    """
    stood: dict[str, str] = {}
    found = []
    for these in part_sittings(states):
        before = dict(stood)
        for name in dict.fromkeys(one.name for one in these):
            texts = (text_of(one.seq) for one in reversed(these) if one.name == name)
            text = next((one for one in texts if one is not None), None)
            if text is not None:
                stood[name] = text
        changed = {name: (before.get(name, ""), stood[name]) for name in stood if stood[name] != before.get(name)}
        found.append(_tell(these, changed))
    return tuple(found)


def _tell(these: Sequence[Kept], changed: Mapping[str, tuple[str, str]]) -> Sitting:
    sources = _new(changed.get("sources.json"), _name_sources)
    notes = _new(changed.get("notes.jsonl"), lambda text: {one.id: "" for one in read_notes(text)[0]})
    points = _new(changed.get("points.json"), lambda text: {one.id: "" for one in read_points(text)[0].points})
    readers = _new(changed.get("readers.toml"), _name_readers)
    told = {"draft.md", "sources.json", "notes.jsonl", "points.json", "readers.toml", *PROSE}
    return Sitting(
        start=these[0].at,
        end=these[-1].at,
        states=tuple(one.seq for one in these),
        draft=tuple(compare_sections(*changed["draft.md"])) if "draft.md" in changed else (),
        beside=tuple(
            Words(called, *_differ(_count(changed[name][0]), _count(changed[name][1])))
            for name, called in PROSE.items()
            if name in changed
        ),
        sources=tuple(sources),
        notes=len(notes),
        points=len(points),
        readers=tuple(readers),
        outside=tuple(dict.fromkeys(one.name for one in these if one.how == "changed outside")),
        others=tuple(name for name in changed if name not in told),
    )


def compare_sections(then: str, now: str) -> Iterator[Words]:
    r"""The words that came into each section of a draft and went out of it; a section without any is left out.

    A word that only moved within its section is in neither count; one that moved to another is in both.

    >>> before = "# Tides\n\nIt ebbs.\n\n## Why\n\nThe moon."
    >>> list(compare_sections(before, before.replace("moon", "moon pulls")))
    [Words(part='Why', came=1, went=0)]
    """
    old, new = _by_section(then), _by_section(now)
    for part in dict.fromkeys((*new, *old)):
        came, went = _differ(old.get(part, Counter()), new.get(part, Counter()))
        if came or went:
            yield Words(part, came, went)


def _by_section(text: str) -> dict[str, Counter[str]]:
    """The words of each section, those of its sub-sections not among them."""
    manuscript = read_manuscript(text)
    found: dict[str, Counter[str]] = {}
    starts = [(0, OPENING)]
    for section in manuscript.sections:
        if section.heading is not None:
            title = section.title.strip() or OPENING
            named = title
            for number in range(2, 1000):
                if all(named != known for _, known in starts):
                    break
                named = f"{title} ({number})"
            starts.append((section.span.start, named))
    starts.sort()
    for (start, name), (end, _) in pairwise([*starts, (len(text), "")]):
        counted = _count(text[start:end])
        if counted or name != OPENING:
            found[name] = found.get(name, Counter()) + counted
    return found


def _count(text: str) -> Counter[str]:
    return Counter(word.key for word in words(text))


def _differ(then: Counter[str], now: Counter[str]) -> tuple[int, int]:
    return (now - then).total(), (then - now).total()


def _new(changed: tuple[str, str] | None, read: Callable[[str], Mapping[str, str]]) -> list[str]:
    """What the later text has by its ids that the earlier had not; nothing where one of them cannot be read."""
    if changed is None:
        return []
    try:
        before, after = read(changed[0]), read(changed[1])
    except (ValueError, TypeError, KeyError, AttributeError):  # an early state may be anything
        return []
    return [name for key, name in after.items() if key not in before]


def _name_sources(text: str) -> Mapping[str, str]:
    entries = tuple(read_csl_json(text)[0]) if text.strip() else ()
    return {work.entry.id: describe(work) for work in know(entries).works}


def _name_readers(text: str) -> Mapping[str, str]:
    """What was done with each reader, so that each thing is told in the sitting in which it was first said."""
    told: dict[str, str] = {}
    for one in read_register(text)[0]:
        if one.sent:
            told[f"{one.key} {one.draft} sent"] = f"sent to {one.name}"
        if one.back:
            told[f"{one.key} {one.draft} back"] = f"back from {one.name}"
    return told
