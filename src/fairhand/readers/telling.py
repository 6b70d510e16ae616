"""What a reader wrote, in words: the terminal and the page say it alike."""

from __future__ import annotations

from fairhand.readers.gathering import ReaderRemark


def tell_what(remark: ReaderRemark) -> str:
    """What a remark says, or what a change does, in one line.

    >>> tell_what(ReaderRemark("substitution", "turned", "ran")), tell_what(ReaderRemark("comment", "Why?", "ran"))
    ('for “ran” put “turned”', '“ran”: Why?')
    """
    exact, said = _short(remark.exact), " ".join(remark.said.split())
    match remark.kind:
        case "comment":
            words = f"“{exact}”: {said}" if exact else said
            return f"{words} (on “{_short(remark.answers)}”)" if remark.answers else words
        case "insertion":
            return f"at “{exact}” put in {f'“{said}”' if said else 'a new paragraph'}"
        case "deletion":
            return f"take out “{exact}”"
        case _:
            return f"for “{exact}” put “{said}”"


def _short(text: str, most: int = 12) -> str:
    """The first and last of many words."""
    words = text.split()
    return " ".join(words) if len(words) <= most else f"{' '.join(words[: most - 3])} … {' '.join(words[-2:])}"
