"""What counts toward a length, and what does not: each part by its own switch."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import TOLD, join
from fairhand.model.requirement import Value
from fairhand.model.span import Span

_NOTE = r"(?:foot-?|end-?)?notes?"
_PARTS: tuple[tuple[str, str], ...] = (
    (
        "title-page",
        r"(?:title|cover) (?:page|sheet)s?|cover(?:sheet)?s?|(?<=the )title\b(?! of)|^\W*title\b(?! of)|title block",
    ),
    ("contents", r"(?:table of )?contents(?: page| list)?"),
    (
        "citations",
        (
            r"in-?text (?:citations?|references?|referencing)|(?:parenthetical|bracketed) (?:citations?|references?)"
            r"|(?:citations?|references?) (?:in|within) the (?:text|body)|citations(?! page| list)"
        ),
    ),
    (
        "bibliographic-notes",
        (
            rf"(?:(?:purely |merely |solely )?bibliographic(?:al)?|citation|reference|referencing) {_NOTE}"
            rf"|{_NOTE} (?:that|which) (?:only|merely|simply|just|do no more than) (?:cite|give|contain|refer)\w*"
            rf"|{_NOTE} (?:used )?(?:only|solely|purely) (?:for|to) (?:referenc|cit)\w+"
        ),
    ),
    (
        "references",
        (
            r"references?(?: list| page)?s?|reference list|refs?\.? list|refs\b|bibliograph(?:y|ies)"
            r"|works?[- ]cited(?: page| list)?"
            r"|literature cited|list of (?:works cited|references|sources)|works-cited page|reference page"
            r"|citations page"
        ),
    ),
    ("footnotes", r"(?:foot-?|end-?)notes?|(?<!field )(?<!application )(?<!lecture )\bnotes"),
    (
        "block-quotes",
        (
            r"(?:block|blocked|indented|long|longer|extended|set-off|displayed) quot(?:ation|e)s?"
            r"|(?:quotations?|quoted|text quoted|passages quoted|quotes) (?:set |given |printed )?(?:in|as|off as)"
            r" (?:a )?(?:block|separate paragraph|indented)\w*"
        ),
    ),
    ("quotations", r"(?:direct |run-in |short )?(?:quotations?|quotes|quoted (?:material|text|words|matter))"),
    ("abstract", r"abstract|executive summary"),
    ("appendices", r"append(?:ix|ices|ixes)|annex(?:es|ures?)?"),
    ("captions", r"(?:(?:figure|table|image) )?(?:captions?|legends?)"),
    (
        "figures",
        r"figures?|images?|illustrations?|exhibits?|graphs?|charts?|visuals|diagrams?|maps?|photographs?|stills|plates",
    ),
    ("tables", r"tables?(?! of (?:contents|authorities|cases))|table cells"),
    ("headings", r"(?:sub-?)?headings?|section titles"),
)
_PART = make_terms(_PARTS)
_LISTED = {
    **{name: name for name in "title-page references footnotes block-quotes abstract appendices headings".split()},
    **dict.fromkeys(("figures", "tables", "captions"), "figures"),
}
"""The names that a requirement's ``excludes`` has, by those of the switches."""

_LEAVES_OUT = re.compile(
    r"\b(?:exclud(?:ing|es?)|excl\.?|exclusive of|not (?:counting|including)|without counting|leaving out|(?:do|does"
    r"|will) not include|doesn't include|don't include"
    r"|don't count(?! as)|do not count(?! as)|not to include|omitting|apart from|other than|but not|not (?:including"
    r"|counted):?)(?= (?:the |your |any |all |its |a |an )?\w)"
    r"|\b(?:everything|all(?: (?:of it|words))?)(?:,| is counted,?| counts,?)? (?:but|except(?: for)?|save|apart"
    r" from)(?= \w)"
    r"|\b(?:do|does|will) not (?:take in|cover|extend to)(?= \w)|^\W{0,3}without(?= \w)|\(without(?= \w)"
    r"|\bplus (?=a (?:title|cover)|(?:foot|end)?notes|(?:the |your )?(?:references|bibliography|works cited|appendi))",
    re.IGNORECASE,
)
_IS_OUT = re.compile(
    r"\b(?:(?:do|does|will|should|shall) not (?:be )?(?:counted|count|included|form part)|(?:don't|doesn't|won't"
    r"|aren't|isn't) (?:be )?(?:count(?:ed)?|includ(?:ed|e))"
    r"|(?:is|are) (?:free|out)(?=[.;,)]|$)"
    r"|(?:is|are|be|being) (?:excluded|not (?:counted|included|part))|(?<=, )not (?:counted|included)"
    r"|(?<=\()not part of|not counted"
    r"|not included|excluded\b|(?:do|does|is|are)(?:n't| not)(?=[.;)]|$)"
    r"|(?:left|leave) out of|outside the|neither\b.{0,120}? (?:is|are) counted|extra\b|in addition to th(?:is"
    r"|e) (?:word|count|limit|total))",
    re.IGNORECASE,
)
_IS_IN = re.compile(r"\b(?:includ\w+|part of|count(?:ed|s)?|(?:is|are) in)\b[^,;]*[,;] ", re.IGNORECASE)
_COUNTED = re.compile(
    r"\b(?:(?:do|does|will) (?:all |also |both )?count\b|counted\b|included\b"
    r"|counts?\b(?! as| towards? the (?:grade|mark))|form part)|(?:is|are) part of",
    re.IGNORECASE,
)
_COUNTING = re.compile(r"\b(?:including|inclusive of|which includes|includes|counting|takes? in)\b", re.IGNORECASE)
_COUNTS = re.compile(
    r"\b(?:count(?:ed|s|ing)?|includ(?:ed|e|ing)|exclud(?:ed|ing|es)|total|limit|length|figure|take in|words|extra)\b",
    re.IGNORECASE,
)
_ABOUT_COUNT = re.compile(r"\b(?:word|page) (?:count|limit|total)|\bcount(?:ed)?\b|\bwordage\b", re.IGNORECASE)


