"""The reverse outline as the terminal and the page both show it, with what the writer corrected and answered."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import count_of, open_with
from fairhand.model.finding import Finding, Pass
from fairhand.model.problem import Problem
from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.asking import NAMES, Asking, ask_of_argument
from fairhand.readiness.naming import name_pages
from fairhand.revision.body import BodyParagraph
from fairhand.revision.outline import Outlined, TieBefore
from fairhand.revision.outline_file import (
    WHERE,
    Answer,
    Correction,
    place_corrections,
    put_answer,
    put_correction,
    read_outline,
)
from fairhand.session.editing import read_text, save_text

ARGUMENT: Pass = "revision"
"""The pass whose findings are of the argument."""
LONGEST = 160
"""Characters of a key sentence that are shown; the whole stands in the draft."""
_ROLES = {"opening": "opens the paper", "closing": "closes the paper", "body": "serves no point that could be told"}


@dataclass(frozen=True, slots=True)
class SideNote:
    """One paragraph of the outline, as it is shown beside it."""

    number: int
    """From 1."""
    line: int
    """The line of the draft that it begins on."""
    outlined: Outlined
    paragraph: str
    """Its words as they stand in the draft, by which it is known again."""
    says: str
    """Its key sentence, or what the writer says of it."""
    words: int
    cites: tuple[str, ...]
    """What it cites, each with its pages."""
    tie: str
    """What ties it to the one before, in a sentence."""
    does: str
    """What it does, in a sentence: what it serves, or that it opens or closes the paper."""
    correction: Correction
    """What the writer said of it."""

    @property
    def said(self) -> frozenset[str]:
        """The names of the fields that the writer corrected."""
        return frozenset(
            name for name in ("says", "point", "question", "focus", "tie") if getattr(self.correction, name) is not None
        )


@dataclass(frozen=True, slots=True)
class Outline:
    """The outline of a draft."""

    notes: tuple[SideNote, ...] = ()
    askings: tuple[tuple[Asking, str], ...] = ()
    """Each question with the writer's answer, which may be empty."""
    lost: tuple[Correction, ...] = ()
    """Corrections of paragraphs that have gone; they stay in the file."""
    problems: tuple[Problem, ...] = ()


def read_outline_of(known: Analysis, folder: Path) -> Outline:
    """The outline of a draft as it stands, with the writer's corrections over it.

    Args:
        known: The paper.
        folder: Its folder.
    """
    file = read_outline(read_text(folder, WHERE).text)
    argument = known.argument
    texts = [one.own_span.of(known.manuscript.text) for one in argument.body]
    placed = place_corrections(file.corrections, texts)
    corrected = tuple(_correct(one, placed.get(one.paragraph)) for one in argument.outline)
    there = set(map(id, placed.values()))
    answers = {one.asks: one.answer for one in file.answers}
    return Outline(
        tuple(
            _note(known, one, texts[one.paragraph], placed.get(one.paragraph) or Correction(texts[one.paragraph]))
            for one in corrected
        ),
        tuple((asking, answers.get(asking.name, "")) for asking in ask_of_argument(known, corrected)),
        tuple(one for one in file.corrections if id(one) not in there),
        file.problems,
    )


def _correct(one: Outlined, said: Correction | None) -> Outlined:
    """What is seen of a paragraph, with the writer's word over it."""
    if said is None:
        return one
    return replace(
        one,
        point=one.point if said.point is None else said.point,
        question=one.question if said.question is None else said.question,
        on_focus=one.on_focus if said.focus is None else said.focus,
    )


def _note(known: Analysis, one: Outlined, words: str, said: Correction) -> SideNote:
    text, paragraph = known.manuscript.text, known.argument.body[one.paragraph]
    key = " ".join(one.key.of(text).split())
    return SideNote(
        number=one.paragraph + 1,
        line=line_at(text, paragraph.span.start),
        outlined=one,
        paragraph=words,
        says=said.says if said.says is not None else _shorten(key),
        words=paragraph.words + paragraph.blocks,
        cites=_cites(known, paragraph),
        tie=said.tie if said.tie is not None else say_tie(one.tie),
        does=_say_what_it_does(one, paragraph, is_sure=said.focus is not None),
        correction=said,
    )


def _say_what_it_does(one: Outlined, paragraph: BodyParagraph, *, is_sure: bool) -> str:
    serves = [name for name in (one.point, one.question) if name]
    told = f"serves {' and '.join(serves)}" if serves else _ROLES[paragraph.role]
    return told if one.on_focus else f"{told}; off the focus{'' if is_sure else ', it seems'}"


def _shorten(sentence: str) -> str:
    return sentence if len(sentence) <= LONGEST else sentence[:LONGEST].rsplit(" ", 1)[0].rstrip(" ,;:") + " …"


