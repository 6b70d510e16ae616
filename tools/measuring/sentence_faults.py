"""Faults of the sentence set into found prose: pronouns, pairs, openings, quotations with nothing before them, tenses.

A shift of tense is set into narrative, of which the prose has little: into the novel of the quotation corpus too.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from fairhand.language.lexicon import find_word
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import novel, prose
from measuring.tally import Tally, findings_in

SetIn = tuple[str, str, int, int]
"""A check, the paragraph with a fault for it, and the place of the fault."""

_QUOTED = re.compile(r"(?<=[a-z][.?!] )[A-Z][^.?!“”\"]*[“\"]([^“”\"]{20,300})[”\"][^.?!“”\"]*[.?!](?=\s|\Z)")
_FINITE = r"(?:is|are|was|were|has|have|had|can|could|will|would|may|might|[a-z]{3,}ed|[a-z]+s)"
_HEADS = r"(?:(?<=[.?!] )|\A)"
"""Where a sentence begins."""


def _replaced(check: str, found: re.Match[str], new: str, group: int = 0) -> SetIn:
    """The paragraph with a group put otherwise."""
    text = found.string
    return (
        check,
        text[: found.start(group)] + new + text[found.end(group) :],
        found.start(group),
        found.start(group) + len(new),
    )


_WHO = re.compile(rf"(?<=[a-z] )(?<!\bof )(?<!\bto )(?<!\bin )(?<!\bon )who(?= {_FINITE}\b)")
_OPENS = re.compile(rf"{_HEADS}The (?=[a-z]+s {_FINITE}\b)")
_WITH = re.compile(r"\b(?:with|to|from|by|about|between) the [a-z]+(?=\.(?:\s|\Z))")
_SELVES = {"themselves": "itself", "their own": "its own"}
_SELF = re.compile(r"\b(?:[Tt]hey|[Tt]hese|[a-z]{3,}s|we|who|that|which) (?:[a-z]+ ){1,3}(themselves|their own)\b")
_ALTHOUGH = re.compile(
    rf"{_HEADS}(?:Although|Though|Even though) [^,.;]+(, )(?=(?:the|this|it|they|he|she|we|there|these) )"
)
_BECAUSE = re.compile(rf"{_HEADS}(?:Because|Since) [^,.;]+(, )(?=(?:the|this|it|they|he|she|we|there|these) )")
_STUDY = re.compile(
    rf"{_HEADS}(This|The) (report|study|article|paper|book|essay|novel|poem|text)()"
    r"(?= (?:shows?|says|states|describes|explains|argues|claims|mentions) )"
)
_AUTHORS = re.compile(
    rf"{_HEADS}(?:The|Her|His|My) (author|writer|narrator|teacher|student|patient|researcher|judge|doctor)(s?)()"
    rf"(?= {_FINITE} )"
)
_WHICH = re.compile(
    r"[a-z] (in|to|from|for|with) which (?:the|they|we|it|he|she|people|these|this) [^.,;:()]{4,50}(?=\.)"
)
_BY = re.compile(
    rf"{_HEADS}(?:By|Through) [a-z]+ing [^,.;]{{4,60}}(, (?:the [a-z]+|we|they|he|she|it|one|you|I))"
    r"(?= (?:can|could|will|would|may|might|[a-z]+s) )"
)
_TWO_NUMBERS = re.compile(r"\bbetween \d[\d.,%]*( and )(?=\d)")
_NOR = re.compile(r"\b[Nn]either [a-z][^.,;]{2,60} (nor) ")
_BOTH = re.compile(r"\b[Bb]oth (?:the|a|an|their|his|her|its|in|by|for|with|[a-z]+al) [^.,;]{2,50} (and) (?=[a-z])")
_OWN = "(?:the|a|an|their|its|his|her|our|these|this)"
_THREE_TO = re.compile(
    r"\bto ([a-z]+)[^,.;]{0,40}, to ([a-z]+)[^,.;]{0,40}, (?:and|or) (to ([a-z]+)) [^,.;]{2,60}[.;]"
    rf"|\bto ([a-z]+) [^,.;]{{0,40}}, [a-z]+ {_OWN}\b[^,.;]{{0,40}}, (?:and|or) (([a-z]+)) {_OWN}\b[^,.;]{{2,60}}[.;]"
)
_THREE_ING = re.compile(r"\b[a-z]+ing [^,.;]{0,30}, [a-z]+ing[^,.;]{0,30}, (?:and|or) (([a-z]+)ing) [^,.;]{2,60}[.;]")
_PAIR_ING = re.compile(
    r"\b(?:not only|both|either) [a-z]+ing [^.;]{2,50} (?:but also|and|or) (([a-z]+)ing) [^,.;]{2,60}[.;]"
)
_PAIR_TO = re.compile(
    r"\b(?:not only|both|either) to [a-z]+ [^.;]{2,50} (?:but also|and|or) (to ([a-z]+)) [^,.;]{2,60}[.;]"
)
_OPENING = re.compile(
    rf"{_HEADS}(?:(?:After|While|When|Upon|Before) )?(?i:walking|looking|reading|watching|hearing|studying|examining"
    r"|comparing|reviewing|searching|writing|learning|listening|working|interviewing|observing|trying|hoping|analyzing"
    r"|having [a-z]+) [^,.;]{2,80}, (?=(?:the [a-z]+s|we|he|she|they|I|one|you) )"
)
_NOBODY = re.compile(rf"{_HEADS}(?:There|It|The results?|The data|This policy|These results|Their results)(?= [a-z]+ )")
_BEFORE = (
    *("Looking at the figures", "Having read the reports", "After visiting the site", "As a student"),
    *("While reading the letters", "Comparing the two tables", "Having finished it", "Walking through the town"),
)


def _opened(found: re.Match[str]) -> SetIn:
    """An opening whose doer is nobody in the sentence, set before it."""
    opening = _BEFORE[found.start() % len(_BEFORE)]
    text = found.string
    rest = text[found.start()].lower() + text[found.start() + 1 :]
    return "dangling-opening", f"{text[: found.start()]}{opening}, {rest}", found.start(), found.start() + len(opening)


def _base(stem: str) -> str:
    """The verb of which *-ing* was taken off; empty where there is none."""
    for verb in (stem, stem + "e", stem[:-1]):
        known = find_word(verb)
        if known is not None and "v" in known.kinds:
            return verb
    return ""


def _series(found: re.Match[str], group: int, new: str) -> SetIn | None:
    """Another form for the last member, where it is a verb."""
    known = find_word(new.removeprefix("to "))
    verb = known is not None and bool({"v", "g"} & set(known.kinds))
    return _replaced("parallel-series", found, new, group) if verb else None


_ROWS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], SetIn | None]], ...] = (
    (_WHO, lambda m: _replaced("pronoun-case", m, "whom")),
    (_OPENS, lambda m: _replaced("pronoun-case", m, "Them and the ")),
    (_WITH, lambda m: _replaced("pronoun-case", m, f"{m[0]} and he")),
    (_SELF, lambda m: _replaced("pronoun-agreement", m, _SELVES[m[1]], 1)),
    (_ALTHOUGH, lambda m: _replaced("mixed-construction", m, ", but ", 1)),
    (_BECAUSE, lambda m: _replaced("mixed-construction", m, ", so ", 1)),
    (_STUDY, lambda m: _replaced("mixed-construction", m, f"In {m[1].lower()} {m[2]} it")),
    (_AUTHORS, lambda m: _replaced("mixed-construction", m, " they" if m[2] else " he", 3)),
    (_WHICH, lambda m: _replaced("mixed-construction", m, f"{m[0]} {m[1]}")),
    (_BY, lambda m: _replaced("mixed-construction", m, "", 1)),
    (_TWO_NUMBERS, lambda m: _replaced("paired-words", m, " to ", 1)),
    (_NOR, lambda m: _replaced("paired-words", m, "or", 1)),
    (_BOTH, lambda m: _replaced("paired-words", m, "as well as", 1)),
    (_THREE_TO, lambda m: _series(m, 3 if m[3] else 6, f"{(m[4] or m[7]).removesuffix('e')}ing")),
    (_THREE_ING, lambda m: _series(m, 1, f"to {_base(m[2])}")),
    (_PAIR_ING, lambda m: _series(m, 1, f"to {_base(m[2])}")),
    (_PAIR_TO, lambda m: _series(m, 1, f"{m[2].removesuffix('e')}ing")),
    (_OPENING, lambda m: _replaced("dangling-opening", m, f"{m[0]}it is clear that ")),
    (_NOBODY, _opened),
)


def set_in_sentences(paragraph: str) -> Iterator[SetIn]:
    """Each fault that can be set into a paragraph."""
    for found in _QUOTED.finditer(paragraph):
        words = found[1].strip(" ,.")
        if len(words.split()) >= 5:
            alone = f"“{words[0].upper()}{words[1:]}” (Vale, 2009, p. 12)."
            draft = f"{paragraph[: found.start()]}{alone}{paragraph[found.end() :]}"
            yield "quotation-alone", draft, found.start(), found.start() + len(words) + 2
    for pattern, make in _ROWS:
        for match in pattern.finditer(paragraph):
            fault = make(match)
            if fault is not None:
                yield fault


_VERBS = dict(
    pair.split(":")
    for pair in (
        "walked:walk ran:run sat:sit stood:stand turned:turn looked:look went:go came:come took:take opened:open"
        " left:leave entered:enter heard:hear shouted:shout cried:cry picked:pick met:meet jumped:jump waited:wait"
        " drew:draw fell:fall threw:throw caught:catch stopped:stop began:begin arrived:arrive returned:return"
        " crossed:cross reached:reach found:find gave:give got:get brought:bring knocked:knock saw:see started:start"
        " asked:ask"
    ).split()
)
_PAST = "|".join(_VERBS)
_WHO_DOES = r"(he|she|it|they|I|we|[A-Z][a-z]+|the [A-Z]?[a-z]+)"
_SHIFTS = (
    re.compile(rf"\b{_WHO_DOES} (?:[a-z]+ )?(?:{_PAST})\b[^.;:!?“”\"]{{0,60}}\band (?:then )?({_PAST})\b"),
    re.compile(
        rf"\b(?:[Ww]hen|[Aa]s|[Ww]hile) {_WHO_DOES} (?:{_PAST})\b[^.;:!?“”\"]{{0,60}}, (?:he|she|it) ({_PAST})\b"
    ),
)


_NEXT = re.compile(r"(?<=[a-z]\. )(He|She|They|The (?:men|women|[a-z]+ers|[a-z]+ors)) ([a-z]{3,}ed) (?=[a-z])")


def _shifted(paragraph: str) -> Iterator[SetIn]:
    """Each second of two deeds, and each deed after a full stop, put into the present."""
    for found in _NEXT.finditer(paragraph):
        verb = _base(found[2].removesuffix("ed"))
        if verb:
            one = found[1] in ("He", "She")
            yield _replaced("tense-shift", found, f"{verb}s" if one else verb, 2)
    for pattern in _SHIFTS:
        for found in pattern.finditer(paragraph):
            verb = _VERBS[found[2]]
            if found[1].casefold() not in ("they", "i", "we"):
                verb = f"{verb[:-1]}ies" if verb == "cry" else f"{verb}es" if verb.endswith(("o", "h")) else f"{verb}s"
            yield _replaced("tense-shift", found, verb, 2)


def measure_shifts(tally: Tally) -> None:
    """What ``tense-shift`` says of the novel as it stands, where nothing is wrong, and of shifts set into all prose."""
    story = tuple(" ".join(each.split()) for each in novel().text.split("\n\n"))
    for paragraph in story:
        for _ in findings_in(Paper("novel", paragraph, ()), ("tense-shift",)):
            tally.count("tense-shift", right=False)
    for paragraph in (*story, *(each for found in prose() for each in found.paragraphs)):
        for check, draft, start, end in _shifted(paragraph):
            told = [
                one
                for one in findings_in(Paper("p", draft, ()), (check,))
                if one.span is not None and one.span.overlaps(Span(start, end))
            ]
            tally.spoiled[check] += 1
            tally.seen[check] += bool(told)
            for _ in told:
                tally.count(check, right=True)
