"""What the writer says of a requirement, or sets for a paper, written into ``paper.toml`` and nothing else touched."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, MutableMapping
from pathlib import Path
from typing import TYPE_CHECKING

from fairhand.desk.places import OWN_FILES
from fairhand.desk.seen import see_file
from fairhand.desk.writing import write_file
from fairhand.errors import DeskError
from fairhand.model.settings import Answer

if TYPE_CHECKING:
    from tomlkit import TOMLDocument

_NAME = OWN_FILES[0]


def set_answer(folder: Path, requirement: str, answer: Answer | None, *, at: dt.datetime | None = None) -> None:
    """``paper.toml`` holds this answer to the requirement, or none; its other lines and remarks stand as they were.

    Args:
        folder: The paper's folder.
        requirement: The requirement's id, ``length.paper``.
        answer: The answer; None to take it back.
        at: The moment, for the record; now, by default.

    Raises:
        DeskError: ``paper.toml`` has a fault that must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    import tomlkit

    document, seen = _read_document(folder)
    held = document.setdefault("requirements", tomlkit.table(is_super_table=True))
    if not isinstance(held, MutableMapping):
        message = f"{_NAME}: requirements is no table, so no answer can be set in it; mend it first"
        raise DeskError(message)
    _forget_answer(held, requirement)
    if answer is not None:
        held[requirement] = _tell_answer(answer)
    if not held:
        del document["requirements"]
    write_file(folder, _NAME, tomlkit.dumps(document).encode(), seen, at=at)


def set_setting(
    folder: Path, key: str, value: str | bool | dt.date | None, *, name: str = _NAME, at: dt.datetime | None = None
) -> None:
    """``paper.toml`` holds this setting (``given``, ``style``, ``course`` …), or not where the value is None.

    Args:
        folder: The paper's folder.
        key: The setting's name.
        value: What it shall be.
        name: The settings file, where it is another one: ``desk.toml``, in the desk's folder.
        at: The moment, for the record; now, by default.

    Raises:
        DeskError: The file has a fault that must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    import tomlkit

    document, seen = _read_document(folder, name)
    if value is None:
        document.pop(key, None)
    else:
        document[key] = value
    write_file(folder, name, tomlkit.dumps(document).encode(), seen, at=at)


def set_table(
    folder: Path, name: str, table: str, values: Mapping[str, object], *, at: dt.datetime | None = None
) -> None:
    """A table of a settings file holds these values; of the others in it, and of remarks, nothing is touched.

    Args:
        folder: The folder of the desk or of the paper.
        name: The settings file.
        table: The table's name, ``hours``.
        values: By key; what is None is taken out.
        at: The moment, for the record; now, by default.

    Raises:
        DeskError: The file has a fault that must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    import tomlkit

    document, seen = _read_document(folder, name)
    held = document.setdefault(table, tomlkit.table())
    if not isinstance(held, MutableMapping):
        message = f"{name}: {table} is no table, so nothing can be set in it; mend it first"
        raise DeskError(message)
    for key, value in values.items():
        if value is None:
            held.pop(key, None)
        else:
            held[key] = value
    write_file(folder, name, tomlkit.dumps(document).encode(), seen, at=at)


def _read_document(folder: Path, name: str = _NAME) -> tuple[TOMLDocument, str | None]:
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    if not (folder / name).exists():
        return tomlkit.document(), None
    seen = see_file(folder / name, name)
    try:
        return tomlkit.parse(seen.text), seen.sha256
    except TOMLKitError as error:
        message = f"{name}: nothing can be set in it before its fault is mended ({error})"
        raise DeskError(message) from error


def _forget_answer(held: MutableMapping[str, object], requirement: str) -> None:
    """No answer to it is left, whether its id was written in quotation marks or as tables within tables."""
    held.pop(requirement, None)
    first, _, rest = requirement.partition(".")
    within = held.get(first)
    if rest and isinstance(within, MutableMapping):
        _forget_answer(within, rest)
        if not within:
            held.pop(first)


def _tell_answer(answer: Answer) -> dict[str, object]:
    """An answer as its table; words alone are ``answer``, beside values they are ``note``."""
    import tomlkit

    values = tomlkit.inline_table()
    for key, value in answer.values.items():
        if value is not None:
            values.append(key, list(value) if isinstance(value, tuple) else value)
    told = {
        "answer": values or answer.note,
        "waived": answer.waived,
        "by": answer.by,
        "when": answer.when,
        "note": answer.note if values else "",
    }
    return {key: value for key, value in told.items() if value}
