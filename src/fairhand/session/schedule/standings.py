"""How a paper stands for the plan, read from its folder, and kept until a file of the paper changes."""

from __future__ import annotations

import datetime as dt
import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

from fairhand.brief.late_rule import late_rule_of
from fairhand.citing.csl_json import read_csl_json
from fairhand.desk.cache import fingerprint, keep_cached, read_cached
from fairhand.desk.paper_files import PaperFiles, read_paper
from fairhand.language.words import words
from fairhand.model.requirement import Requirement, Value
from fairhand.planning.pace import WHERE, Logged, read_log
from fairhand.planning.standing import Milestone, Standing, Unread, Wishes, read_wishes
from fairhand.readers.register import WHERE as READERS
from fairhand.readers.register import read_register
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.deadlines import due_hour
from fairhand.readiness.naming import name_entry
from fairhand.readiness.verdicts.length import allowed_range
from fairhand.reading.labels import labels_in
from fairhand.reading.notes_file import read_notes
from fairhand.session.kept import kept_verdict, program_state
from fairhand.session.loading import load_brief, load_to_cite
from fairhand.session.research.focus import look_at_focus
from fairhand.session.texts import SourceTexts

NEAR_THE_MOST = 0.9
"""Where a sheet names only the most, so much of it is aimed at. **Source**: common practice."""
WORDS_PER_PAGE, SINGLE_SPACED = 250, 500
"""**Source**: college library guides: about 250 words a double-spaced page, 500 single-spaced."""


def read_standing(folder: Path, now: dt.datetime, *, only_kept: bool = False) -> Standing | None:
    """How the paper in a folder stands.

    Args:
        folder: The paper's folder.
        now: The present hour, in the desk's zone.
        only_kept: Whether to answer at once, with None where it would have to be worked out.

    Raises:
        FairhandError: There is no paper there, or its sheet cannot be read.
    """
    key = f"standing {program_state()} {fingerprint(folder)}"
    kept = read_cached(folder, key)
    if kept is None and only_kept:
        return None
    known: dict[str, Any] = json.loads(kept) if kept is not None else _work_out(folder, now)
    if kept is None:
        keep_cached(folder, key, json.dumps(known, default=str).encode())
        known = json.loads(json.dumps(known, default=str))
    standing = _thaw(known, now)
    told = kept_verdict(folder, at=now)
    if told is None:
        return standing
    found = [finding["pass"] for finding in told["findings"] if finding["weight"] != "query"]
    return replace(standing, findings={in_pass: found.count(in_pass) for in_pass in sorted(set(found))})


def _work_out(folder: Path, now: dt.datetime) -> dict[str, Any]:
    """The same as plain values; hours in them are the requirements', and no present hour is in them."""
    files = read_paper(folder)
    paper = load_to_cite(files, SourceTexts(files), now)
    known = Analysis(load_brief(paper, files), lambda _: None)
    asked = [one for one in known.paper.requirements if not known.is_waived(one)]
    wishes, _ = read_wishes(files.settings.other.get("plan"), files.desk.other.get("plan"))
    log, _ = read_log(_text(files, WHERE))
    focus, _ = look_at_focus(folder)
    read = _read_already(known, files)
    short = [want - have for want, have in _support_of(known) if have < want]
    listed = {entry.id for entry in read_csl_json(_text(files, "sources.json"))[0]}
    own = [one for one in known.paper.entries if one.id in read | listed]
    dues = [one for one in asked if one.kind == "due"]
    standing = Standing(
        paper=folder.name,
        title=known.title,
        has_sheet=bool(known.paper.brief.texts),
        asks_for_sources=known.asks_for_sources,
        sources_asked=max((_whole(one.values.get("min")) for one in asked if one.kind == "sources"), default=0),
        sources_there=len(own),
        points=len(known.paper.points.points),
        thin_points=len(short),
        sources_for_points=max(short, default=0),
        unread=tuple(_unread(known, entry.id) for entry in own if entry.id not in read)
        if known.asks_for_sources
        else (),
        has_jottings=bool(_text(files, "jottings.md").strip()),
        has_focus=bool(known.paper.points.thesis or known.paper.points.points or focus.focus),
        words_asked=_words_asked(asked, "paper"),
        words_written=known.words.counted if known.paper.draft.strip() else 0,
        hand_in=next((str(one.values.get("by")) for one in asked if one.kind == "submit"), ""),
        no_readers=any(
            one.kind == "policy" and one.values.get("what") == "collaboration" and one.values.get("rule") == "forbidden"
            for one in asked
        ),
        wishes=wishes,
        log=log,
        readers_until=tuple(
            one.back or one.due or one.sent + dt.timedelta(days=wishes.reader_days)
            for one in read_register(_text(files, READERS))[0]
            if one.sent
        ),
    )
    answered = {name for name, answer in known.paper.answers.items() if not answer.values}
    return asdict(standing) | {
        "due": next((dict(one.values) for one in dues if one.id == "due.final"), None),
        "late": next((dict(one.values) for one in asked if one.kind == "late"), None),
        "milestones": [
            {"values": dict(one.values), "words": _words_asked(asked, str(one.values.get("what")))}
            for one in dues
            if one.values.get("what") != "final" and one.id not in answered
        ],
    }


