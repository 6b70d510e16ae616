"""What a proof has beyond the fair copy: a last leaf with the marks to be made on it, and what its reader fills in.

**Source**: the marks are those of BS 5261-2 and ISO 5776, forms from memory.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from fairhand.model.request import TypesetJob
from fairhand.model.sign_forms import SIGN_FORMS

_IN_TEXT: Mapping[str, tuple[str, str]] = {
    "delete": ("#strike[very] cold", "Take it out"),
    "substitute": ("they #strike[recieve] it", "Put this in its place"),
    "insert": ("part#caret the way", "Put this in"),
    "transpose": ("we #turned[only is] it", "The other way round"),
    "close-up": ("#joined[news paper]", "No space here"),
    "space": ("a#bar[]lot", "A space here"),
    "new-paragraph": ("It ended. ⌐Later", "A new paragraph"),
    "run-on": ("It ended. ↩ Later", "No new paragraph"),
    "italic": ("the #underline[Courier]", "In italic"),
    "upright": ("the #underline[_quay_]", "Upright, not italic"),
    "bold": ("#waved[Note]", "In bold"),
    "capitals": ("in #thrice[v]elden", "A capital"),
    "lower-case": ("the #ringed[Q]uay", "No capital"),
    "stet": ("#dotted[as it was]", "Let it stand"),
    "query": ("#ringed[in 1931]", "Is it so? Ask"),
}
"""How each mark is made in the text, in typst, and what it asks."""
_MATTER: Mapping[str, str] = {"substitute": "receive", "insert": "of"}
"""The new matter that an example has in the margin."""

_FORMS = """
#let pencil = 0.7pt + luma(30%)
#let sign(name, says) = box(baseline: 20%, image("sign-" + name, alt: says, height: 11pt))
#let caret = box(width: 0pt, place(dx: -4.5pt, dy: 2pt,
  box(width: 9pt, image("sign-insert", alt: "caret", width: 9pt))))
#let turned(body) = box(stroke: (top: pencil, left: pencil), outset: (top: 1pt, x: 1pt), body)
#let joined(body) = box(stroke: (top: pencil, bottom: pencil), radius: 40%, body)
#let bar(body) = box(line(angle: 90deg, length: 9pt, stroke: pencil))
#let waved(body) = context box({
  body
  place(dy: 0.5pt, box(width: measure(body).width, height: 6pt, clip: true,
    repeat(image("sign-bold", alt: "wave", height: 6pt))))
})
#let thrice(body) = underline(offset: 2pt, stroke: pencil, underline(offset: 4pt, stroke: pencil,
  underline(offset: 6pt, stroke: pencil, body)))
#let dotted(body) = underline(offset: 3pt, stroke: (paint: luma(30%), thickness: 1.4pt, dash: "dotted"), body)
#let ringed(body) = box(stroke: pencil, radius: 50%, outset: 1.5pt, body)
#let gap = box(width: 1fr, line(length: 100%, stroke: 0.4pt))
"""


def with_sheet_of_marks(job: TypesetJob) -> TypesetJob:
    """The same proof with a last leaf that shows the marks, in the text and in the margin, and what they ask."""
    rows = []
    for name, (example, asks) in _IN_TEXT.items():
        matter = f"{_MATTER[name]} " if name in _MATTER else ""
        form = "" if name == "substitute" else f'#sign("{name}", "{name}")'
        rows.append(f'[{example}], [{matter}{form}#sign("stroke", "stroke")], [{name.replace("-", " ")}], [{asks}]')
    leaf = f"""{_FORMS}
#page(header: none, footer: none)[
#set par.line(numbering: none)
#set par(first-line-indent: 0pt)
#spaced(1)[
#heading(level: 1, outlined: false)[Marks for this proof]
#v(4pt)
Mark each change twice: in the text, and in the nearer margin on the same line, from left to right, each mark ended by a
stroke. Nothing is mended while it is read. Lines are numbered anew on each page.
#v(6pt)
#grid(columns: (1fr, 1fr), column-gutter: 18pt, row-gutter: 12pt,
  [Read by #gap], [For everything, or only for #gap], [Begun #gap], [Ended #gap],
  [Last line read: page #gap line #gap], [])
#v(4pt)
#table(columns: (auto, auto, auto, 1fr), stroke: none, inset: (x: 4pt, y: 5.5pt), align: left + horizon,
  table.hline(stroke: 0.5pt), table.header([In the text], [In the margin], [Name], [What it asks]),
  table.hline(stroke: 0.5pt),
  {", ".join(rows)},
  table.hline(stroke: 0.5pt))
#v(4pt)
To bring the marks in, write one a line, by page and line: #raw("3.12 \\"recieve\\" / receive"),
#raw("3.14 \\"very\\" delete"), #raw("3.15 \\"part\\" insert of"). The page holds until another is given; a title page
without a number is 0, and so is a line without one.
]]
"""
    files = {f"sign-{name}": _draw(paths) for name, paths in SIGN_FORMS.items()}
    return replace(job, source=job.source + leaf, files={**job.files, **files})


def _draw(paths: tuple[str, ...]) -> bytes:
    """A sign as a picture."""
    strokes = "".join(f'<path d="{path}"/>' for path in paths)
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24" width="24" height="24"'
    return f'{head} fill="none" stroke="#333" stroke-width="1.7" stroke-linecap="round">{strokes}</svg>'.encode()
