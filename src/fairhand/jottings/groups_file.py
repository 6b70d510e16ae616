"""``groups.toml``: the jottings as the writer put them, each by its words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from fairhand.jottings.arrangement import Arrangement, KeptGroups
from fairhand.jottings.jotting import Jotting
from fairhand.language.toml_text import parse_toml, write_toml
from fairhand.model.problem import Problem

if TYPE_CHECKING:
    from tomlkit.items import Array

WHERE = "groups.toml"


def read_groups(table: Mapping[str, object]) -> tuple[KeptGroups, tuple[Problem, ...]]:
    """The groups that the file's table holds, with a problem for each record that is none.

    >>> read_groups({"groups": [{"phrase": "the slips", "jottings": ["who counted?"]}], "apart": ["fog"]})
    (KeptGroups(groups=(('the slips', ('who counted?',)),), apart=('fog',)), ())
    """
    problems = []
    groups = []
    records = table.get("groups", [])
    for number, record in enumerate(records if isinstance(records, list) else [records], 1):
        words = _read_words(record.get("jottings")) if isinstance(record, Mapping) else ()
        if words:
            groups.append((str(record.get("phrase") or words[0]), words))
        else:
            problems.append(Problem(f"{WHERE}, group {number}", "it lists no jottings", "mend it; it is left out now"))
    return KeptGroups(tuple(groups), _read_words(table.get("apart"))), tuple(problems)


def _read_words(value: object) -> tuple[str, ...]:
    words = value if isinstance(value, list) else ()
    return tuple(" ".join(one.split()) for one in words if isinstance(one, str) and one.strip())


def write_groups(text: str, arrangement: Arrangement) -> str:
    r"""The file's text with the jottings as they are arranged; what else it holds stays.

    Raises:
        FileUnreadable: It is no TOML, and must be mended first.

    >>> write_groups("# mine\n", Arrangement())
    '# mine\napart = []\ngroups = []\n'
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    document.pop("groups", None)
    document.pop("apart", None)
    document["apart"] = _list_words(arrangement.apart)
    groups = tomlkit.aot()
    for group in arrangement.groups:
        record = tomlkit.table()
        record["phrase"] = group.phrase
        record["jottings"] = _list_words(group.jottings)
        groups.append(record)
    document["groups"] = groups if arrangement.groups else tomlkit.array()
    return write_toml(document)


def _list_words(jottings: Sequence[Jotting]) -> Array:
    """A line for each."""
    import tomlkit

    words = tomlkit.array()
    words.extend(one.words for one in jottings)
    return words.multiline(bool(jottings))
