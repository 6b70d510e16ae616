"""Set citations and references as the manual has them, where no record and no style file can say it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import zip_longest

from fairhand.citing.engine_text import join_text
from fairhand.citing.entries import text_of
from fairhand.citing.records import Item
from fairhand.citing.requesting import Place
from fairhand.citing.style_rules import StyleRules
from fairhand.model.entry import Name
from fairhand.model.inline import Inline, Link, Note, Styled, Text, plain

MONTHS = "January February March April May June July August September October November December".split(" ")
SEASONS = ("Spring", "Summer", "Autumn", "Winter")
YEAR_FIRST = re.compile(
    r"^\((?:\[?\d{3,4}\]?[a-z]?(?:/\[?\d{3,4}\]?[a-z]?)?|n\.d\.(?:-?[a-z])?|in press(?:-[a-z])?)(?:,\s*|:\s*|\s+)(?=\S)"
)
LED = re.compile(r"^\([,:;]\s*")
"""The mark that parts a place from a name which is left out."""
DASH_OF_PLACE = re.compile(r"–(?=[^\s“”]*(?:[;,)]|$))")
PROTOCOL = re.compile(r"^https?://(?!(?:dx\.)?doi\.org/)")

Inlines = tuple[Inline, ...]


def finish_citation(
    inlines: Inlines, place: Place, rule: StyleRules, namesakes: Mapping[str, Name], bodies: Mapping[str, str]
) -> Inlines:
    """A citation as it stands in the fair copy; empty where the style wants nothing there.

    Args:
        inlines: the engine's citation.
        place: where it belongs.
        rule: the style's rules.
        namesakes: by entry id, the first author of a work whose surname another work's first author bears too.
        bodies: by entry id, the body that is its author.
    """
    for entry, short in place.short_names.items():
        if entry in bodies:
            inlines = _with_short_name(inlines, bodies[entry], short)
    note = inlines[0] if len(inlines) == 1 else None
    if isinstance(note, Note):
        children = _with_given_names(note.children, place, namesakes)
        inlines = _within_note(children, place) if place.in_note else (Note(children),)
    elif rule.in_text == "numeric" and not place.superscript and plain(inlines)[:1] not in "[(":
        inlines = (Text("("), *inlines, Text(")"))
    if place.part == "locator":
        inlines = _map_first(inlines, lambda text: YEAR_FIRST.sub("(", text))
    inlines = _map_first(inlines, lambda text: LED.sub("(", text))
    if rule.manual == "mla":
        inlines = tuple(Text(DASH_OF_PLACE.sub("-", one.text)) if isinstance(one, Text) else one for one in inlines)
    return inlines


def finish_reference(inlines: Inlines, item: Item, rule: StyleRules) -> Inlines:
    """A reference as it stands in the list.

    Args:
        inlines: the engine's reference.
        item: the record that was rendered.
        rule: the style's rules.
    """
    if rule.manual == "mla":
        inlines = _with_address_last(_without_protocol(inlines), item)
    if rule.manual == "apa":
        inlines = _with_volume_slanted(_without_retrieved(inlines))
    if rule.month_of_issue:
        inlines = _with_month(inlines, item)
    if rule.manual == "chicago" and rule.in_text == "author-date":
        inlines = _without_second_date(inlines, item)
    if rule.manual == "chicago":
        inlines = _with_database(inlines, item)
    return join_text(_tidied(inlines))


def _with_short_name(inlines: Inlines, whole: str, short: str) -> Inlines:
    """A body under the name that the draft gives it."""
    return tuple(Text(one.text.replace(whole, short)) if isinstance(one, Text) else one for one in inlines)


def _without_protocol(inlines: Inlines) -> Inlines:
    """An address loses its *https://*, a DOI keeps it. **Source**: MLA 9, 5.93 and 5.95."""
    return tuple(
        replace(one, children=(Text(PROTOCOL.sub("", plain(one.children))),)) if isinstance(one, Link) else one
        for one in inlines
    )


def _with_address_last(inlines: Inlines, item: Item) -> Inlines:
    """A thesis's address stands after its school. **Source**: MLA 9, appendix 2."""
    found = [one for one in inlines if isinstance(one, Link)]
    if item["type"] != "thesis" or not found:
        return inlines
    at = inlines.index(found[0])
    before, after = inlines[at - 1], inlines[at + 1 : at + 2]
    if not (isinstance(before, Text) and before.text.endswith(", ") and after and isinstance(after[0], Text)):
        return inlines
    school = after[0].text.removesuffix(".")
    return (*inlines[: at - 1], Text(before.text[:-2] + school + ", "), found[0], Text("."), *inlines[at + 2 :])


