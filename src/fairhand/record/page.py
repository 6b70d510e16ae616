"""The printed record as a web page of one file: text, picture and table, and the whole of it as data within."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape
from itertools import groupby

from fairhand.errors import FileUnreadable
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

_DATA = re.compile(r'<script type="application/json" id="record">(.*?)</script>', re.DOTALL)
_LOOK = (
    "body{max-width:40em;margin:3em auto;padding:0 1.5em;font:12pt/1.5 'Times New Roman',Tinos,serif;color:#1a1a1a;"
    "background:#fff}h1,h2,h3{font-size:1em}h1{text-align:center}h3{margin:1.2em 0 0}dl{margin:0}dt{font-style:italic}"
    "dd{margin:0 0 .4em 1.5em}table{border-collapse:collapse}td,th{text-align:right;padding:0 1.5em 0 0;"
    "font-weight:normal}"
    "th:first-child{text-align:left}caption{text-align:left;font-style:italic}code{overflow-wrap:anywhere}"
    "@media(prefers-color-scheme:dark){body{color:#ddd;background:#1b1b1b}}"
    "@media print{body{margin:0;max-width:none}dd,tr{break-inside:avoid}}"
)


def write_page(document: Document) -> bytes:
    """The page; the same document always gives the same bytes.

    >>> page = write_page(Document("Tides & <time>", "2027-02-19T15:20:00+01:00", (), ()))
    >>> b"Tides &amp; &lt;time&gt;" in page, read_page(page, "record.html").startswith('{"format"')
    (True, True)
    """
    title = escape(f"The record of “{document.title}”")
    data = write_document(document).replace("<", "\\u003c")
    head = (
        '<meta charset="utf-8"><meta name="viewport" content="width=device-width">'
        f'<meta name="color-scheme" content="light dark"><title>{title}</title><style>{_LOOK}</style>'
    )
    states = f"States: {len(document.links):,}. The last one’s hash, which binds all before it:"
    lines = [
        "<!doctype html>",
        f'<html lang="en"><head>{head}</head><body><main>',
        f"<h1>{title}</h1>",
        f"<p>{escape(sum_up(document.sittings))} Printed on {escape(say_moment(document.made))}.</p>",
        *_draw(document),
        "<h2>What was done</h2>",
        *_list(document),
        "<h2>What this shows, and what it does not</h2>",
        f"<p>{escape(SHOWS)}</p><p>{escape(SHOWS_NOT)}</p>",
        "<h2>Hashes</h2>",
        f"<p>{states} <code>{escape(document.last_hash or 'none')}</code></p>",
        f"<p>The seal of this list: <code>{document.seal}</code></p>",
        "<p>To check it on any machine: <code>fairhand record --check FILE</code></p>",
        f'</main><script type="application/json" id="record">{data}</script></body></html>',
    ]
    return ("\n".join(lines) + "\n").encode()


def read_page(data: bytes, file: str) -> str:
    """The document's JSON out of a page.

    Raises:
        FileUnreadable: There is none.
    """
    found = _DATA.search(data.decode("utf-8", "replace"))
    if found is None:
        message = f"{file}: no record is in it; choose one that was made with `fairhand record --print`"
        raise FileUnreadable(message)
    return found[1].replace("\\u003c", "<")


def without_data(data: bytes) -> str:
    """The page but for the data within it: all that a reader may come to see.

    >>> '{"format"' in without_data(write_page(Document("Tides", "2027-02-19T15:20:00+01:00", (), ())))
    False
    """
    return _DATA.sub("", data.decode("utf-8", "replace"))


def _draw(document: Document) -> Iterator[str]:
    days = list_days(document.sittings)
    if not days:
        return
    yield f"<figure>{draw_days(days)}<figcaption>{ABOVE}</figcaption></figure>"
    yield "<table><caption>Words by day</caption><thead><tr><th>Day</th><th>In</th><th>Out</th></tr></thead><tbody>"
    for day in days:
        yield f"<tr><th scope='row'>{escape(say_day(day.on))}</th><td>{day.came:,}</td><td>{day.went:,}</td></tr>"
    yield "</tbody></table>"


def _list(document: Document) -> Iterator[str]:
    hashes = {link[0]: link[8] for link in document.links}
    for day, sittings in groupby(document.sittings, key=lambda one: one.start.date()):
        yield f"<h3>{escape(say_day(day))}</h3><dl>"
        for one in sittings:
            told = " ".join(say_sitting(one))
            last = escape(hashes.get(one.states[-1], "")[:KEPT_SHORT])
            states = f"<small>({say_states(one)}, to <code>{last}</code>)</small>"
            yield f"<dt>{say_when(one)}</dt><dd>{escape(told)} {states}</dd>"
        yield "</dl>"
