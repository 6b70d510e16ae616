"""The printed record as pages: typst source, the whole of it as data attached to the PDF."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from itertools import groupby

from fairhand.fair_copy.typesetting import string
from fairhand.model.request import TypesetJob
from fairhand.record.days import draw_days, list_days
from fairhand.record.document import Document, write_document
from fairhand.record.telling import (
    ABOVE,
    KEPT_SHORT,
    SHOWS,
    SHOWS_NOT,
    say_day,
    say_moment,
    say_sitting,
    say_states,
    say_when,
    sum_up,
)

ATTACHED = "record.json"
"""What the attached data are called."""
_PICTURE = "days"


def to_typst(document: Document) -> TypesetJob:
    """The record's pages; the same document always gives the same ones.

    >>> job = to_typst(Document("Tides", "2027-02-19T15:20:00+01:00", (), ()))
    >>> "Nothing was saved yet." in job.source, job.files
    (True, {})
    """
    picture = draw_days(list_days(document.sittings)).replace("currentColor", "#1a1a1a")
    title = f"The record of “{document.title}”"
    attached = (
        f'#pdf.attach("{ATTACHED}", bytes({_literal(write_document(document))}), relationship: "data", '
        'mime-type: "application/json", description: "The record as data")'
    )
    source = "\n".join(
        (
            f"#set document(title: {string(title)}, date: none)",
            '#set page(paper: "a4", margin: 2.5cm, numbering: "1")',
            '#set text(font: "Tinos", size: 11pt, lang: "en")',
            "#set par(leading: 0.7em)",
            "#show heading: set text(size: 11pt)",
            '#show raw: set text(font: "Cousine", size: 9pt)',
            attached,
            f"#align(center)[#heading(level: 1, outlined: false)[#{string(title)}]]",
            _paragraph(f"{sum_up(document.sittings)} Printed on {say_moment(document.made)}."),
            *_draw(document),
            _heading("What was done"),
            *_list(document),
            _heading("What this shows, and what it does not"),
            _paragraph(SHOWS),
            _paragraph(SHOWS_NOT),
            _heading("Hashes"),
            _paragraph(f"States: {len(document.links):,}. The last one’s hash, which binds all before it:"),
            f"#raw({string(document.last_hash or 'none')})\n",
            _paragraph("The seal of this list:"),
            f"#raw({string(document.seal)})\n",
            _paragraph("To check it on any machine: fairhand record --check FILE"),
        )
    )
    return TypesetJob(source + "\n", {_PICTURE: picture.encode()} if picture else {}, _dated(document.made))


def _dated(made: str) -> dt.datetime | None:
    try:
        return dt.datetime.fromisoformat(made).replace(microsecond=0)
    except ValueError:
        return None


def _literal(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _paragraph(text: str) -> str:
    return f"#{string(text)}\n"


def _heading(text: str) -> str:
    return f"#heading(level: 2)[#{string(text)}]"


def _draw(document: Document) -> Iterator[str]:
    days = list_days(document.sittings)
    if not days:
        return
    said = f"Words by day, from {say_day(days[0].on)} to {say_day(days[-1].on)}: the table has each day."
    yield f'#image("{_PICTURE}", width: 100%, alt: {string(said)})'
    yield _paragraph(ABOVE)
    cells = ", ".join(
        f"[#{string(say_day(day.on))}], [#{string(f'{day.came:,}')}], [#{string(f'{day.went:,}')}]" for day in days
    )
    yield (
        "#table(columns: 3, align: (left, right, right), stroke: none, inset: (x: 6pt, y: 2pt), "
        f"table.header([Day], [Words in], [Words out]), {cells})"
    )


def _list(document: Document) -> Iterator[str]:
    hashes = {link[0]: link[8] for link in document.links}
    for day, sittings in groupby(document.sittings, key=lambda one: one.start.date()):
        yield f"#heading(level: 3)[#{string(say_day(day))}]"
        for one in sittings:
            told = f"{say_when(one)}. {' '.join(say_sitting(one))}"
            last = hashes.get(one.states[-1], "")[:KEPT_SHORT]
            words = f"#{string(f'{told} ({say_states(one)}, to ')}#raw({string(last)}))"
            yield f"#pad(left: 1em)[#par(hanging-indent: 1em)[{words}]]"