_NEAR = 400
"""Within so many characters a sentence of the same passage speaks of the length that was named."""


@dataclass(frozen=True, slots=True)
class Counts:
    """What a sheet says of what counts."""

    uncounted: tuple[str, ...] = ()
    """The parts that it leaves out, sorted."""
    counted: tuple[str, ...] = ()
    """The parts of which it says that they count, sorted."""
    span: Span | None = None
    """The words that leave something out."""


NOTHING_SAID = Counts()


def list_excludes(uncounted: Iterable[str]) -> tuple[str, ...]:
    """What is left out, by the names of ``excludes``: figures stand for tables and captions too.

    >>> list_excludes(["captions", "quotations", "references"])
    ('figures', 'references')
    """
    return tuple(sorted({_LISTED[name] for name in uncounted if name in _LISTED}))


def uncounted_parts(values: Mapping[str, Value]) -> frozenset[str]:
    """The parts that do not count by a length requirement's values, as read or corrected.

    What the sheet leaves unsaid counts, but for the list of references. **Source**: common practice.

    >>> sorted(uncounted_parts({"excludes": ("figures",), "uncounted": ("captions",)}))
    ['captions', 'references']
    """
    listed, exact, counted = (
        {str(name) for name in value} if isinstance(value := values.get(key), tuple) else set[str]()
        for key in ("excludes", "uncounted", "counted")
    )
    # Where the sheet's exact words are known, they and not the wider name of the list decide.
    wider = {_LISTED[name] for name in exact if name in _LISTED}
    return frozenset((listed - wider) | exact | ({"references"} - counted))


def _left_out_in(text: str) -> tuple[set[str], int, int]:
    """The parts that ``text`` leaves out of the count, with the stretch that says so."""
    found: set[str] = set()
    start, end = len(text), 0
    for clause in re.finditer(r"[^;.]+", text):
        words = clause.group()
        leading = _LEAVES_OUT.search(words)
        leading = leading if leading and _PART.search(words, leading.end()) else None
        trailing = _IS_OUT.search(words)
        if leading:
            stretch = (leading.end(), len(words))
        elif trailing:
            counted = [m.end() for m in _IS_IN.finditer(words, 0, trailing.start())]
            begin = trailing.start() if trailing.group().lower().startswith("neither") else max(counted, default=0)
            more = re.match(r"[^;.]{0,25}\bnor\b", words[trailing.end() :])
            stretch = (begin, len(words) if more else trailing.end())
        else:
            continue
        if leading and (stop := re.search(r"\b(?:but|and (?:must|should|is|are)|which)\b", words[leading.end() :])):
            stretch = (leading.end(), leading.end() + stop.start())
        hits = list(_PART.finditer(words, *stretch))
        hits = [h for h in hits if not re.search(r"\bon the $|\bto the $", words[: h.start()])]
        if not hits:
            continue
        found |= {_PART.name(h) for h in hits}
        start = min(start, clause.start() + min(stretch[0], hits[0].start()))
        end = max(end, clause.start() + max(hits[-1].end(), trailing.end() if trailing and not leading else 0))
    return found, start, end


def _counted_in(text: str) -> set[str]:
    """The parts of which ``text`` says that they count."""
    found: set[str] = set()
    for words in re.split(r"[;.]|\bbut\b|(?<=count),|,(?=[^,;.]{0,40}\bnot\b)", text):
        if _LEAVES_OUT.search(words) or _IS_OUT.search(words):
            continue
        if said := _COUNTED.search(words):
            found |= {_PART.name(hit) for hit in _PART.finditer(words, 0, said.start())}
        elif said := _COUNTING.search(words):
            found |= {_PART.name(hit) for hit in _PART.finditer(words, said.end())}
    return found


@lru_cache(maxsize=4)
def _said_of_the_count(sheet: Sheet) -> tuple[frozenset[str], frozenset[str]]:
    """What the sentences that are plainly about the count, and leave something out, leave out and count."""
    left_out: set[str] = set()
    counted: set[str] = set()
    for sentence in sheet.sentences:
        if _ABOUT_COUNT.search(sentence.text) and not TOLD.search(sentence.text):
            more, _, _ = _left_out_in(sentence.text)
            left_out |= more
            counted |= _counted_in(sentence.text) if more else set()
    return frozenset(left_out), frozenset(counted)


def find_counts(sheet: Sheet, sentence: Sentence, at: int) -> Counts:
    """What counts toward the paper's length, said in the same breath (from ``at`` on) or in a sentence about it."""
    left_out, start, end = _left_out_in(sentence.text[at:])
    counted = _counted_in(sentence.text[at:])
    span = sentence.span(at + start, at + end) if left_out else None
    for other in sheet.sentences_after(sentence, within=_NEAR):
        if TOLD.search(other.text) or not _COUNTS.search(other.text):
            continue
        counted |= _counted_in(other.text)
        more, start, end = _left_out_in(other.text)
        if more - left_out:
            left_out |= more
            span = join(span, other.span(start, end)) if span else other.span(start, end)
    elsewhere = _said_of_the_count(sheet)
    left_out |= elsewhere[0]
    return Counts(tuple(sorted(left_out)), tuple(sorted((counted | elsewhere[1]) - left_out)), span)
