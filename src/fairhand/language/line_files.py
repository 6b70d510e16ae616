"""Files in which each line is one thing: what we change is a line, and every other stays as it stands."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping


def add_line(text: str, line: str) -> str:
    r"""The file's text with one line more at its end.

    >>> add_line("", "ebb"), add_line("ebb", "flow"), add_line("ebb\n", "flow")
    ('ebb\n', 'ebb\nflow\n', 'ebb\nflow\n')
    """
    return f"{text}\n{line}\n" if text and not text.endswith("\n") else f"{text}{line}\n"


def drop_lines(text: str, is_meant: Callable[[str], bool]) -> str:
    r"""The file's text without the lines that are meant; a line that cannot be read is not, and every other one stands.

    >>> drop_lines("7\nebb\n8\n", lambda line: int(line) == 7)
    'ebb\n8\n'
    """

    def stays(line: str) -> bool:
        try:
            return not is_meant(line)
        except (ValueError, RecursionError):
            return True

    return "\n".join(line for line in text.split("\n") if stays(line))


def load_record(line: str) -> Mapping[str, object]:
    """What a line of JSON holds; nothing where it is blank, no JSON, or no object.

    >>> load_record('{"lead": "lind-2001"}'), load_record("[1]"), load_record("{")
    ({'lead': 'lind-2001'}, {}, {})
    """
    try:
        found = json.loads(line) if line.strip() else {}
    except (ValueError, RecursionError):
        return {}
    return found if isinstance(found, Mapping) else {}
