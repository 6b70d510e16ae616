"""``focus.toml``: the focus, whether it is the thesis, the audience, and the guiding questions.

What the program changes it changes in place: remarks, and keys that it does not know, stay as they stand.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from fairhand.language.toml_text import list_tables, parse_toml, write_toml
from fairhand.model.focus import Focus, Question
from fairhand.model.problem import Problem

if TYPE_CHECKING:
    from tomlkit.items import AoT, Table

WHERE = "focus.toml"


def read_focus(table: Mapping[str, object]) -> tuple[Focus, tuple[Problem, ...]]:
    """What the file's table says, no two questions of one id, with a problem for each thing that is amiss.

    >>> focus, problems = read_focus({"focus": "Why reading ended", "questions": [{"text": "Who counted?"}]})
    >>> focus.questions, problems
    ((Question(id='q1', text='Who counted?', state='open', notes=(), points=()),), ())
    """
    problems: list[Problem] = []
    questions: list[Question] = []
    records = table.get("questions", [])
    if not isinstance(records, list):
        problems.append(Problem(f"{WHERE}, questions", "they are no list", "head each with [[questions]]"))
        records = []
    for number, record in enumerate(records, 1):
        where = f"{WHERE}, question {number}"
        text = _read_text(record.get("text")) if isinstance(record, Mapping) else ""
        if not isinstance(record, Mapping) or not text:
            problems.append(Problem(where, "it has no text", "write what you want to know; it is left out now"))
            continue
        own = str(record.get("id") or f"q{number}")
        if own in {one.id for one in questions}:
            problems.append(
                Problem(where, f"another question has its id, {own}", "give it its own; it is left out now")
            )
            continue
        state = record.get("state", "open")
        if state not in {"open", "answered"}:
            problems.append(Problem(where, f"its state is {state!r}", 'write "open" or "answered"; open was taken'))
        answered = state == "answered"
        questions.append(
            Question(
                own,
                text,
                "answered" if answered else "open",
                _read_ids(record.get("notes")),
                _read_ids(record.get("points")),
            )
        )
    called = table.get("thesis", False)
    if not isinstance(called, bool):
        problems.append(Problem(f"{WHERE}, thesis", "it should be true or false", "mend it; false was taken"))
    focus = Focus(_read_text(table.get("focus")), called is True, _read_text(table.get("audience")), tuple(questions))
    return focus, tuple(problems)


def _read_text(value: object) -> str:
    return " ".join(value.split()) if isinstance(value, str) else ""


def _read_ids(value: object) -> tuple[str, ...]:
    return tuple(one for one in value if isinstance(one, str)) if isinstance(value, list) else ()


def put_focus(text: str, focus: Focus) -> str:
    r"""The file's text with another focus, thesis flag and audience; its questions stay.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.

    >>> put_focus('# mine\nfocus = "Trams"\n', Focus("Trams and time", is_thesis=True))
    '# mine\nfocus = "Trams and time"\nthesis = true\n'
    """
    document = parse_toml(text, WHERE)
    said: dict[str, str | bool] = {"focus": focus.focus, "thesis": focus.is_thesis, "audience": focus.audience}
    for key, value in said.items():
        if value:
            document[key] = value
        else:
            document.pop(key, None)
    return write_toml(document)


def put_question(text: str, question: Question) -> str:
    r"""The file's text with the question in it: in place of the one with its id, or at the end; without one, a new id.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.

    >>> put_question("", Question("", "Who counted?"))
    '[[questions]]\nid = "q1"\ntext = "Who counted?"\n'
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    records = list_tables(document, "questions", WHERE)
    record = _find(records, question.id) if question.id else None
    if record is None:
        taken = set(map(_id_of, records, range(1, len(records) + 1)))
        record = tomlkit.table()
        record["id"] = question.id or next(name for n in range(1, len(taken) + 2) if (name := f"q{n}") not in taken)
        records.append(record)
        record = records[-1]
    record["text"] = question.text
    said = {"state": "answered" if question.state == "answered" else ""}
    lists = {"notes": list(question.notes), "points": list(question.points)}
    for key, value in {**said, **lists}.items():
        if value:
            record[key] = value
        else:
            record.pop(key, None)
    return write_toml(document)


def drop_question(text: str, question_id: str) -> str:
    """The file's text without the question of that id.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.
    """
    document = parse_toml(text, WHERE)
    records = list_tables(document, "questions", WHERE)
    for number in reversed(range(len(records))):
        if _id_of(records[number], number + 1) == question_id:
            del records[number]
    return write_toml(document)


def _id_of(record: Mapping[str, object], number: int) -> str:
    return str(record.get("id") or f"q{number}")


def _find(records: AoT, question_id: str) -> Table | None:
    return next((one for n, one in enumerate(records, 1) if _id_of(one, n) == question_id), None)