def _without_retrieved(inlines: Inlines) -> Inlines:
    """*Retrieved* stands only with a date of retrieval. **Source**: APA 7, 9.16."""
    return tuple(
        Text(one.text.removesuffix("Retrieved ")) if isinstance(one, Text) and isinstance(after, Link) else one
        for one, after in zip_longest(inlines, inlines[1:])
    )


def _with_volume_slanted(inlines: Inlines) -> Inlines:
    """A periodical's title, comma and volume are slanted as one. **Source**: APA 7, 9.25."""
    out: list[Inline] = []
    for one in inlines:
        if _is_italic(one) and len(out) > 1 and out[-1] == Text(", ") and _is_italic(out[-2]):
            comma, title = out.pop(), out.pop()
            out.append(Styled("italic", join_text((*_children(title), comma, *_children(one)))))
        else:
            out.append(one)
    return tuple(out)


def _with_month(inlines: Inlines, item: Item) -> Inlines:
    """A journal's issue bears its month or season: *111, no. 2 (April): 165–76*. **Source**: CMOS 17, 15.48."""
    named = _month_of(item)
    volume, issue = text_of(item, "volume"), text_of(item, "issue")
    if item["type"] != "article-journal" or not (named and volume and issue):
        return inlines
    short, full = f" {volume} ({issue})", f" {volume}, no. {issue} ({named})"
    return tuple(Text(one.text.replace(short, full, 1)) if isinstance(one, Text) else one for one in inlines)


def _without_second_date(inlines: Inlines, item: Item) -> Inlines:
    """The year of the first publication stands before the year alone: *(1610) 1995*. **Source**: CMOS 17, 15.40."""
    original = item.get("original-date")
    if not isinstance(original, dict) or not original.get("date-parts"):
        return inlines
    again = re.compile(rf"(?<=[.\s]) ?{original['date-parts'][0][0]}; ")
    return tuple(Text(again.sub(" ", one.text)) if isinstance(one, Text) else one for one in inlines)


def _with_database(inlines: Inlines, item: Item) -> Inlines:
    """An article without address ends in the database that it was read in. **Source**: CMOS 17, 14.11 and 15.9."""
    database = text_of(item, "source")
    located = any(text_of(item, key) for key in ("DOI", "URL"))
    if located or not database or not str(item["type"]).startswith("article"):
        return inlines
    return inlines if database in plain(inlines) else (*inlines, Text(f" {database}."))


def _month_of(item: Item) -> str:
    issued = item.get("issued")
    if not isinstance(issued, dict) or not issued.get("date-parts"):
        return ""
    if issued.get("season"):
        return SEASONS[int(issued["season"]) - 1]
    parts = issued["date-parts"][0]
    return MONTHS[parts[1] - 1] if len(parts) == 2 and 1 <= parts[1] <= len(MONTHS) else ""


def _within_note(inlines: Inlines, place: Place) -> Inlines:
    """The text of a note that runs on within one of the writer's own, its full stop left to the sentence."""
    if place.runs_on:
        inlines = _without_stop(inlines)
    if place.form == "parenthetical":
        return (Text("("), *inlines, Text(")"))
    return (Text(", "), *inlines) if place.form == "narrative" else inlines


def _with_given_names(inlines: Inlines, place: Place, namesakes: Mapping[str, Name]) -> Inlines:
    """A later note names in full an author whose surname another bears too. **Source**: CMOS 17, 14.32."""
    at, words = 0, [one.text if isinstance(one, Text) else "\0" for one in inlines]
    for one, later in zip(place.works, place.later, strict=True):
        author = namesakes.get(str(one.entry))
        if author is None:
            continue
        surname = re.compile(rf"(?<![\w-]){re.escape(author.surname)}(?![\w-])")
        while at < len(words) and not surname.search(words[at]):
            at += 1
        if at < len(words) and later:
            words[at] = surname.sub(f"{author.given} {author.surname}", words[at], count=1)
    return tuple(Text(word) if isinstance(one, Text) else one for one, word in zip(inlines, words, strict=True))


def _tidied(inlines: Sequence[Inline]) -> Inlines:
    """Ends without a stray space."""
    out = list(inlines)
    if out and isinstance(out[-1], Text):
        out[-1] = Text(out[-1].text.rstrip())
    return tuple(out)


def _without_stop(inlines: Inlines) -> Inlines:
    last = inlines[-1] if inlines else None
    return (*inlines[:-1], Text(last.text.removesuffix("."))) if isinstance(last, Text) else inlines


def _map_first(inlines: Inlines, change: Callable[[str], str]) -> Inlines:
    first = inlines[0] if inlines else None
    return (Text(change(first.text)), *inlines[1:]) if isinstance(first, Text) else inlines


def _is_italic(inline: Inline) -> bool:
    return isinstance(inline, Styled) and inline.style == "italic"


def _children(inline: Inline) -> Inlines:
    return inline.children if isinstance(inline, Styled) else ()
