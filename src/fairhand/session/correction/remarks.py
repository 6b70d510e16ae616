"""What readers wrote into the copies of an open paper: it comes in, is shown at its place, and is ruled on."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.brief.telling import tell_requirement
from fairhand.desk.disk import add_file, writable
from fairhand.desk.file_names import name_file
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import PRINTED
from fairhand.errors import FairhandError
from fairhand.language.counts import open_with
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.problem import Problem
from fairhand.proof.placing import Type, read_type
from fairhand.readers import remarks_file
from fairhand.readers.asking import find_reading, say_day
from fairhand.readers.carrying_out import carry_out
from fairhand.readers.gathering import ReaderRemark, Ruling, count_forms, gather_remarks
from fairhand.readers.placing import place_remarks
from fairhand.readers.register import WHERE, Reader, plain_name, put_reader, read_register
from fairhand.readers.stumbling import Passage, group_by_passage
from fairhand.reading.found_again import Place
from fairhand.session.correction.readers import MARKS, asked_elsewhere
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.opened import OpenPaper
from fairhand.session.record.states import draft_of
from fairhand.session.saving import keep_record
from fairhand.session.sources.reading_bounded import read_returned_bounded


@dataclass(frozen=True, slots=True)
class Came:
    """What came back."""

    reader: Reader
    new: int
    there: int
    """Remarks that had come before."""
    forms: int
    """Changes of form alone, which are not taken over."""
    path: Path
    """Where the file is kept."""


@dataclass(frozen=True)
class Survey:
    """The register, and what readers wrote."""

    sentence: str
    """The next step."""
    readers: tuple[Reader, ...] = ()
    passages: tuple[Passage, ...] = ()
    unplaced: tuple[ReaderRemark, ...] = ()
    draft: str = ""
    """The present draft, of which the passages are intervals."""
    version: str | None = None
    """The hash of the present draft; None where there is none."""
    policy: tuple[str, ...] = ()
    """What the sheet says of help from others."""
    elsewhere: Mapping[str, tuple[str, ...]] | None = None
    """For each reader asked by several papers, the titles of the others."""
    problems: tuple[Problem, ...] = ()

    @property
    def remarks(self) -> tuple[ReaderRemark, ...]:
        """Everything that readers wrote, those without a place last."""
        return (*(one.remark for passage in self.passages for one in passage.placed), *self.unplaced)

    @property
    def unruled(self) -> int:
        """How many remarks wait for the writer's word."""
        return sum(not one.ruling for one in self.remarks)


def take_returned(folder: Path, data: bytes, file: str, name: str = "", *, today: dt.date) -> Came:
    """What a reader wrote stands in ``marks.jsonl``, the reader is back, and the file is kept in ``fair/``.

    Args:
        folder: The paper's folder.
        data: The bytes of the file that came back.
        file: Its name.
        name: Whose it is; empty where only one reader is out.
        today: The day on which it came.

    Raises:
        FairhandError: It is not told whose it is.
        UnknownFormat: It is no kind of file that remarks are read from.
        FileUnreadable: It is broken.
        DraftChangedOnDisk: Another program wrote to one of the files at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    returned = read_returned_bounded(data, file, folder)
    keep_record(read_paper(folder))
    register = read_text(folder, WHERE)
    readers = read_register(register.text)[0]
    reader = _whose(readers, name, file)
    remarks = gather_remarks(returned, reader.name, file)
    marks = read_text(folder, MARKS)
    there = {one.id for one in remarks_file.read_remarks(marks.text)}
    new = [one for one in remarks if one.id not in there]
    with writable(folder):
        (folder / PRINTED).mkdir(exist_ok=True)
    stem, ending = name_file(Path(file).stem, "copy"), Path(file).suffix.lower()
    kept = f"{stem} (back from {name_file(reader.name, 'a reader')}){ending}"
    path = add_file(folder / PRINTED / kept, data)
    if new:
        save_text(folder, MARKS, remarks_file.put_remarks(marks.text, new), marks.seen)
    if reader.back is None:
        reader = replace(reader, back=today)
        save_text(folder, WHERE, put_reader(register.text, reader), register.seen)
    return Came(reader, len(new), len(remarks) - len(new), count_forms(returned), path)


def _whose(readers: tuple[Reader, ...], name: str, file: str) -> Reader:
    """The reading that came back."""
    out = [one for one in readers if one.is_out]
    if name.strip():
        own = [one for one in out if one.key == plain_name(name)]
        return own[-1] if own else find_reading(readers, name) or Reader(" ".join(name.split()))
    if len(out) == 1:
        return out[0]
    there = ", ".join(one.name for one in out) or "none"
    message = f"{file}: say whose it is; out now: {there}"
    raise FairhandError(message)


def rule_on_remark(folder: Path, name: str, ruling: Ruling, why: str = "") -> ReaderRemark:
    """The writer's word on a remark is kept.

    Raises:
        FairhandError: No remark, or several, have that id; or one is left without a reason.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    marks = read_text(folder, MARKS)
    found = [one for one in remarks_file.read_remarks(marks.text) if name and one.id.startswith(name)]
    if len(found) != 1:
        there = "several remarks have" if found else "no remark has"
        message = f"{name}: {there} that number; fairhand readers lists them"
        raise FairhandError(message)
    why = " ".join(why.split())
    if ruling == "left" and not why:
        message = "Say why it is left: a reason tells you later whether the reader was wrong, or you."
        raise FairhandError(message)
    save_text(folder, MARKS, remarks_file.rule_remark(marks.text, found[0].id, ruling, why), marks.seen)
    return replace(found[0], ruling=ruling, why=why)


