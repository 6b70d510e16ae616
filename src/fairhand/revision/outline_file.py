"""``outline.jsonl``: what the writer corrected of the reverse outline, and what they answered beside it.

A correction is kept with the paragraph's words, and holds for the paragraph that these have become. Lines that cannot
be read, and keys that we do not know, stay as they stand.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fairhand.language.json_text import write_json
from fairhand.language.line_files import load_record
from fairhand.manuscript.matching import match_texts
from fairhand.model.problem import Problem

WHERE = "outline.jsonl"
_OURS = frozenset("paragraph says point question focus tie asks answer when".split())
FIELDS = ("says", "point", "question", "focus", "tie")
"""What can be corrected of a paragraph."""


@dataclass(frozen=True, slots=True)
class Correction:
    """What the writer said of one paragraph; of each field None where they said nothing."""

    paragraph: str
    """Its words when they said so."""
    says: str | None = None
    """What it says, in the writer's words."""
    point: str | None = None
    """The id of the point that it serves; empty for none."""
    question: str | None = None
    focus: bool | None = None
    tie: str | None = None
    """What ties it to the paragraph before."""

    @property
    def is_empty(self) -> bool:
        """Whether nothing is said."""
        return all(getattr(self, field) is None for field in FIELDS)


@dataclass(frozen=True, slots=True)
class Answer:
    """What the writer answered to one of the questions beside the outline."""

    asks: str
    """The question's name."""
    answer: str
    when: str = ""


@dataclass(frozen=True, slots=True)
class OutlineFile:
    """The contents of the file."""

    corrections: tuple[Correction, ...] = ()
    answers: tuple[Answer, ...] = ()
    problems: tuple[Problem, ...] = ()


def read_outline(text: str) -> OutlineFile:
    r"""What the file holds, the last word on each paragraph and question, with a problem for each line that is amiss.

    >>> file = read_outline('{"paragraph": "It rained.", "says": "Rain."}\n{"asks": "terms", "answer": "Yes."}\n')
    >>> file.corrections[0].says, file.answers[0].answer, file.problems
    ('Rain.', 'Yes.', ())
    """
    corrections: dict[str, Correction] = {}
    answers: dict[str, Answer] = {}
    problems = []
    for number, line in enumerate(text.split("\n"), 1):
        record = _read_line(line)
        if record is None:
            continue
        if isinstance(record.get("paragraph"), str):
            correction = _correction(record)
            corrections[correction.paragraph] = correction
        elif isinstance(record.get("asks"), str) and isinstance(record.get("answer"), str):
            answers[record["asks"]] = Answer(record["asks"], record["answer"], _text(record, "when") or "")
        else:
            mend = 'write it as {"paragraph": "…", "says": "…"}; it is left out now'
            problems.append(Problem(f"{WHERE}, line {number}", "it is no correction and no answer", mend))
    return OutlineFile(tuple(corrections.values()), tuple(answers.values()), tuple(problems))


def _read_line(line: str) -> Mapping[str, Any] | None:
    """The record of a line; an empty one for a line that is none, None for a blank line."""
    return load_record(line) if line.strip() else None


def _correction(record: Mapping[str, Any]) -> Correction:
    focus = record.get("focus")
    return Correction(
        record["paragraph"],
        _text(record, "says"),
        _text(record, "point"),
        _text(record, "question"),
        focus if isinstance(focus, bool) else None,
        _text(record, "tie"),
    )


def _text(record: Mapping[str, Any], key: str) -> str | None:
    value = record.get(key)
    return value if isinstance(value, str) else None


def place_corrections(corrections: Sequence[Correction], texts: Sequence[str]) -> Mapping[int, Correction]:
    """Each correction by the place of the paragraph that its own has become; those whose paragraph has gone left out.

    >>> said = Correction("The quay was sold in spring.", says="It went.")
    >>> place_corrections([said], ["It rained.", "The quay was let in spring."])[1].says
    'It went.'
    """
    placed: dict[int, Correction] = {}
    for match in match_texts([one.paragraph for one in corrections], texts):
        if match.old and match.new and match.new[0] not in placed:
            placed[match.new[0]] = corrections[match.old[0]]
    return placed


def put_correction(text: str, correction: Correction, was: str | None = None) -> str:
    r"""The file's text with the correction, in place of the one of the paragraph that it was; without it, where empty.

    Args:
        text: The file.
        correction: What is said, with the paragraph's words as they now are.
        was: The paragraph's words in the file; None where nothing was said of it.

    >>> put_correction("", Correction("It rained.", says="Rain."))
    '{"paragraph": "It rained.", "says": "Rain."}\n'
    """
    record = {} if correction.is_empty else _tell(correction)
    return _put(text, "paragraph", {correction.paragraph, was} - {None}, record)


def put_answer(text: str, answer: Answer) -> str:
    r"""The file's text with the answer, in place of an earlier one; without it, where it is empty.

    >>> put_answer('{"asks": "terms", "answer": "No.", "x": 1}\n', Answer("terms", "Yes."))
    '{"asks": "terms", "answer": "Yes.", "x": 1}\n'
    """
    record = {"asks": answer.asks, "answer": answer.answer, "when": answer.when} if answer.answer else {}
    return _put(text, "asks", {answer.asks}, {key: value for key, value in record.items() if value})


def _tell(correction: Correction) -> dict[str, Any]:
    said = {field: getattr(correction, field) for field in FIELDS}
    return {"paragraph": correction.paragraph, **{key: value for key, value in said.items() if value is not None}}


def _put(text: str, key: str, names: set[str | None], record: Mapping[str, Any]) -> str:
    """The lines, the last with one of these names replaced by the record, the others with one left out."""
    lines: list[str] = []
    put = not record
    for line in reversed(text.removesuffix("\n").split("\n") if text else []):
        known = _read_line(line)
        if known is None or known.get(key) not in names:
            lines.append(line)
        elif not put:
            kept = {name: value for name, value in known.items() if name not in _OURS}
            lines.append(write_json({**record, **kept}))
            put = True
    lines.reverse()
    if not put:
        lines.append(write_json(record))
    return "".join(f"{line}\n" for line in lines)
