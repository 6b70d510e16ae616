"""How a writer cites, by style: the names, the parenthesis, and sentences that hold a quotation."""

from __future__ import annotations

import random
from dataclasses import dataclass

from fairhand.model.entry import Entry

STYLES = ("mla-9", "apa-7", "chicago-author-date-17", "harvard", "chicago-notes-17")
"""Chicago's notes are written as author and date in the draft, and become notes in the fair copy."""
_SAYS = ("writes", "argues", "notes", "observes", "maintains", "reports", "explains")


@dataclass(frozen=True, slots=True)
class Form:
    """How one style cites one source."""

    style: str
    who: str
    """The authors as a sentence names them."""
    briefly: str
    """The authors, or the title, as a parenthesis has them."""
    year: str
    """With its letter, or *n.d.*; empty in a style of author and page."""

    def place(self, pages: str) -> str:
        """A page as the style writes it."""
        if not pages or self.style.startswith(("mla", "chicago")):
            return pages
        return f"{'pp' if '–' in pages else 'p'}. {pages}"

    def parenthesis(self, pages: str = "", year: str | None = None) -> str:
        """The whole citation in brackets."""
        year = self.year if year is None else year
        comma = " " if self.style.startswith(("mla", "chicago")) else ", "
        who = f"{self.briefly}{comma if year else ''}{year}"
        gap = " " if not year and self.style == "mla-9" else ", "
        return f"({who}{gap if pages else ''}{self.place(pages)})"

    def narrative(self, pages: str = "", year: str | None = None) -> tuple[str, str]:
        """The authors in the sentence with what stands after them, and what stands at the sentence's end."""
        year = self.year if year is None else year
        if self.style == "mla-9" or not year:
            return self.who, f" ({self.place(pages)})" if pages else ""
        if self.style.startswith("chicago"):
            return f"{self.who} ({year}{', ' if pages else ''}{pages})", ""
        return f"{self.who} ({year})", f" ({self.place(pages)})" if pages else ""

    def at_once(self, pages: str = "") -> str:
        """The authors with year and page in one parenthesis, after the words quoted."""
        if self.style == "mla-9" or not self.year:
            return "".join(self.narrative(pages))
        return f"{self.who} ({self.year}{', ' if pages else ''}{self.place(pages)})"

    def after_block(self, pages: str) -> str:
        """What stands after a block whose author has been named."""
        return f"({self.place(pages)})" if pages else ""


def form_of(entry: Entry, style: str, initial: str = "", letter: str = "") -> Form:
    """How ``style`` cites ``entry``; with an initial or a letter where another work would fit as well."""
    names = [name.surname for name in entry.authors or entry.editors]
    year = "" if style == "mla-9" else f"{entry.issued.year}{letter}" if entry.issued and entry.issued.year else "n.d."
    if not names:
        title = entry.title_short or entry.title
        titled = f"*{title}*" if entry.type == "book" else f"“{title}”"
        return Form(style, titled, titled, year)
    names[0] = f"{initial}. {names[0]}" if initial else names[0]
    if len(names) > 2:
        return Form(style, f"{names[0]} et al.", f"{names[0]} et al.", year)
    return Form(style, " and ".join(names), (" & " if style == "apa-7" else " and ").join(names), year)


def quoting_sentence(form: Form, words: str, pages: str, rng: random.Random) -> str:
    """A sentence, or a block, that quotes and cites."""
    says = rng.choice(_SAYS)
    who, after = form.narrative(pages)
    paren = form.parenthesis(pages)
    bare = words.rstrip(",;:")
    ends = bare[-1] in "?!"
    match rng.randrange(7):
        case 0:
            return f"{who} {says} that “{_closed(bare, after)}"
        case 1:
            return f"The matter can be put in few words: “{bare}” {paren}."
        case 2:
            return f"“{_opened(bare)}{'' if ends else ','}” {says} {form.at_once(pages)}."
        case 3:
            return f"As {who} {says}, “{_closed(bare, after)}"
        case 4:
            return f"Much depends on one remark, that “{bare}” {paren}, and it is seldom read."
        case 5:
            block = f"{_opened(bare)}{'' if ends else '.'} {form.after_block(pages)}".strip()
            return f"{form.narrative()[0]} {says} at some length:\n\n> {block}"
        case _:
            return f"It has been said before: “{bare}” {paren}."


def bare_sentence(words: str, rng: random.Random) -> str:
    """A sentence that quotes and says nothing of where from."""
    bare = words.rstrip(",;:")
    ends = bare[-1] in "?!"
    match rng.randrange(4):
        case 0:
            return f"The matter can be put in few words: “{_closed(bare, '')}"
        case 1:
            return f"Much depends on one remark, that “{bare}{'' if ends else ','}” and it is seldom read."
        case 2:
            return f"It has been said before: “{_closed(bare, '')}"
        case _:
            return f"“{_opened(bare)}” is how it has been put, and rightly."


def interrupted_sentence(form: Form, first: str, second: str, pages: str) -> str:
    """A sentence that breaks into what it quotes to say who speaks."""
    who, after = form.narrative(pages)
    return f"“{_opened(first)},” {who} says, “{_closed(second, after)}"


def _opened(words: str) -> str:
    """Words as they stand at the head of a sentence, a changed capital in brackets."""
    return f"[{words[0].upper()}]{words[1:]}" if words[0].islower() else words


def _closed(words: str, after: str) -> str:
    """The quotation's end and the sentence's: the point stands within the marks where no citation follows."""
    if after:
        return f"{words}”{after}."
    return f"{words}{'' if words[-1] in '?!' else '.'}”"
