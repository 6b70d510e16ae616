"""``leads.jsonl``: the leads that the writer put aside, each with the reason, and those brought back.

A line is added for each word of the writer's, and the last one on a lead holds.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from fairhand.language.json_text import write_json
from fairhand.language.line_files import add_line, load_record
from fairhand.model.problem import Problem

WHERE = "leads.jsonl"


@dataclass(frozen=True, slots=True)
class Aside:
    """What the writer said of a lead."""

    lead: str
    """Its id."""
    why: str = ""
    when: str = ""
    """The moment, as ISO 8601 has it."""
    back: bool = False
    """Whether it is among those to look at again."""


def read_asides(text: str) -> tuple[Mapping[str, Aside], tuple[Problem, ...]]:
    r"""The leads that are aside, by id, with a problem for each line that cannot be read.

    >>> read_asides('{"lead": "lind-2001", "aside": true, "why": "out of print"}\n')[0]["lind-2001"].why
    'out of print'
    """
    found: dict[str, Aside] = {}
    problems = []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        aside = _read_line(line)
        if aside is None:
            mend = 'write {"lead": "…", "aside": true, "why": "…"}; it is left out now'
            problems.append(Problem(f"{WHERE}, line {number}", "it says nothing of a lead", mend))
        elif aside.back:
            found.pop(aside.lead, None)
        else:
            found[aside.lead] = aside
    return found, tuple(problems)


def _read_line(line: str) -> Aside | None:
    record = load_record(line)
    lead, is_aside, why, when = (record.get(key) for key in ("lead", "aside", "why", "when"))
    if not isinstance(lead, str) or not isinstance(is_aside, bool):
        return None
    return Aside(
        lead,
        " ".join(why.split()) if isinstance(why, str) else "",
        when if isinstance(when, str) else "",
        back=not is_aside,
    )


def add_aside(text: str, aside: Aside) -> str:
    r"""The file's text with one more line.

    >>> add_aside("", Aside("lind-2001", "out of print"))
    '{"lead": "lind-2001", "aside": true, "why": "out of print"}\n'
    """
    record: dict[str, object] = {"lead": aside.lead, "aside": not aside.back, "why": aside.why, "when": aside.when}
    line = write_json({key: value for key, value in record.items() if value != ""})
    return add_line(text, line)
