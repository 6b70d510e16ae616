"""TOML that the writer may write too, changed in place: remarks, order and what is not ours stay as they are."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fairhand.errors import FileUnreadable

if TYPE_CHECKING:
    from tomlkit import TOMLDocument
    from tomlkit.items import AoT


def parse_toml(text: str, where: str) -> TOMLDocument:
    """A file's text, to be changed in place.

    Args:
        text: The text.
        where: The file's name.

    Raises:
        FileUnreadable: It is no TOML, and must be mended first.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        return tomlkit.parse(text)
    except TOMLKitError as error:
        message = f"{where}: it is not TOML ({error}); nothing was written: mend it first"
        raise FileUnreadable(message) from error


def list_tables(document: TOMLDocument, name: str, where: str) -> AoT:
    """The tables of that name as the document holds them, to be changed in place; an empty list where it has none.

    Args:
        document: The document.
        name: The list's name, ``readers`` for tables headed ``[[readers]]``.
        where: The file's name.

    Raises:
        FileUnreadable: They are no list of tables.
    """
    import tomlkit
    from tomlkit.items import AoT

    if not document.get(name):
        document[name] = tomlkit.aot()  # an empty list may be written in either way
    found = document[name]
    if not isinstance(found, AoT):
        message = f"{where}: its {name} are no list of tables; nothing was written: head each with [[{name}]]"
        raise FileUnreadable(message)
    return found


def write_toml(document: TOMLDocument) -> str:
    r"""The document as a file's text; a list of tables that is empty leaves nothing behind.

    >>> document = parse_toml("# mine\nlapses = []\n", "lapses.toml")
    >>> list_tables(document, "lapses", "lapses.toml").append({"name": "wich"})
    >>> write_toml(document)
    '# mine\n[[lapses]]\nname = "wich"\n'
    >>> del list_tables(document, "lapses", "lapses.toml")[0]
    >>> write_toml(document)
    '# mine\n'
    """
    import tomlkit
    from tomlkit.items import AoT

    for name in [name for name, value in document.items() if isinstance(value, AoT) and not value]:
        document.pop(name)
    return tomlkit.dumps(document).lstrip("\n")