def carry_out_remark(paper: OpenPaper, name: str) -> ReaderRemark:
    """The reader's change stands in the draft, and the remark is taken; the draft as it was is in the record.

    Raises:
        FairhandError: No remark has that number, or its change cannot be carried out unseen.
        DraftChangedOnDisk: The draft was changed at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    survey = survey_readers(paper)
    found = [one for passage in survey.passages for one in passage.placed if name and one.remark.id.startswith(name)]
    written = read_text(paper.folder, DRAFT)
    text = None
    if len(found) == 1 and found[0].sure and written.text == survey.draft:
        text = carry_out(written.text, found[0].span, found[0].remark)
    if text is None:
        message = f"{name}: it cannot be carried out unseen; mend the draft by hand, and say that you took it"
        raise FairhandError(message)
    keep_record(read_paper(paper.folder))
    save_text(paper.folder, DRAFT, text, written.seen)
    return rule_on_remark(paper.folder, found[0].remark.id, "taken", found[0].remark.why)


def survey_readers(paper: OpenPaper) -> Survey:
    """The register, and everything that readers wrote, at its place in the present draft."""
    known, folder = paper.look(), paper.folder
    readers, problems = read_register(read_text(folder, WHERE).text)
    remarks = remarks_file.read_remarks(read_text(folder, MARKS).text)
    manuscript = known.manuscript
    present = read_type(manuscript)
    places = _place(folder, readers, remarks, present)
    sentences = [span for paragraph in manuscript.paragraphs for span in paragraph.sentences]
    passages, unplaced = group_by_passage(remarks, places, sentences)
    survey = Survey(
        sentence="",
        readers=readers,
        passages=passages,
        unplaced=unplaced,
        draft=manuscript.text,
        version=read_text(folder, DRAFT).seen,
        policy=tuple(
            tell_requirement(one)
            for one in known.paper.requirements
            if one.kind == "policy" and one.values.get("what") == "collaboration"
        ),
        elsewhere={key: tuple(titles) for key, titles in asked_elsewhere(folder).items()},
        problems=problems,
    )
    today = known.paper.now.date() if known.paper.now else None
    return replace(survey, sentence=_say_next(survey, today))


def _say_next(survey: Survey, today: dt.date | None) -> str:
    """The next step, in one sentence."""
    if survey.unruled:
        return f"{open_with(survey.unruled, 'remark waits', 'remarks wait')} for your word: taken, left, or kept."
    out = [one for one in survey.readers if one.is_out]
    if out:
        late = [one for one in out if one.due and today and one.due < today]
        if late:
            return f"{late[0].name} was to be back by {say_day(late[0].due or today or dt.date.min)}: ask."
        until = f" until {say_day(out[0].due)}" if out[0].due else ""
        return f"{out[0].name} is reading{until}: let it lie."
    if survey.version is None:
        return "There is no draft yet: a reader comes when there is an argument to follow."
    if any(one.draft == survey.version for one in survey.readers):
        return "What came back is settled: change the draft, then ask the next reader."
    return "Ask one reader, when the argument stands: a fresh eye is fresh only once."


def _place(
    folder: Path, readers: tuple[Reader, ...], remarks: tuple[ReaderRemark, ...], present: Type
) -> list[Place | None]:
    """Where each remark belongs in the draft, by what its reader was sent where the record still has it."""
    versions = {one.key: one.draft for one in readers}
    wanted = {versions.get(plain_name(one.reader), "") for one in remarks}
    sent = {version: _text_sent(folder, version) if version else "" for version in wanted}
    found: list[Place | None] = [None] * len(remarks)
    for version in wanted:
        own = [n for n, one in enumerate(remarks) if versions.get(plain_name(one.reader), "") == version]
        placed = place_remarks([remarks[n] for n in own], present.text, sent[version])
        for n, place in zip(own, placed, strict=True):
            found[n] = Place(present.in_draft(place.span), place.sure) if place else None
    return found


def _text_sent(folder: Path, version: str) -> str:
    """The draft of a hash as it read; empty where the record has none."""
    try:
        return read_type(read_manuscript(draft_of(folder, version) or "")).text
    except FairhandError:
        return ""
