"""What the model sees of each line of a list without numbers, to tell on which lines a reference begins.

How a line is indented is mostly lost in the text of a PDF; what is left is how it begins and how the one before it
ends, how long both are, and whether the list goes on in the order of letters.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fairhand.language.folding import fold

_CAP = r"[^\W\d_a-zß-öø-ÿ]"
_PARTICLES = r"(?:(?:van|von|de|der|den|del|della|di|du|la|le|el|al|bin|dos|da|ten|ter)\s+){0,3}"
_NAME = rf"{_PARTICLES}{_CAP}[^\W\d_]*(?:[-'’ ]{_CAP}?[^\W\d_]+){{0,2}}"
_STARTS = (
    ("dash", re.compile(r"(?:[-–—―_]\s?){2,}|[—―⸺⸻]")),
    ("turned-dotted", re.compile(rf"{_NAME},?\s+(?:{_CAP}\.[\s-]?){{1,4}}")),
    ("turned-bare", re.compile(rf"{_NAME}\s+{_CAP}{{1,3}}(?:[,.;:&(]|\s|$)")),
    ("turned-comma", re.compile(rf"{_NAME},\s+{_CAP}[^\W\d_]+")),
    ("straight", re.compile(rf"(?:{_CAP}\.[\s-]?){{1,4}}\s?{_NAME}")),
    ("full", re.compile(rf"{_CAP}[^\W\d_]+\s+(?:{_CAP}\.\s?)?{_CAP}[^\W\d_]+(?:[,.]|\s+and\b)")),
    ("quoted", re.compile(r"[“\"‘«]")),
    ("capital", re.compile(_CAP)),
    ("digit", re.compile(r"\d")),
    ("small", re.compile(r"[^\W\d_]")),
)
_YEAR = re.compile(r"(?<!\d)(?:1[5-9]|20)\d\d[a-z]?(?!\d)|n\.d\.|in press|forthcoming")
_ENDS = (
    ("stop", re.compile(r"\.[”\"’)]?$")),
    ("url", re.compile(r"(?:https?:|www\.|doi)\S*$", re.IGNORECASE)),
    ("comma", re.compile(r",$")),
    ("colon", re.compile(r"[:;]$")),
    ("hyphen", re.compile(r"[-–]$")),
    ("bracket", re.compile(r"[)\]]$")),
    ("digit", re.compile(r"\d$")),
    ("initial", re.compile(rf"(?:^|[\s.-]){_CAP}\.$")),
)
_WORD = re.compile(r"[^\W\d_]+")


def start_of(line: str) -> str:
    """How a line begins: as one of the forms of a name, or otherwise.

    >>> [start_of(one) for one in ("Lind, A. B., and", "Lind AB, Okafor", "A. B. Lind,", "and Okafor", "———. Salt")]
    ['turned-dotted', 'turned-bare', 'straight', 'small', 'dash']
    """
    return next((name for name, form in _STARTS if form.match(line)), "other")


def describe_lines(lines: Sequence[str], blank: Sequence[bool] = ()) -> list[list[str]]:
    """The features of each line.

    Args:
        lines: The lines of the list.
        blank: Whether a blank line stands before each.

    >>> "first" in describe_lines(["Lind, A. Salt."])[0]
    True
    """
    starts = [start_of(line) for line in lines]
    ends = [_end_of(line) for line in lines]
    keys = [_key(line) for line in lines]
    width = _width(lines)
    after_stop = Counter(start for n, start in enumerate(starts) if n and ends[n - 1] in {"stop", "url", "digit"})
    common = {name for name, times in after_stop.items() if times >= max(2, 0.3 * max(after_stop.values()))}
    top = max(after_stop, key=lambda name: after_stop[name], default="")
    ordered = _share_in_order(starts, keys, top)
    out = []
    last_like = ""
    for n, line in enumerate(lines):
        row = [f"start={starts[n]}", f"usual={starts[n] in common}", f"top={starts[n] == top}"]
        row.append(f"long={_ratio(line, width)}")
        found = _YEAR.search(line)
        near = found.start() // 25 if found else -1
        row.append(f"year={min(near, 5)}")
        if n:
            row += [f"-1:end={ends[n - 1]}", f"-1:long={_ratio(lines[n - 1], width)}", f"-1:start={starts[n - 1]}"]
            row.append(f"-1:end={ends[n - 1]}|{_ratio(lines[n - 1], width)}|{starts[n] in common}")
            row.append(f"-1:end={ends[n - 1]}|start={starts[n]}")
            if ordered >= 0.75 and keys[n]:
                follows = "same" if keys[n] == last_like else "on" if keys[n] > last_like else "back"
                row += [f"order={follows}", f"order={follows}|{ends[n - 1]}", f"order={follows}|{starts[n] in common}"]
                row.append(f"order={follows}|{starts[n] in common}|{ends[n - 1]}")
        else:
            row.append("first")
        if n + 1 < len(lines):
            row += [f"+1:start={starts[n + 1]}", f"+1:usual={starts[n + 1] in common}"]
            beyond = _YEAR.search(lines[n + 1])
            row.append(f"+1:year={min(beyond.start() // 25, 5) if beyond else -1}")
        row.append(f"ordered={ordered >= 0.75}")
        if n < len(blank) and blank[n]:
            row.append("blank")
        if starts[n] in common and (not n or ends[n - 1] != "comma"):
            last_like = keys[n] if not last_like or keys[n] >= last_like or ordered < 0.75 else last_like
        out.append(row)
    return out


def _end_of(line: str) -> str:
    return next((name for name, form in reversed(_ENDS) if form.search(line)), "letter")


def _key(line: str) -> str:
    found = _WORD.search(line)
    return fold(found[0])[:6] if found and found.start() < 4 else ""


def _width(lines: Sequence[str]) -> int:
    """The usual length of a full line: the ninth of ten by length."""
    lengths = sorted(map(len, lines))
    return max(lengths[min(len(lengths) - 1, len(lengths) * 8 // 10)], 1) if lengths else 1


def _ratio(line: str, width: int) -> int:
    """The line's length against the usual one, in sixths."""
    return min(len(line) * 6 // width, 8)


def _share_in_order(starts: Sequence[str], keys: Sequence[str], top: str) -> float:
    """How many of the lines that begin in the commonest form come after the one before them, by their letters."""
    like = [key for start, key in zip(starts, keys, strict=True) if start == top and key]
    if len(like) < 3:
        return 0.0
    return sum(1 for one, other in pairwise(like) if other >= one) / (len(like) - 1)