def _thaw(known: Mapping[str, Any], now: dt.datetime) -> Standing:
    """A standing from plain values, its hours in the desk's zone; a piece whose hour has passed is left out."""
    due, late = known["due"], known["late"]
    pieces = []
    for one in known["milestones"]:
        hour = due_hour(one["values"], now.tzinfo)
        if hour is not None and hour > now:
            pieces.append(Milestone(str(one["values"]["what"]), hour, one["words"]))
    wishes = known["wishes"]
    days = {step: dt.date.fromisoformat(day) for step, day in wishes["not_before"].items()}
    plain = {name: value for name, value in known.items() if name not in {"due", "late", "milestones"}}
    return Standing(
        **plain
        | {
            "unread": tuple(Unread(**one) for one in known["unread"]),
            "log": tuple(Logged(**one) for one in known["log"]),
            "wishes": Wishes(**wishes | {"not_before": days}),
            "readers_until": tuple(dt.date.fromisoformat(day) for day in known["readers_until"]),
            "due": due_hour(due, now.tzinfo) if due else None,
            "late": late_rule_of({name: _value(value) for name, value in late.items()}) if late else None,
            "milestones": tuple(pieces),
        }
    )


def _value(value: Any) -> Value:
    """A requirement's value as it was before it was kept."""
    return tuple(value) if isinstance(value, list) else value


def _text(files: PaperFiles, name: str) -> str:
    seen = files.files.get(name)
    return seen.text if seen else ""


def _whole(value: object) -> int:
    return math.ceil(value) if isinstance(value, int | float) and not isinstance(value, bool) else 0


def _read_already(known: Analysis, files: PaperFiles) -> set[str]:
    """The sources that the draft cites, that a note is from, or that carry a point: they were read."""
    notes, _ = read_notes(_text(files, "notes.jsonl"))
    carrying = {one.source for point in known.paper.points.points for one in point.support}
    return {*known.cited, *(note.source for note in notes), *carrying} & set(known.entries)


def _support_of(known: Analysis) -> list[tuple[int, int]]:
    """How many sources each point is to have, and how many are named for it."""
    desk = known.paper.desk
    wanted = {"main": desk.sources_per_main_point, "optional": desk.sources_per_optional_point}
    return [(wanted[one.weight], len({each.source for each in one.support})) for one in known.paper.points.points]


def _unread(known: Analysis, entry_id: str) -> Unread:
    """A source with the length of its text, or the pages that its record names."""
    entry, text = known.entries[entry_id], known.paper.texts.get(entry_id)
    length = sum(len(words(page.text)) for page in text.pages) if text else 0
    return Unread(entry_id, name_entry(entry), length, len(labels_in(entry.page)))


def _words_asked(asked: Sequence[Requirement], part: str) -> int:
    """The fewest words that the sheet allows for a part; 0 where it does not say."""
    rules = [one for one in asked if one.kind == "length" and one.values.get("part") == part]
    for rule in sorted(rules, key=lambda one: one.values.get("unit") != "words"):
        low, high = allowed_range(rule)
        least = low if low is not None else high * NEAR_THE_MOST if high is not None else 0.0
        rate = 1
        if rule.values.get("unit") == "pages":
            single = any(one.kind == "format" and one.values.get("value") == "single" for one in asked)
            rate = _whole(rule.values.get("words_per_page")) or (SINGLE_SPACED if single else WORDS_PER_PAGE)
        if least:
            return round(least * rate)
    return 0
