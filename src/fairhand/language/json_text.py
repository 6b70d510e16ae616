"""Values as JSON that a person can read: letters stand as themselves."""

from __future__ import annotations

import json
import re

_HALF = re.compile("[\ud800-\udfff]")


def write_json(value: object, indent: int | None = None) -> str:
    r"""The value as JSON; half a letter, which no encoding holds, stands as the escape that it came as.

    >>> write_json({"says": "Fjörður"}), write_json("a\ud800")
    ('{"says": "Fjörður"}', '"a\\ud800"')
    """
    return _HALF.sub(lambda half: f"\\u{ord(half[0]):04x}", json.dumps(value, ensure_ascii=False, indent=indent))
