"""``marks.jsonl``: what the writer said of the marks, one W3C Web Annotation a line.

A line that is no stet, or that cannot be read, is kept as it stands.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.3.5 and 4.2.4.
"""

from __future__ import annotations

from collections.abc import Mapping

from fairhand.language.line_files import add_line, drop_lines
from fairhand.model.problem import Problem
from fairhand.model.stet import Stet, Word
from fairhand.proof.stets import name_stet
from fairhand.reading.annotation_line import quote_of, read_annotation, said_of, write_annotation

WHERE = "marks.jsonl"
TAGS: Mapping[Word, str] = {"stet": "stet", "mend": "to mend", "later": "to come back to"}
"""The tags that tell a stet, and the other words on findings, from whatever else may be annotated."""
_WORDS: Mapping[str, Word] = {tag: word for word, tag in TAGS.items()}


def read_marks(text: str) -> tuple[tuple[Stet, ...], tuple[Problem, ...]]:
    """The stets that the text holds, with a problem for each line that cannot be read.

    >>> stets, problems = read_marks(add_mark("", Stet("doubled-word", "had had", "He ", " enough.", reason="meant")))
    >>> stets[0].exact, stets[0].reason, problems
    ('had had', 'meant', ())
    """
    marks, problems = _read(text)
    return tuple(one for one in marks if one.word == "stet"), problems


def read_left_marks(text: str) -> tuple[Stet, ...]:
    """The findings that were marked and left for afterwards: to be mended, to be come back to.

    >>> marked = Stet("doubled-word", "had had", "He ", " enough.", word="mend")
    >>> read_left_marks(add_mark(add_mark("", marked), Stet("dash", "-")))[0] == marked
    True
    """
    return tuple(one for one in _read(text)[0] if one.word != "stet")


def _read(text: str) -> tuple[tuple[Stet, ...], tuple[Problem, ...]]:
    stets, problems = [], []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        try:
            stet = _read_line(line)
        except (ValueError, RecursionError) as error:
            where = f"{WHERE}, line {number}"
            problems.append(Problem(where, f"it is no annotation ({error})", "mend the line, or take it out"))
            continue
        if stet is not None:
            stets.append(stet)
    return tuple(stets), tuple(problems)


def add_mark(text: str, stet: Stet) -> str:
    """The file's text with one stet more, at its end; a former word on the same finding gives way."""
    kept = drop_mark(text, name_stet(stet))
    return add_line(kept, _tell(stet))


def drop_mark(text: str, name: str) -> str:
    """The file's text without the stet of that name; every other line stands as it was."""
    return drop_lines(text, lambda line: (stet := _read_line(line)) is not None and name_stet(stet) == name)


def _tell(stet: Stet) -> str:
    """A stet as an annotation."""
    said = [("tagging", TAGS[stet.word]), ("classifying", stet.check), ("commenting", stet.reason)]
    said += [("identifying", one) for one in stet.concerns]
    quote = {"exact": stet.exact, "prefix": stet.before, "suffix": stet.after} if stet.exact else None
    return write_annotation("assessing", said, quote, created=stet.when)


def _read_line(line: str) -> Stet | None:
    """The stet that a line holds; None where it is another annotation."""
    found = read_annotation(line)
    said = said_of(found)
    word = next((_WORDS[tag] for tag in said.get("tagging", ()) if tag in _WORDS), None)
    if word is None:
        return None
    quote = quote_of(found)
    return Stet(
        check="".join(said.get("classifying", ())[:1]),
        exact=str(quote.get("exact", "")),
        before=str(quote.get("prefix", "")),
        after=str(quote.get("suffix", "")),
        concerns=tuple(said.get("identifying", ())),
        reason="".join(said.get("commenting", ())[:1]),
        when=str(found.get("created", "")),
        word=word,
    )
