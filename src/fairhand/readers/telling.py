"""What a reader wrote, in words: the terminal and the page say it alike."""

from __future__ import annotations

from fairhand.language.folding import fold
from fairhand.readers.asking import say_day
from fairhand.readers.gathering import ReaderRemark
from fairhand.readers.register import Reader, plain_name


def tell_reader(reader: Reader, version: str | None = None) -> str:
    """A reader in one line; ``version`` is the hash of the present draft.

    >>> tell_reader(Reader("Ines Mora", expert=True, stage="language", draft="a1"), "a1")
    'Ines Mora, who knows the matter; for the language; this version'
    """
    told = [reader.name + (", who knows the matter" if reader.expert else "")]
    if reader.stage != "whole":
        told.append(f"for the {reader.stage}")
    if reader.sent:
        told.append(f"sent {say_day(reader.sent)}")
    if reader.back:
        told.append(f"back {say_day(reader.back)}")
    elif reader.due:
        told.append(f"due {say_day(reader.due)}")
    if reader.draft and reader.draft == version:
        told.append("this version")
    return "; ".join(told)


def tell_who(remark: ReaderRemark) -> str:
    """Whose a remark is; where the file names somebody else than the register, both.

    >>> tell_who(ReaderRemark("comment", reader="Ines Mora", by="ines  mora"))
    'Ines Mora'
    >>> tell_who(ReaderRemark("comment", reader="Ines Mora", by="Author"))
    'Ines Mora (as “Author”)'
    """
    if not remark.by or not remark.reader or plain_name(remark.by) == plain_name(remark.reader):
        return remark.reader or remark.by
    return f"{remark.reader} (as “{remark.by}”)"


def tell_what(remark: ReaderRemark, passage: str = "") -> str:
    """What a remark says, or what a change does, in one line; words that stand above it already are not repeated.

    >>> tell_what(ReaderRemark("substitution", "turned", "ran")), tell_what(ReaderRemark("comment", "Why?", "ran"))
    ('for “ran” put “turned”', '“ran”: Why?')
    >>> tell_what(ReaderRemark("comment", "", "ran"))
    '“ran”: marked, without a word'
    """
    exact, said = _short(remark.exact), " ".join(remark.said.split())
    match remark.kind:
        case "comment":
            said = said or "marked, without a word"
            above = " ".join(passage.split())
            words = f"“{exact}”: {said}" if exact and not (above and _opens(remark.exact, above)) else said
            return f"{words} (on “{_short(remark.answers)}”)" if remark.answers else words
        case "insertion":
            return f"at “{exact}” put in {f'“{said}”' if said else 'a new paragraph'}"
        case "deletion":
            return f"take out “{exact}”"
        case _:
            return f"for “{exact}” put “{said}”"


def _opens(exact: str, above: str) -> bool:
    """Whether the words are the whole of the passage above, or begin with it."""
    plain = [fold("".join(text.split())) for text in (exact, above)]
    return plain[0].startswith(plain[1])


def _short(text: str, most: int = 12) -> str:
    """The first and last of many words."""
    words = text.split()
    return " ".join(words) if len(words) <= most else f"{' '.join(words[: most - 3])} … {' '.join(words[-2:])}"
