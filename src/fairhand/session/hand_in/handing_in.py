"""The hand-in: what the sheet asks of it, the writer's statements, what is handed in, and its receipt."""

from __future__ import annotations

import datetime as dt
import io
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fairhand.desk.clock import find_zone, now
from fairhand.desk.disk import add_file
from fairhand.desk.making import put_folder
from fairhand.desk.places import PRINTED, desk_of
from fairhand.desk.seen import hash_bytes, see_file
from fairhand.desk.toml_reading import read_toml
from fairhand.errors import FairhandError, NameLeft
from fairhand.fair_copy.unnamed import hide_name
from fairhand.hand_in.account import (
    WHERE,
    Account,
    Handed,
    add_handed,
    put_name,
    put_receipt,
    put_statement,
    read_account,
)
from fairhand.hand_in.asked import FORMS, KINDS, Asked, read_asked
from fairhand.hand_in.names import find_names, holds_name
from fairhand.hand_in.sheet import Sheet, write_sheet, write_statements
from fairhand.model.problem import Problem
from fairhand.model.span import line_at
from fairhand.planning.pace import WHERE as LOG
from fairhand.planning.pace import Logged, add_to_log, read_log
from fairhand.readiness.analysis import Analysis
from fairhand.reading.pdf import read_pdf
from fairhand.session.editing import read_text, save_text
from fairhand.session.hand_in.printing import file_stem, make_copy, refuse_unprintable
from fairhand.session.opened import OpenPaper
from fairhand.session.schedule.overview import read_desk
from fairhand.session.schedule.plan import desk_now

HAND_IN = "hand-in"
"""The plan's last step."""
TO_HAND_IN = "to hand in"
"""The folder within a hand-in's folder that holds what is handed in, and nothing else."""


@dataclass(frozen=True)
class HandIn:
    """How the hand-in stands."""

    asked: Asked
    account: Account
    anonymous: bool
    """Whether the name is left out: by the sheet, unless the writer says otherwise."""
    words: int
    """The words by the sheet's rule."""
    words_by: str
    file_name: str
    """Under which the paper is handed in."""
    named_at: tuple[int, ...] = ()
    """Lines of the draft in which the writer's name stands, where it may not."""
    problems: tuple[Problem, ...] = ()

    @property
    def missing(self) -> tuple[str, ...]:
        """The kinds of statement that the sheet asks for, and that the writer has not made yet."""
        return tuple(one.kind for one in self.asked.statements if one.kind not in self.account.statements)


@dataclass(frozen=True)
class Made:
    """What was made to be handed in."""

    folder: Path
    files: tuple[Path, ...]
    """What is to be handed in."""
    words: int
    notes: tuple[str, ...] = ()


def look_at_hand_in(paper: OpenPaper) -> HandIn:
    """What the sheet asks of the hand-in, and how far it is met."""
    analysis = paper.look()
    account, problems = _read(read_text(paper.folder, WHERE).text)
    asked = read_asked(analysis.paper.requirements, analysis.paper.brief.texts)
    anonymous = bool(asked.anonymous) if account.anonymous is None else account.anonymous
    rule = analysis.length_rule
    draft, name = analysis.paper.draft, analysis.paper.desk.name
    shown = analysis.manuscript.text
    named = [line_at(draft, at) for at in find_names(shown, name)] if anonymous and draft.strip() else []
    return HandIn(
        asked=asked,
        account=account,
        anonymous=anonymous,
        words=analysis.words.counted,
        words_by=rule.as_rule if rule else "common practice: all but the list of references",
        file_name=f"{file_stem(analysis, account.called if anonymous else name)}.{asked.form}",
        named_at=tuple(dict.fromkeys(named)),
        problems=problems,
    )


