"""``support.toml``: which pairs of sources the writer holds to be independent, and which not.

What the program changes it changes in place: remarks, and keys that it does not know, stay as they stand.
"""

from __future__ import annotations

import tomllib

from fairhand.language.toml_text import list_tables, parse_toml, write_toml
from fairhand.model.problem import Problem
from fairhand.model.ruling import Ruling

WHERE = "support.toml"


def read_rulings(text: str) -> tuple[tuple[Ruling, ...], tuple[Problem, ...]]:
    r"""The writer's rulings, the last word on a pair alone, with a problem for each that cannot be read.

    >>> read_rulings('[[pairs]]\nsources = ["lind", "marsh"]\nindependent = true\n')[0]
    (Ruling(first='lind', second='marsh', independent=True, why=''),)
    """
    try:
        records = tomllib.loads(text).get("pairs", [])
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        return (), (Problem(WHERE, f"it is not TOML ({error})", "mend it; until then no ruling in it holds"),)
    if not isinstance(records, list):
        return (), (Problem(f"{WHERE}, pairs", "they are no list", "head each with [[pairs]]"),)
    rulings: dict[frozenset[str], Ruling] = {}
    problems = []
    for number, record in enumerate(records, 1):
        ruling = _read(record)
        if ruling is None:
            mend = 'write sources = ["one", "another"] and independent = true or false; it is left out now'
            problems.append(Problem(f"{WHERE}, pair {number}", "it does not say which two sources, or what", mend))
        else:
            rulings[ruling.pair] = ruling
    return tuple(rulings.values()), tuple(problems)


def _read(record: object) -> Ruling | None:
    if not isinstance(record, dict):
        return None
    sources, independent, why = record.get("sources"), record.get("independent"), record.get("why", "")
    if not isinstance(sources, list) or not isinstance(independent, bool):
        return None
    named = [one for one in sources if isinstance(one, str)]
    if len(set(named)) != 2 or len(sources) != 2:
        return None
    return Ruling(named[0], named[1], independent, why if isinstance(why, str) else "")


def put_ruling(text: str, ruling: Ruling) -> str:
    r"""The file's text with the ruling, in place of what was said of the pair before.

    Raises:
        FileUnreadable: The file is no TOML, or its pairs are no list, and must be mended first.

    >>> put_ruling("", Ruling("lind", "marsh", independent=False, why="one survey"))
    '[[pairs]]\nsources = ["lind", "marsh"]\nindependent = false\nwhy = "one survey"\n'
    """
    import tomlkit

    document = parse_toml(drop_ruling(text, ruling.pair), WHERE)
    pairs = list_tables(document, "pairs", WHERE)
    record = tomlkit.table()
    record["sources"] = [ruling.first, ruling.second]
    record["independent"] = ruling.independent
    if ruling.why:
        record["why"] = ruling.why
    pairs.append(record)
    return write_toml(document)


def drop_ruling(text: str, pair: frozenset[str]) -> str:
    """The file's text without what was said of the pair.

    Raises:
        FileUnreadable: The file is no TOML, and must be mended first.
    """
    from tomlkit.items import AoT

    document = parse_toml(text, WHERE)
    pairs = document.get("pairs")
    if not isinstance(pairs, AoT):
        return text
    for number in reversed(range(len(pairs))):
        ruling = _read(pairs[number].unwrap())
        if ruling is not None and ruling.pair == pair:
            del pairs[number]
    return write_toml(document)