def _cites(known: Analysis, paragraph: BodyParagraph) -> tuple[str, ...]:
    """The sources of a paragraph in order, each once, with all the pages at which it is cited."""
    pages: dict[str, list[str]] = {}
    for cited in paragraph.cites:
        if cited.entry is not None and cited.entry in known.names:
            pages.setdefault(cited.entry, []).append(cited.pages)
    told = []
    for entry, at in pages.items():
        each = list(dict.fromkeys(filter(None, at)))
        place = f"pp. {', '.join(each)}" if len(each) > 1 else name_pages(each) if each else ""
        told.append(f"{known.names[entry]}, {place}" if place else known.names[entry])
    return tuple(told)


def say_tie(tie: TieBefore | None) -> str:
    """What ties a paragraph to the one before, in a sentence; nothing for the first.

    >>> say_tie(TieBefore("Yet", ("gardens", "cost"), False)), say_tie(TieBefore("", (), True))
    ('“Yet”; shares gardens, cost', 'turns to another matter')
    """
    if tie is None:
        return ""
    told = [f"“{tie.link}”"] if tie.link else []
    told += [f"shares {', '.join(tie.words)}"] if tie.words else []
    told += ["turns to another matter"] if tie.turns and not tie.link else []
    return "; ".join(told) or "no word in common"


def correct_paragraph(
    folder: Path, known: Analysis, paragraph: str, change: Callable[[Correction], Correction]
) -> None:
    """What the writer says of one paragraph stands in ``outline.jsonl``; where nothing is left to say, it is gone.

    Args:
        folder: The paper's folder.
        known: The paper as it was shown.
        paragraph: The paragraph's words as they were shown.
        change: From what was said of it to what is said now.

    Raises:
        DraftChangedOnDisk: No paragraph reads so any more, or another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    texts = [one.own_span.of(known.manuscript.text) for one in known.argument.body]
    at = next((at for at, text in enumerate(texts) if text.split() == paragraph.split()), None)
    if at is None:
        message = "draft.md: the paragraph was changed meanwhile; nothing was written: look at the outline again"
        raise DraftChangedOnDisk(message)
    present = read_text(folder, WHERE)
    placed = place_corrections(read_outline(present.text).corrections, texts)
    before = placed.get(at)
    now = replace(change(before or Correction(texts[at])), paragraph=texts[at])
    text = put_correction(present.text, now, before.paragraph if before else None)
    if text != present.text:
        save_text(folder, WHERE, text, present.seen)


def answer_asking(folder: Path, name: str, answer: str, at: dt.datetime) -> None:
    """The writer's answer to one of the questions stands in ``outline.jsonl``; an empty one takes it back.

    Raises:
        FairhandError: There is no such question.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    if name not in NAMES:
        message = f"“{name}” is none of the questions; they are {', '.join(NAMES)}"
        raise FairhandError(message)
    present = read_text(folder, WHERE)
    if any((one.asks, one.answer) == (name, answer) for one in read_outline(present.text).answers):
        return
    text = put_answer(present.text, Answer(name, answer, at.isoformat(timespec="seconds") if answer else ""))
    if text != present.text:
        save_text(folder, WHERE, text, present.seen)


def stands(findings: Sequence[Finding], outline: Outline) -> bool:
    """Whether the argument stands: nothing is told of it, and every question has the writer's answer."""
    told = any(one.in_pass == ARGUMENT for one in findings)
    return bool(outline.notes) and not told and all(answer for _, answer in outline.askings)


def tell_standing(findings: Sequence[Finding], outline: Outline) -> str:
    """Whether the argument stands, as far as can be seen, so that it is time to turn to the language.

    Args:
        findings: The findings that stand, of both passes.
        outline: The outline.
    """
    if not outline.notes:
        return "There is no paragraph to outline yet: the argument comes first, and its language last."
    of_argument = [one for one in findings if one.in_pass == ARGUMENT]
    asked = [one for one in of_argument if one.weight == "query"]
    loud = len(of_argument) - len(asked)
    open_ = sum(not answer for _, answer in outline.askings)
    if loud:
        first = open_with(loud, "thing is", "things are")
        return f"The argument does not stand yet: {first[0].lower()}{first[1:]} told of it. Leave the language alone."
    if asked or open_:
        wait = [count_of(len(asked), "query", "queries")] if asked else []
        wait += [count_of(open_, "question")] if open_ else []
        verb = "waits" if len(asked) + open_ == 1 else "wait"
        return f"Nothing is told against the argument; {' and '.join(wait)} beside it still {verb} for your answer."
    return "The argument stands, as far as can be seen, and you have answered for it: it is time for the language."
