"""``lapses.toml``: the writer's recurring errors, learnt from what was mended and marked, and looked for in a draft.

What the program changes it changes in place: remarks, and keys that it does not know, stay as they stand.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.language.toml_text import list_tables, parse_toml, write_toml
from fairhand.model.lapse import Lapse
from fairhand.model.problem import Problem
from fairhand.model.span import Span

WHERE = "lapses.toml"
"""The file's name, on the desk."""
SHOWN = 3
"""As many as are shown before the copy-edit."""
CLEAN_DRAFTS = 3
"""A lapse has died out when it stands in none of so many drafts written since it was last seen."""


def read_lapses(text: str) -> tuple[tuple[Lapse, ...], tuple[Problem, ...]]:
    r"""The lapses, the most frequent first, with a problem for each that cannot be read.

    >>> [one.name for one in read_lapses('[[lapses]]\nname = "wich"\nwrong = "wich"\n')[0]]
    ['wich']
    """
    try:
        records = tomllib.loads(text).get("lapses", [])
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        return (), (Problem(WHERE, f"it is not TOML ({error})", "mend it; until then no lapse in it is looked for"),)
    if not isinstance(records, list):
        return (), (Problem(f"{WHERE}, lapses", "they are no list", "head each with [[lapses]]"),)
    lapses: dict[str, Lapse] = {}
    problems = []
    for number, record in enumerate(records, 1):
        lapse = _read(record)
        if lapse is None:
            mend = 'write name = "…" and wrong = "…" or check = "…"; it is left out now'
            problems.append(Problem(f"{WHERE}, lapse {number}", "it does not say what to look for", mend))
        else:
            lapses[lapse.name] = lapse
    return tuple(sorted(lapses.values(), key=lambda one: (-one.count, one.name))), tuple(problems)


def _read(record: object) -> Lapse | None:
    if not isinstance(record, dict):
        return None
    said = {key: str(record.get(key, "")) for key in ("name", "wrong", "right", "check", "last", "example")}
    count = record.get("count", 1)
    said["name"] = said["name"] or said["wrong"] or said["check"]
    if not (said["wrong"] or said["check"]) or not isinstance(count, int):
        return None
    return Lapse(**said, count=max(0, count))


def note_lapse(text: str, lapse: Lapse) -> str:
    r"""The file's text with the lapse: one more where it is there already, with the newer day and example.

    Raises:
        FileUnreadable: The file is no TOML, or its lapses are no list, and must be mended first.

    >>> once = note_lapse("", Lapse("wich", wrong="wich", right="which", last="2027-01-18"))
    >>> read_lapses(note_lapse(once, Lapse("wich", wrong="wich", last="2027-02-01")))[0][0].count
    2
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    lapses = list_tables(document, "lapses", WHERE)
    before = next((one for one in read_lapses(text)[0] if same_lapse(one, lapse)), None)
    record = tomlkit.table()
    if before is not None:
        record = next(each for each in lapses if _read(each) == before)
        lapse = replace(lapse, name=before.name, count=before.count + lapse.count)
    for key in ("name", "wrong", "right", "check", "count", "last", "example"):
        value = getattr(lapse, key)
        if value not in ("", None):
            record[key] = value
    if before is None:
        lapses.append(record)
    return write_toml(document)


def drop_lapse(text: str, name: str) -> str:
    """The file's text without the lapse of that name.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.
    """
    document = parse_toml(text, WHERE)
    lapses = list_tables(document, "lapses", WHERE)
    for number in reversed(range(len(lapses))):
        lapse = _read(lapses[number])
        if lapse is not None and lapse.name == name:
            del lapses[number]
    return write_toml(document)


def same_lapse(one: Lapse, other: Lapse) -> bool:
    """Whether both are one: the same words, or, where there are none, the same check.

    >>> same_lapse(Lapse("a", wrong="Wich"), Lapse("b", wrong="wich", check="confused-words"))
    True
    """
    if one.wrong or other.wrong:
        return one.wrong.casefold() == other.wrong.casefold()
    return one.check == other.check


def find_lapse(paragraphs: Sequence[OwnParagraph], lapse: Lapse) -> Iterator[Span]:
    """The places in the draft where the words of a lapse stand, whole, in the writer's own prose.

    >>> [span.start for span in find_lapse([OwnParagraph("Wich of which, wich?", 10, ())], Lapse("", wrong="wich"))]
    [10, 25]
    """
    if not lapse.wrong:
        return
    parts = (re.escape(part).replace("'", "['’]") for part in lapse.wrong.replace("’", "'").split())
    wanted = r"\s+".join(parts)
    pattern = re.compile(rf"(?<![\w'’-]){wanted}(?![\w'’-])", re.IGNORECASE)
    for paragraph in paragraphs:
        for found in pattern.finditer(paragraph.text):
            yield Span(*found.span()).shifted(paragraph.start)


def read_learnt(text: str) -> frozenset[tuple[str, str]]:
    """The remarks that were learnt from already: the paper's folder, and what was said."""
    try:
        records = tomllib.loads(text).get("learnt", [])
    except (tomllib.TOMLDecodeError, RecursionError):
        return frozenset()
    kept = records if isinstance(records, list) else []
    return frozenset((str(one.get("paper")), str(one.get("said"))) for one in kept if isinstance(one, dict))


def note_learnt(text: str, paper: str, said: str) -> str:
    r"""The file's text with a remark that was learnt from, so that it is not counted twice.

    Raises:
        FileUnreadable: The file is no TOML, or must be mended first.

    >>> read_learnt(note_learnt("", "salt", "“then” should be “than”"))
    frozenset({('salt', '“then” should be “than”')})
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    record = tomlkit.table()
    record["paper"], record["said"] = paper, said
    list_tables(document, "learnt", WHERE).append(record)
    return write_toml(document)


def has_died_out(lapse: Lapse, later_drafts: Sequence[bool]) -> bool:
    """Whether a lapse that was seen twice or more stands in none of the last drafts written since.

    Args:
        lapse: The lapse.
        later_drafts: Of each draft written since it was last seen, the newest first, whether it stands there.

    >>> has_died_out(Lapse("wich", count=4), [False, False, False, True])
    True
    """
    newest = later_drafts[:CLEAN_DRAFTS]
    return lapse.count > 1 and len(newest) == CLEAN_DRAFTS and not any(newest)