def state(folder: Path, kind: str, words: str) -> None:
    """The writer's words for a statement stand in ``hand-in.toml``; without any they are taken back.

    Raises:
        FairhandError: There is no such kind of statement.
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    if kind not in KINDS:
        message = f"{kind}: no statement is called that; there are {', '.join(KINDS)}"
        raise FairhandError(message)
    present = read_text(folder, WHERE)
    save_text(folder, WHERE, put_statement(present.text, kind, words.strip()), present.seen)


def set_name(folder: Path, *, anonymous: bool | None, called: str) -> None:
    """Whether the name is left out, and what stands in its place, as the writer says; None leaves it to the sheet.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    save_text(folder, WHERE, put_name(present.text, anonymous=anonymous, called=" ".join(called.split())), present.seen)


def make_hand_in(
    paper: OpenPaper,
    told: Mapping[str, Any],
    *,
    form: str = "",
    as_zip: bool = False,
    anyway: bool = False,
    at: dt.datetime | None = None,
) -> Made:
    """What is to be handed in stands in a folder of its own in ``fair/``, with its hashes beside it.

    Args:
        paper: The paper.
        told: Its verdict as plain values, of which the hashes' sheet keeps the answer.
        form: The kind of file; what the sheet asks for, where it is empty.
        as_zip: Whether everything is handed in as one archive.
        anyway: Whether asides and TKs that are left are left out, and a name that stands in the text is let stand.
        at: The present hour; the clock's, where it is None.

    Raises:
        NothingToPrint: There is no draft yet.
        MatterLeft: Asides or TKs stand in the draft.
        NameLeft: The name may not stand in it, and does.
        FolderNotWritable: The folder is closed or full.
    """
    refuse_unprintable(paper, anyway=anyway)
    analysis, stands = paper.look(), look_at_hand_in(paper)
    zone = analysis.paper.desk.time_zone
    moment = (at or now(zone)).astimezone(find_zone(zone) if zone else None).replace(microsecond=0)
    kind = form or stands.asked.form
    if kind not in FORMS:
        message = f"{kind}: no file of that kind can be made; there are {', '.join(FORMS)}"
        raise FairhandError(message)
    files, notes = _set_files(paper, analysis, stands, kind)
    if stands.anonymous and not anyway:
        _refuse_name(stands, analysis.paper.desk.name, files)
    within = files
    if as_zip:
        files = {f"{file_stem(analysis, _called(stands, analysis))}.zip": _pack(files, moment)}
    about = Sheet(
        title=analysis.title,
        when=moment,
        words=stands.words,
        words_by=stands.words_by,
        answer=str(told["verdict"]),
        open_=sum(one["state"] in {"unmet", "ask"} and one["force"] == "must" for one in told["requirements"])
        + sum(one["weight"] == "must" for one in told["findings"]),
        files=tuple((name, len(data), hash_bytes(data)) for name, data in {**files, **within}.items()),
    )
    whole = {f"{TO_HAND_IN}/{name}": data for name, data in files.items()}
    folder = _put(
        paper.folder / PRINTED, f"hand-in {moment:%Y-%m-%d %H.%M}", {**whole, "hashes.txt": write_sheet(about)}
    )
    handed = Handed(
        when=moment.isoformat(),
        folder=f"{PRINTED}/{folder.name}",
        words=stands.words,
        files=tuple((name, sha256) for name, _, sha256 in about.files),
    )
    present = read_text(paper.folder, WHERE)
    save_text(paper.folder, WHERE, add_handed(present.text, handed), present.seen)
    return Made(folder, tuple(folder / name for name in whole), stands.words, notes)


def keep_receipt(
    folder: Path, words: str = "", file: tuple[str, bytes] | None = None, at: dt.datetime | None = None
) -> str:
    """What shows that the last hand-in arrived is kept with it: words, or a file beside what was handed in.

    The plan from then on has the paper as handed in.

    Returns:
        The receipt as it is kept.

    Raises:
        FileUnreadable: Nothing was handed in yet, or the file must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, WHERE)
    receipt = " ".join(words.split())
    text = put_receipt(present.text, receipt or "-")  # refused before anything is written
    if file is not None:
        name, data = file
        home = home_of_last(folder, read_account_of(present.text))
        receipt = add_file(home / f"receipt {name}", data).relative_to(folder.resolve()).as_posix()
        text = put_receipt(present.text, receipt)
    save_text(folder, WHERE, text, present.seen)
    _call_handed_in(folder, at)
    return receipt


def _call_handed_in(folder: Path, at: dt.datetime | None) -> None:
    """The plan's last step is called done, unless something was said of it already."""
    log = read_text(folder, LOG)
    if any(one.step == HAND_IN for one in read_log(log.text)[0]):
        return
    moment = desk_now(read_desk(desk_of(folder)), at).isoformat(timespec="seconds")
    save_text(folder, LOG, add_to_log(log.text, Logged(HAND_IN, when=moment)), log.seen)


