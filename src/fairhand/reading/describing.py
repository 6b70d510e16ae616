"""What a file says of the work that it holds, whatever kind of file it is.

Nothing is made up, and each thing is told with the place that it was found in.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from fairhand.errors import InputError
from fairhand.model.description import Description, Field, Said
from fairhand.reading.kinds import FileKind, kind_of

_LONGEST = 600
"""Code points of the longest title or name that is taken for one."""
_MOST_NAMES = 200
_NAMED_BY_FILE = "the file’s name"


def describe_file(data: bytes, file: str, texts: Sequence[str] = (), known: Iterable[Said] = ()) -> Description:
    r"""What the file says of its work; at least a title, from its name where nothing better is in it.

    Args:
        data: The file's bytes.
        file: Its name.
        texts: The text of its leaves, where they were read already.
        known: What is known of the work from elsewhere, and is trusted before the file.

    Raises:
        InputError: The file is empty, or of a kind that is not read.

    >>> describe_file(b"The salt road\\n", "salt-road_notes.txt").fields["title"]
    Field(value='salt road notes', from_='the file’s name')
    """
    kind = kind_of(data, file)
    return gather((*known, *_said_within(kind, data, file, texts), ("title", _title_of_name(file), _NAMED_BY_FILE)))


def _said_within(kind: FileKind, data: bytes, file: str, texts: Sequence[str]) -> Iterator[Said]:
    """What is said within the file, by the reader of its kind, best first; what is broken there is passed over."""
    # Each reader is loaded with its libraries when the first file of its kind comes up.
    try:
        match kind:
            case "pdf":
                from fairhand.reading.pdf_description import say_of_pdf

                yield from say_of_pdf(data, texts)
            case "html":
                from fairhand.reading.html_description import say_of_html

                yield from say_of_html(data, file)
            case "epub":
                from fairhand.reading.package_description import say_of_epub

                yield from say_of_epub(data, file)
            case "docx" | "odt":
                from fairhand.reading.package_description import say_of_word_file

                yield from say_of_word_file(data, file)
            case "text":
                from fairhand.reading.first_pages import say_of_first_pages

                yield from say_of_first_pages(texts)
            case "picture":
                pass
    except InputError:
        return


def gather(said: Iterable[Said]) -> Description:
    """The first thing said of each variable, and what was said otherwise later.

    >>> found = gather([("title", "Salt", "the first page"), ("title", "salt ", "a"), ("title", "Peat", "its name")])
    >>> found.fields["title"].value, found.others
    ('Salt', (('title', Field(value='Peat', from_='its name')),))
    """
    fields: dict[str, Field] = {}
    others: dict[tuple[str, str], tuple[str, Field]] = {}
    for name, value, where in said:
        found = _tidy(value)
        if not found:
            continue
        held = Field(found, where)
        first = fields.setdefault(name, held)
        if _bare(first) != _bare(held):
            others.setdefault((name, _bare(held)), (name, held))
    return Description(fields, tuple(others.values()))


def _tidy(value: str | Sequence[str]) -> str | tuple[str, ...]:
    if isinstance(value, str):
        return " ".join(value.split())[:_LONGEST]
    names = (" ".join(one.split())[:_LONGEST].strip(" ,;") for one in value)
    return tuple(dict.fromkeys(filter(None, names)))[:_MOST_NAMES]


def _bare(field: Field) -> str:
    """What is said, without case and punctuation."""
    return "".join(letter for letter in field.words.casefold() if letter.isalnum())


def _title_of_name(file: str) -> str:
    """A file's name as a title.

    >>> _title_of_name("inbox/Salt_roads-of_the_north.v2.pdf")
    'Salt roads of the north.v2'
    """
    stem = file.replace("\\", "/").rpartition("/")[2].rpartition(".")[0] or file
    plain = stem.replace("_", " ")
    return plain if " " in plain and "-" not in stem.replace("_", "") else plain.replace("-", " ")
