"""``hand-in.toml``: what the writer states, what was handed in, and what came back."""

from __future__ import annotations

from collections.abc import Mapping, MutableMapping
from dataclasses import dataclass, field

from fairhand.errors import FileUnreadable
from fairhand.hand_in.asked import KINDS
from fairhand.language.toml_text import parse_toml, write_toml
from fairhand.model.problem import Problem

WHERE = "hand-in.toml"
_NO_LIST = f"{WHERE}: what was handed in is no list of tables; nothing was written: head each with [[handed]]"


@dataclass(frozen=True, slots=True)
class Handed:
    """One hand-in, as it was made."""

    when: str
    """The hour, ISO 8601 with the zone."""
    folder: str
    """Where it stands, from the paper's folder."""
    words: int = 0
    """The words declared."""
    files: tuple[tuple[str, str], ...] = ()
    """Each file's name and the SHA-256 of its bytes."""
    receipt: str = ""
    """What shows that it arrived: a number, a sentence, or the name of a file beside it."""


@dataclass(frozen=True, slots=True)
class Mark:
    """The mark by one criterion."""

    criterion: str
    mark: str
    """As it was given: ``18/25``, ``B+``, ``good``."""
    says: str = ""
    """What was said of it."""


@dataclass(frozen=True, slots=True)
class Returned:
    """What came back."""

    when: str = ""
    mark: str = ""
    """The mark of the whole, as it was given."""
    marks: tuple[Mark, ...] = ()
    comments: tuple[str, ...] = ()


@dataclass(frozen=True)
class Account:
    """All that the file tells."""

    statements: Mapping[str, str] = field(default_factory=dict)
    """The writer's words by the kind of statement."""
    anonymous: bool | None = None
    """Whether the name is to be left out; None where the writer leaves that to the sheet."""
    called: str = ""
    """What stands in place of the name: a candidate's number."""
    handed: tuple[Handed, ...] = ()
    returned: Returned | None = None


def read_account(table: Mapping[str, object]) -> tuple[Account, tuple[Problem, ...]]:
    """What the file's table tells, with a problem for each thing that is amiss.

    >>> account, problems = read_account({"statements": {"help": "None."}, "called": "Candidate 0421"})
    >>> account.statements, account.called, problems
    ({'help': 'None.'}, 'Candidate 0421', ())
    """
    problems: list[Problem] = []
    said = table.get("statements", {})
    if not isinstance(said, Mapping):
        problems.append(Problem(f"{WHERE}, statements", "it is no table", "head it with [statements]"))
        said = {}
    anonymous = table.get("anonymous")
    if anonymous is not None and not isinstance(anonymous, bool):
        problems.append(Problem(f"{WHERE}, anonymous", "it should be true or false", "mend it; the sheet’s word holds"))
        anonymous = None
    came = table.get("returned")
    account = Account(
        statements={kind: _text(said.get(kind)) for kind in KINDS if _text(said.get(kind))},
        anonymous=anonymous,
        called=_text(table.get("called")),
        handed=tuple(_read_handed(one) for one in _tables(table.get("handed"))),
        returned=_read_returned(came) if isinstance(came, Mapping) else None,
    )
    return account, tuple(problems)


def _read_handed(table: Mapping[str, object]) -> Handed:
    words = table.get("words")
    files = tuple((_text(one.get("name")), _text(one.get("sha256"))) for one in _tables(table.get("files")))
    return Handed(
        when=_text(table.get("when")),
        folder=_text(table.get("folder")),
        words=words if isinstance(words, int) else 0,
        files=files,
        receipt=_text(table.get("receipt")),
    )


def _read_returned(table: Mapping[str, object]) -> Returned:
    marks = tuple(
        Mark(_text(one.get("criterion")), _text(one.get("mark")), _text(one.get("says")))
        for one in _tables(table.get("marks"))
    )
    comments = table.get("comments")
    listed = comments if isinstance(comments, list) else []
    return Returned(
        when=_text(table.get("when")),
        mark=_text(table.get("mark")),
        marks=tuple(one for one in marks if one.criterion),
        comments=tuple(one for one in map(_text, listed) if one),
    )


def put_statement(text: str, kind: str, words: str) -> str:
    r"""The file's text with the writer's words for a statement; without any, where they are taken back.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.

    >>> put_statement("# mine\n", "help", "Nobody helped me.")
    '# mine\n\n[statements]\nhelp = "Nobody helped me."\n'
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    table = document.setdefault("statements", tomlkit.table())
    if not isinstance(table, MutableMapping):
        message = f"{WHERE}: its statements are no table; nothing was written: head them with [statements]"
        raise FileUnreadable(message)
    if words:
        table[kind] = words
    else:
        table.pop(kind, None)
    if not table:
        document.pop("statements", None)
    return write_toml(document)


def put_name(text: str, *, anonymous: bool | None, called: str) -> str:
    r"""The file's text with what the writer says of the name.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.

    >>> put_name("", anonymous=True, called="Candidate 0421")
    'anonymous = true\ncalled = "Candidate 0421"\n'
    """
    document = parse_toml(text, WHERE)
    for key, value in (("anonymous", anonymous), ("called", called or None)):
        if value is None:
            document.pop(key, None)
        else:
            document[key] = value
    return write_toml(document)


def add_handed(text: str, handed: Handed) -> str:
    """The file's text with one hand-in more.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    table = tomlkit.table()
    table.update({"when": handed.when, "folder": handed.folder, "words": handed.words})
    files = tomlkit.array().multiline(multiline=True)
    for name, sha256 in handed.files:
        one = tomlkit.inline_table()
        one.update({"name": name, "sha256": sha256})
        files.append(one)
    table["files"] = files
    listed = document.setdefault("handed", tomlkit.aot())
    if not isinstance(listed, list):
        raise FileUnreadable(_NO_LIST)
    listed.append(table)
    return write_toml(document)


def put_receipt(text: str, receipt: str, which: int = -1) -> str:
    """The file's text with what shows that a hand-in arrived.

    Raises:
        FileUnreadable: The file is no TOML, or tells of no hand-in yet.
    """
    document = parse_toml(text, WHERE)
    handed = document.get("handed")
    if handed is not None and not (isinstance(handed, list) and all(isinstance(one, MutableMapping) for one in handed)):
        raise FileUnreadable(_NO_LIST)
    if not handed:
        message = f"{WHERE}: nothing was handed in yet; make what is handed in first (fairhand hand-in --make)"
        raise FileUnreadable(message)
    handed[which]["receipt"] = receipt
    return write_toml(document)


def put_returned(text: str, returned: Returned) -> str:
    """The file's text with what came back.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    table = tomlkit.table()
    table.update({key: value for key, value in (("when", returned.when), ("mark", returned.mark)) if value})
    if returned.comments:
        table["comments"] = list(returned.comments)
    if returned.marks:
        marks = tomlkit.aot()
        for one in returned.marks:
            row = tomlkit.table()
            row.update({key: getattr(one, key) for key in ("criterion", "mark", "says") if getattr(one, key)})
            marks.append(row)
        table["marks"] = marks
    document.pop("returned", None)
    document["returned"] = table
    return write_toml(document)


def _text(value: object) -> str:
    return value.strip() if isinstance(value, str) else ""


def _tables(value: object) -> list[Mapping[str, object]]:
    return [one for one in value if isinstance(one, Mapping)] if isinstance(value, list) else []
