"""The fair copy without the writer's name, where the paper is marked by somebody who may not know it."""

from __future__ import annotations

from dataclasses import replace

from fairhand.fair_copy.document import FairCopy, FrontMatter


def hide_name(copy: FairCopy, name: str, instead: str = "") -> FairCopy:
    """The same paper, something else in place of the name on its first page, in its running head and its properties.

    The writer's own sentences stay as they are: where they name the writer, that is for the writer to mend.

    Args:
        copy: The fair copy.
        name: The writer's name.
        instead: What stands in its place, a candidate's number; nothing where it is empty.

    >>> from fairhand.fair_copy.document import Layout
    >>> copy = FairCopy(FrontMatter(author="Ida Vance", lines=("Ida Vance", "History 2")), (), (), Layout("MLA 9"))
    >>> hidden = hide_name(copy, "Ida Vance", "Candidate 0421").front
    >>> hidden.author, hidden.lines
    ('Candidate 0421', ('Candidate 0421', 'History 2'))
    """
    author = copy.front.author
    known = {" ".join(one.split()).casefold() for one in (name, author) if one.strip()}
    lines = tuple(
        instead if any(one in " ".join(line.split()).casefold() for one in known) else line for line in copy.front.lines
    )
    front: FrontMatter = replace(copy.front, author=instead, lines=tuple(line for line in lines if line))
    return replace(copy, front=front)
