"""Authors named in the writer's own sentence, which the fair copy prints as they were typed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from fairhand.citing.mention import Cite, Mention, Resolved
from fairhand.citing.style_rules import StyleRules
from fairhand.copyedit.form.citation_forms import ET_AL, authors_otherwise
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry
from fairhand.model.finding import Instead
from fairhand.model.span import Span

_AMPERSAND = re.compile(r"(?<=[^\W\d_])\.?,?\s(?P<and>&)\s(?=[^\W\d_])")


@dataclass(frozen=True, slots=True)
class Misnamed:
    """Authors that a sentence names otherwise than the style does."""

    says: str
    span: Span
    instead: Instead


def find_misnamed(
    manuscript: Manuscript, mentions: Sequence[Mention], resolved: Sequence[Resolved], entries: Mapping[str, Entry],
    rules: StyleRules,
) -> Iterator[Misnamed]:  # fmt: skip
    """The first fault of each name in a sentence: *&*, a misspelt *et al.*, all the authors, or too few.

    Only APA has *et al.* in the sentence too wherever a bracket would have it; the others leave that to the writer.

    **Source**: APA 7, 8.17; MLA 9, 6.5; Chicago 17, 15.29 and 6.41 (from memory).

    >>> from fairhand.citing.recognise import recognise
    >>> from fairhand.citing.style_rules import rules_of
    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("Okafor et al (2019) argue so.")
    >>> [one.instead.words for one in find_misnamed(draft, recognise(draft), (), {}, rules_of("apa-7"))]
    ['et al.']
    """
    works = {(one.mention, one.cite.span): one.entry for one in resolved if one.trouble is None}
    for index, mention in enumerate(mentions):
        if mention.form != "narrative" or len(mention.cites) != 1:
            continue
        cite, text = mention.cites[0], manuscript.text
        bracket = text.rfind("(", mention.span.start, mention.span.end)
        names = text[mention.span.start : bracket if bracket >= 0 else mention.span.end].rstrip()
        entry = entries.get(works.get((index, cite.span)) or "")
        if found := _et_al(names) or (entry and _other_names(names, cite, entry, entries, rules)):
            start = mention.span.start
            instead = Instead(found.instead.span.shifted(start), found.instead.words)
            yield Misnamed(found.says, found.span.shifted(start), instead)


def _et_al(names: str) -> Misnamed | None:
    """An *et al.* that is misspelt, or parted from its one name by a comma."""
    found = ET_AL.search(names)
    whole = Span(0, len(names))
    if found and found["said"].casefold() != "et al.":
        says = "“et al.” has its stop after “al”, and none after “et”."
        return Misnamed(says, whole, Instead(Span(*found.span("said")), "et al."))
    if found and found["comma"] and "," not in names[: found.start()]:
        return Misnamed("No comma stands between one name and “et al.”.", whole, Instead(Span(*found.span("comma"))))
    return None


def _other_names(
    names: str, cite: Cite, entry: Entry, entries: Mapping[str, Entry], rules: StyleRules
) -> Misnamed | None:
    """Other authors than the style names, or the sign for *and*."""
    whole = Span(0, len(names))
    if rules.manual == "apa" and authors_otherwise(cite, entry, entries.values(), rules):
        rest = Span(min(names.find(cite.names[0]) + len(cite.names[0]), len(names)), len(names))
        if cite.et_al:
            says = "The source has two authors, and the style names both."
            return Misnamed(says, whole, Instead(rest, f" and {entry.authors[1].surname}"))
        says = f"The source has {len(cite.names)} authors; the style names the first, with “et al.”."
        return Misnamed(says, whole, Instead(rest, " et al."))
    if len(entry.authors) > 1 and len(cite.names) > 1 and (joined := _AMPERSAND.search(names)):
        says = "In a sentence “and” joins the names; “&” stands in brackets and lists alone."
        return Misnamed(says, whole, Instead(Span(*joined.span("and")), "and"))
    return None