def home_of_last(folder: Path, account: Account) -> Path:
    """The folder of what was handed in last; the paper's own, where there is none within it."""
    place = (folder / account.handed[-1].folder).resolve() if account.handed else folder.resolve()
    return place if place.is_dir() and place.is_relative_to(folder.resolve()) else folder.resolve()


def was_handed_in(folder: Path, data: bytes) -> str:
    """When a file was handed in, by its bytes; empty where none such was."""
    account = read_hand_in(folder)
    sha256 = hash_bytes(data)
    return next((one.when for one in reversed(account.handed) for _, known in one.files if known == sha256), "")


def _read(text: str) -> tuple[Account, tuple[Problem, ...]]:
    table, problems = read_toml(text, WHERE)
    account, faults = read_account(table)
    return account, (*problems, *faults)


def read_account_of(text: str) -> Account:
    """What the text of ``hand-in.toml`` tells."""
    return _read(text)[0]


def read_hand_in(folder: Path) -> Account:
    """What ``hand-in.toml`` tells."""
    return read_account_of(read_text(folder, WHERE).text)


def _called(stands: HandIn, analysis: Analysis) -> str:
    return stands.account.called if stands.anonymous else analysis.paper.desk.name


def _set_files(
    paper: OpenPaper, analysis: Analysis, stands: HandIn, kind: str
) -> tuple[dict[str, bytes], tuple[str, ...]]:
    copy = paper.fair_copy()
    if stands.anonymous:
        copy = hide_name(copy, analysis.paper.desk.name, stands.account.called)
    made = make_copy(paper, copy, file_stem(analysis, _called(stands, analysis)), kind)
    files = {made.name: made.data}
    statements = write_statements(stands.account.statements)
    if statements:
        files["statements.txt"] = statements
    return files, made.notes


def _refuse_name(stands: HandIn, name: str, files: Mapping[str, bytes]) -> None:
    if not name.strip():
        return
    if stands.named_at:
        lines = ", ".join(map(str, stands.named_at))
        message = (
            f"draft.md, line {lines}: your name stands there, and the paper is read without it; take it out, "
            "or hand in anyway if it is another’s"
        )
        raise NameLeft(message)
    for file, data in files.items():
        places = holds_name(name, file, data) or (find_names(_printed(file, data), name) and (f"the text of {file}",))
        if places:
            message = (
                f"{places[0]}: your name stands there, and the paper is read without it; take it out, "
                "or hand in anyway if it is another’s"
            )
            raise NameLeft(message)


def _printed(file: str, data: bytes) -> str:
    """A PDF's text: in its bytes the letters stand as numbers of their shapes."""
    return "\n".join(read_pdf(data, file).texts) if file.endswith(".pdf") else ""


def _pack(files: Mapping[str, bytes], moment: dt.datetime) -> bytes:
    """One archive of all files, in which nothing stands but they and the hour."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in files.items():
            member = zipfile.ZipInfo(name, moment.timetuple()[:6])
            member.external_attr = 0o644 << 16
            archive.writestr(member, data, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def _put(within: Path, name: str, files: Mapping[str, bytes]) -> Path:
    for number in range(1, 1000):
        try:
            return put_folder(within, name if number == 1 else f"{name} ({number})", files)
        except FileExistsError:
            continue
    message = f"{within / name}: a thousand folders of that name stand there; clear some away"
    raise FairhandError(message)


def read_upload(path: Path) -> tuple[str, bytes]:
    """A file that the writer names, with its bytes.

    Raises:
        FileUnreadable: It is not there, or cannot be read.
    """
    return path.name, see_file(path, path.name).data
