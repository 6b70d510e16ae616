"""From a paper's files to the paper itself; each fault is a problem, and the rest is read."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from urllib.parse import unquote

from fairhand.brief.described_style import describe_style
from fairhand.brief.layout import read_sheet as lay_out
from fairhand.brief.style import find_style as find_named_styles
from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.styles import find_style, style_for
from fairhand.copyedit.words.own_words import read_words
from fairhand.desk.paper_files import PICTURE_SUFFIXES, PaperFiles
from fairhand.desk.seen import FileSeen, tell_problem
from fairhand.errors import InputError, StyleUnknown
from fairhand.evidence.rulings import read_rulings
from fairhand.model.entry import Entry
from fairhand.model.focus import Focus
from fairhand.model.paper import DEFAULT_STYLE, Paper
from fairhand.model.point import Points
from fairhand.model.problem import Problem
from fairhand.model.requirement import Brief, Requirement
from fairhand.model.settings import CourseSettings
from fairhand.planning.points import read_points
from fairhand.proof.marks_file import read_marks
from fairhand.session.own_papers import load_own_papers
from fairhand.session.research.focus import read_focus_text
from fairhand.session.texts import SourceTexts, read_sheet


@dataclass(frozen=True)
class ChosenStyle:
    """The style that the paper is set in."""

    name: str
    csl: bytes | None = None
    """A CSL file's bytes, where the style is the writer's own."""
    why: str = ""
    """Who chose it."""
    named: bool = True
    """Whether anybody did."""
    problems: tuple[Problem, ...] = ()
    """What stands against a style named before it."""


def load_to_cite(files: PaperFiles, texts: SourceTexts, now: dt.datetime | None = None) -> Paper:
    """The paper that the files make, of its sheets only the words and the style that they name.

    That is as much as its citations need: they can be rendered while the rest of the brief is read.

    Args:
        files: The folder as it was read.
        texts: The sources' texts, read when they are asked for.
        now: The present hour; None where deadlines are not judged.
    """
    problems = list(files.problems)
    sheets = []
    for sheet in files.sheets:
        try:
            text, faults = read_sheet(sheet, files.folder)
        except InputError as error:
            problems.append(tell_problem(error))
            continue
        problems += faults
        sheets.append((sheet.name, text))
    entries = load_entries(files, problems)
    draft = files.files.get("draft.md")
    points = files.files.get("points.json")
    read, faults = read_points(points.text) if points else (Points(), ())
    problems += faults
    focus = files.files.get("focus.toml")
    about, told = read_focus_text(focus.text) if focus else (Focus(), ())
    problems += told
    marks = files.files.get("marks.jsonl")
    stets, faults = read_marks(marks.text) if marks else ((), ())
    problems += faults
    support = files.files.get("support.toml")
    rulings, faults = read_rulings(support.text) if support else ((), ())
    problems += faults
    texts.entries = {entry.id: entry for entry in entries}
    pictures = load_pictures(files, problems)
    brief = Brief(texts=dict(sheets))
    named = [r for name, text in reversed(sheets) for r in find_named_styles(lay_out(name, text))]
    style = choose_style(files, brief, named)
    return Paper(
        name=files.folder.name,
        draft=draft.text if draft else "",
        entries=entries,
        texts=texts,
        points=read,
        focus=about,
        brief=brief,
        answers=files.settings.answers,
        settings=files.settings,
        course=files.course or CourseSettings(),
        desk=files.desk,
        pictures=pictures,
        stets=stets,
        words=read_words(own.text) if (own := files.files.get("words.txt")) else (),
        own_papers=load_own_papers(files.folder),
        rulings=rulings,
        style=style.name,
        style_csl=style.csl,
        style_why=style.why,
        style_named=style.named,
        problems=tuple(problems),
        now=now,
    )


def load_brief(paper: Paper, files: PaperFiles) -> Paper:
    """The whole paper: what `load_to_cite` gave, with everything that its sheets ask."""
    from fairhand.brief.read import apply_answers, given_day, read_brief  # all the kinds, while pandoc is at work

    sheets = list(paper.brief.texts.items())
    given = files.settings.given or given_day(sheets)
    brief = read_brief(sheets, given, files.settings.assignment) if sheets else Brief()
    requirements = apply_answers(brief, files.settings.answers)
    style = choose_style(files, brief, requirements)
    return replace(
        paper,
        brief=brief,
        requirements=requirements,
        style=style.name,
        style_csl=style.csl,
        style_why=style.why,
        style_named=style.named,
        problems=tuple(dict.fromkeys((*paper.problems, *style.problems))),
    )


def load_pictures(files: PaperFiles, problems: list[Problem]) -> dict[str, bytes]:
    """The pictures in the folder that the draft names, by the path it gives."""
    draft = files.files.get("draft.md")
    pictures = {}
    for name, seen in files.files.items():
        if draft and seen.path.suffix.lower() in PICTURE_SUFFIXES and name in unquote(draft.text):
            try:
                pictures[name] = seen.data
            except InputError as error:
                problems.append(tell_problem(error))
    return pictures


def load_entries(files: PaperFiles, problems: list[Problem]) -> tuple[Entry, ...]:
    """The paper's own list of sources, then those of its course that it does not list itself."""
    entries: dict[str, Entry] = {}
    for name in sorted((n for n in files.files if n.rpartition("/")[2] == "sources.json"), key=lambda n: n.count("/")):
        found, faults = read_csl_json(files.files[name].text, name)
        problems += faults
        for entry in found:
            entries.setdefault(entry.id, entry)
    return tuple(entries.values())


def _described(brief: Brief) -> list[tuple[str, str]]:
    """The style that a sheet describes without naming one, with the words that do."""
    for name, text in brief.texts.items():
        found = describe_style(text)
        if found:
            style, place = found
            words = " ".join(place.of(text).split())
            return [(style_for({"style": style}), f"no style is named, and “{words}” ({name}) is nearest to it: ask")]
    return []


def choose_style(files: PaperFiles, brief: Brief, requirements: Sequence[Requirement]) -> ChosenStyle:
    """The style of the paper: the writer's word, then the sheet's, then the course's; else the default, said."""
    asked = next((r for r in requirements if r.kind == "style" and r.values.get("style") != "any-consistent"), None)
    ways: list[tuple[str, str]] = [(files.settings.style, "paper.toml names it")]
    if asked is not None:
        ways.append((style_for(asked.values), f"the sheet asks for it: “{' '.join(asked.evidence.split())}”"))
    ways.append((files.course.style if files.course else "", "the course asks for it"))
    ways += _described(brief)
    problems: tuple[Problem, ...] = ()
    for name, why in ways:
        if not name:
            continue
        try:
            return replace(_find(name, why, files.files), problems=problems)
        except StyleUnknown as error:
            problems += (Problem("style", str(error), "until then the nearest style that is known is used"),)
    return ChosenStyle(
        DEFAULT_STYLE, why="nobody has named a style yet; name one in paper.toml", named=False, problems=problems
    )


def _find(name: str, why: str, files: Mapping[str, FileSeen]) -> ChosenStyle:
    """The style of that name, shipped or a CSL file in the paper's folder."""
    if name.endswith(".csl"):
        seen = files.get(name)
        if seen is None:
            message = f"{name}: no such file stands in the paper's folder"
            raise StyleUnknown(message)
        find_style(name, seen.data)
        return ChosenStyle(name, seen.data, why)
    return ChosenStyle(find_style(name).name, None, why)
