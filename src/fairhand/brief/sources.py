"""Sources: how many, of what kind, how recent.

Longer than other rooms are: the sentences that count sources are read whole, and each way of counting is one of them.
"""

from __future__ import annotations

import re
from dataclasses import replace

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import NUMBER, Quantity, find_quantities
from fairhand.brief.sources_cited import ask_all_cited
from fairhand.brief.sources_since import SINCE, find_since
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Force, Requirement, Value
from fairhand.model.span import Span

_TYPES: tuple[tuple[str, str], ...] = (
    ("peer-reviewed", r"peer[- ]?review(?:ed)?|refereed"),
    (
        "primary",
        (
            r"primary\b(?:[- ](?:sources?|texts?|documents?|materials?))?|archival|(?:original|ancient"
            r"|archive) (?:sources|documents|texts)"
        ),
    ),
    (
        "data",
        (
            r"data ?sets?|data sources?|census tables?|statistical (?:sources?|tables?|series)|data series"
            r"|official statistics|government (?:data|statistics)"
        ),
    ),
    (
        "news",
        (
            r"news(?:paper)?s?\b|press (?:reports?|articles?)|news (?:pieces|articles|items|sources)|magazine articles?"
            r"|journalism|trade (?:press|publications?|journals?|magazines?)"
        ),
    ),
    (
        "print",
        (
            r"(?:only )?in print\b|print(?:ed)? (?:sources?|items?|works?|books?)|print and (?:digital|online"
            r"|electronic)|exists? only on paper"
        ),
    ),
    (
        "outside",
        (
            r"outside (?:the |of )?(?:sources?|course|class|reading|required|assigned)|from outside|external sources?"
            r"|beyond (?:the|our|those)|not (?:on|from) (?:the|our) (?:reading list|syllabus|course)"
            r"|independently found|outside sources?|(?:not|n't) on (?:it|the(?:se)? lists?)\b"
        ),
    ),
    (
        "scholarly",
        (
            r"scholarly|academic|scholarship|(?:learned|research) journals?|university press|secondary scholarship"
            r"|by scholars"
        ),
    ),
    ("website", r"web ?sites?|web ?pages?|web[- ]only|internet sources?|online sources?"),
    ("book", r"books?\b|monographs?|book-length"),
    ("article", r"articles?\b|chapters?\b"),
)
_TYPE = make_terms(_TYPES, after="")
_NOUN = re.compile(
    r"\b(?:sources?|references?|items?|works?|texts?|citations?|articles?|books?|monographs?|studies|papers?"
    r"|publications?|titles|journals?|documents?|reports?|authorities|readings?|materials?"
    r"|data ?sets?|tables?|pieces?|essays|chapters?|entries|authors|cases|accounts?|commentaries|critics)\b(?! styles?"
    r"| formats?)",
    re.IGNORECASE,
)
_STRICT_NOUN = re.compile(
    r"\b(?:sources?|references?|items? of (?:reading|literature)|citations|works (?:cited|of scholarship)"
    r"|publications|articles?|books?|monographs?|studies|data ?sets?"
    r"|(?:research|journal|conference|empirical|review) (?:papers?|reports?)|systematic reviews"
    r"|(?:critical|scholarly) (?:essays|chapters))\b",
    re.IGNORECASE,
)
_OTHER_NOUN = re.compile(
    r"[- ]*(?:\w+[- ]){0,2}?(?:words?|pages?|sides?|minutes?|hours?|days?|weeks?|months?|years?|marks?|points?"
    r"|per ?cent|percent|%|paragraphs?|sections?|figures?|keywords?|quotations?|quotes|images?|maps?|graphs?"
    r"|questions?|people|students?|groups?|copies|copy|lines?|inch(?:es)?|pt\b|point\b|cm\b|mm\b|sentences?"
    r"|examples?|times?|counter-?arguments?|headings?|meetings?|steps?|parts?|tables?|episodes?|elegies|poems"
    r"|states|cities|countries"
    r"|themes?|reasons?|arguments?|characters?|observations?|classmates?|drafts?|slides?|editions?|letters?|spac\w+"
    r"|level)\b",
    re.IGNORECASE,
)
_KEY = re.compile(
    r"\b(?:sources?|evidence|research|reading|references|(?<!annotated )bibliography|literature|secondary"
    r"|materials?|texts? to use|scholarship)\b",
    re.IGNORECASE,
)
_NOT_KEY = re.compile(
    r"\b(?:marks?|points|grading|rubric|criteria|graded|late|due|dates|original sources)\b", re.IGNORECASE
)
_DEMAND = re.compile(
    r"\b(?:us(?:e|es|ing)|cit(?:e|es|ing)|includ(?:e|es|ing)|draw(?:s|ing)? (?:up)?on|consult(?:ing)?|need(?:s|ed)?"
    r"|must|should|require[sd]?|requirements?|expect(?:ed)?|find|read|refer(?:ence|ring)?(?: to)?|want|have to"
    r"|has to"
    r"|supported? (?:by|with)|based on|engage with|look at|incorporat\w+|contain|at least|minimum|no fewer|or more"
    r"|aim for|make use|work with|rest on|of (?:them|these|those|which))\b",
    re.IGNORECASE,
)
_NO_NUMBER = re.compile(
    r"\b(?:(?:is|are) (?:plenty|ample)"
    r"|no (?:minimum|required|set|fixed|particular|magic) (?:number|minimum)|no minimum|as many|how many"
    r"|number of sources)\b",
    re.IGNORECASE,
)
_ANAPHOR = re.compile(r"\b(?:of (?:them|these|those|which|the \w+)|among (?:them|these))\b", re.IGNORECASE)
_UNCOUNTED = re.compile(
    r"\b(?:(?:all|every|your|use|cite|only|reputable|these|any|each)\b[^.;:]{0,40}\b(?:sources?|articles?"
    r"|references|literature|work)\b[^.;:]{0,30}\b(?:must|should|need to|has to|have to|are to|means?)\b"
    r"|(?:use|cite|consult|draw on|rely on) (?:only|exclusively|solely)|only (?:use|cite|consult)"
    r"|only [^.;:]{0,60}\b(?:sources?|articles?|work)\b[^.;:]{0,60}\b(?:accept(?:able|ed)|allowed|may be|will be|count)"
    r"|make sure[^.;:]{0,40}\b(?:is|are|found)\b|(?:only|exclusively) from)",
    re.IGNORECASE,
)
_RANGE_OF = re.compile(
    r"\b(?:a (?:range|mix(?:ture)?|variety|balance|combination) of|both) (?P<what>[^.;:]{5,90})", re.IGNORECASE
)
_SIGNIFICANT = re.compile(
    r"\b(?:shows?|do|demonstrate|conduct|includ\w+"
    r"|requires?)\b[^.;:]{0,40}\bresearch\b[^.;:]{0,40}\boutside (?:of )?(?:the |your )?(?:course|class|assigned)",
    re.IGNORECASE,
)


_BREAK = re.compile(r"[,(;:—]| - | (?:that|which|to|if|when|as)\b")
_LISTED = re.compile(r"\b(?:reference list|bibliography|works cited|list of references)\b", re.IGNORECASE)


_LOOSE_NOUN = re.compile(
    r" (?:of (?:the|your|our|these) )?(?:\w+ )?(?:items?|works|texts|readings|secondary|accounts|entries|critics"
    r"|commentaries)\b",
    re.IGNORECASE,
)
_WHOLE = re.compile(r" (?:\w+ )?(?:sources|references|works|items|texts)\b", re.IGNORECASE)
_ONE = re.compile(r"one (?:article|source|of)\b", re.IGNORECASE)
_YEAR = re.compile(r"\b(?:19|20)\d\d\b|\b\d{1,2}(?:st|nd|rd|th)\b")
_EXACTLY = re.compile(r"\b(?:exactly|precisely|only)\b", re.IGNORECASE)
_NUMBERED = re.compile(
    r"(?:\b(?:chapters?|parts?|week|section|page|pp?\.|level|paper|steps?|assignment|vol(?:ume)?|size|unit|lens|edition"
    r"|any|no\."
    r"|group)|[#$£€]) $",
    re.IGNORECASE,
)
_HOLDING = re.compile(
    r"\b(?:lists?|reader|folder|collection|archive|library|packet|shelf|database)\b[^.;,]{0,25}\b(?:has|have|holds?"
    r"|contains?|runs to) $",
    re.IGNORECASE,
)
"""What is at hand, not what is asked: "the reading list has 60 items on it"."""
_FROM_COURSE = re.compile(
    r"[^.;,]{0,30}\bfrom (?:the|our|your) (?:syllabus|course|module|class|reading list|reader|textbook|lectures?)\b",
    re.IGNORECASE,
)
"""A limit on what is read in class anyway: "no more than three can be from the syllabus"."""
_AFTER_ANOTHER = re.compile(
    r"\b(?:sources?|references?|works|items|readings?), (?:and |including |with )?$", re.IGNORECASE
)
"""Before a second number in a bare list: "5+ sources, 3 scholarly"."""
_HANDING_IN = re.compile(r"\b(?:turn|hand)(?:ed)? in\b|\bsubmit|\brequire|\binclude", re.IGNORECASE)
_ALL_SOURCES = re.compile(
    r"\b(?:all|every|each)\b[^.;]{0,30}\b(?:sources?|references|articles|works|items)\b"
    r"|^\W*(?:all|each|every one)(?: of (?:them|these|those))? (?:should|must|need to|has to|have to)(?: have)? be"
    r"(?:en)? (?:published|dated?|written)\b|^\W*(?:not? (?:older|earlier)|published|nothing) ",
    re.IGNORECASE,
)
_LEFT_FREE = re.compile(r"\b(?:not have to|need not|do not|don't|can be)\b", re.IGNORECASE)


_SHARE = re.compile(
    r"\b(?:two[- ]thirds|half|most|(?:the |a )?majority|quarters?|some) (?:of|should|must|are)\b", re.IGNORECASE
)
"""Of these, not of all, a year is asked."""
_SPECIFIED = re.compile(
    rf"\W{{0,3}}(?:(?:about|around|up to|at least) )?{NUMBER}(?: ?(?:-|to) ?{NUMBER})?"
    r"[ -](?:words?|pages?)\b[^.;]{0,40}[,;]",
    re.IGNORECASE,
)
"""A line of bare specifications ("1,000 words, four sources")."""
_LIMITED = re.compile(r"\b(?:should|must|may|shall|can|do|will|are) $", re.IGNORECASE)
"""Before a limit that follows what it limits ("newspaper articles should not exceed two")."""
_OF_BOOKS = re.compile(
    r"\bbooks? (?:or|and) (?:book )?chapters?\b|\bbook chapters?\b|chapters? (?:in|of|from) (?:\w+ )?books?",
    re.IGNORECASE,
)


def _type_in(words: str) -> str:
    kinds = _TYPE.named(words)
    if _OF_BOOKS.search(words):
        kinds = [kind for kind in kinds if kind != "article"]
    if {"book", "article"} <= set(kinds):
        kinds = [kind for kind in kinds if kind not in {"book", "article"}]
    return min(kinds, key=_TYPE.names.index) if kinds else "any"


def _is_keyed(sheet: Sheet, sentence: Sentence) -> bool:
    """Whether its label or heading says that it is about sources; the sheet's title says nothing of the kind."""
    heading = "" if sentence.passage.heading in sheet.title else sentence.passage.heading
    return bool(_KEY.search(sentence.key) or _KEY.search(heading)) and not _NOT_KEY.search(sentence.context)


def _is_source_sentence(sheet: Sheet, sentence: Sentence) -> bool:
    text = sentence.text
    if TOLD.search(text) or _NO_NUMBER.search(text):
        return False
    if _LISTED.search(text):
        return True
    keyed = _is_keyed(sheet, sentence)
    return keyed or bool(
        _STRICT_NOUN.search(text)
        or _TYPE.search(text)
        or re.search(
            r"\b(?:works|items|texts|readings|accounts|commentaries|critics|authors|documents"
            r"|cases)\b",
            text,
            re.IGNORECASE,
        )
    )


def _stretches(text: str, quantities: list[Quantity]) -> list[tuple[Quantity, str]]:
    """Each quantity with the words that belong to it: up to the next quantity or the clause's end."""
    out = []
    for i, quantity in enumerate(quantities):
        stop = quantities[i + 1].start if i + 1 < len(quantities) else len(text)
        words = text[quantity.end : stop]
        words = re.split(r"[;?!]|\. |: (?!\w+ sources)", words)[0]
        out.append((quantity, words))
    return out


def _kind(sentence: Sentence, quantity: Quantity, near: str, rows: list[dict[str, Value]]) -> str:
    """The kind of source that a quantity counts: from its noun, its label, or what "such" and "of which" refer to."""
    kind = _type_in(near)
    before = sentence.text[: quantity.start]
    if kind == "article" and not (rows or _ANAPHOR.search(near[:30]) or re.match(r" (?:must|should|to) be\b", near)):
        # As the whole number of sources, "articles" is only a word for them.
        return "any"
    if kind != "any":
        return kind
    label = re.search(r"([\w -]{3,40}): $", before[-45:])
    named = label[1] if label else sentence.passage.key if sentence.passage.body and not sentence.start else ""
    if named and not _NOUN.search(near):
        return _type_in(named)
    if re.match(r" such\b", near):
        return _type_in(before)
    if rows and _ANAPHOR.search(near[:30]) and SINCE.search(near):
        return str(rows[-1]["type"])
    if quantity.low is None and not _NOUN.search(near) and _LIMITED.search(before):
        return _type_in(re.split(r"[.;,]", before)[-1])
    if quantity.low is None and not rows and _ANAPHOR.search(near[:30]):
        return _type_in(before)
    return "any"


def _counts_sources(sentence: Sentence, quantity: Quantity, near: str, kind: str, *, keyed: bool) -> bool:
    """Whether a quantity counts sources at all, and asks for them."""
    text = sentence.text
    anaphor = _ANAPHOR.search(near[:30]) or _ANAPHOR.search(text[max(0, quantity.start - 18) : quantity.start])
    if kind in {"any", "article"}:
        noun = _NOUN.search(near)
        dated = anaphor and SINCE.search(near)
        if anaphor and noun is None and not dated and re.search(r"\b(?:must|should|need to|have to) be\b", near):
            # "At least two of which must be Australian": a kind that we have no word for.
            return False
        if noun is None and not dated and not (keyed and (not quantity.bare or anaphor or not quantity.start)):
            return False
        if noun and (noun.start() > 40 or not (keyed or _STRICT_NOUN.search(near) or _LOOSE_NOUN.match(near))):
            return False
        if quantity.low is None and noun and not anaphor and not _WHOLE.match(near):
            # "No more than two review articles": a limit on a kind that we have no word for.
            return False
        if quantity.bare and not anaphor and _ONE.match(text, quantity.start):
            return False
        if quantity.low is None and _FROM_COURSE.match(near):
            return False
    return bool(
        keyed
        or not quantity.bare
        or anaphor
        or quantity.start < 3
        or _SPECIFIED.match(text)
        or _DEMAND.search(text)
        or _HANDING_IN.search(sentence.passage.lead)
    )


def _end(quantity: Quantity, near: str) -> int:
    """Where the words that name the sources end."""
    hits = (*_TYPE.finditer(near), *_NOUN.finditer(near[:45]))
    return quantity.end + max((m.end() for m in hits if m.end() <= 60), default=0)


def _counted(sheet: Sheet, sentence: Sentence) -> list[Requirement]:
    """The sources that a sentence counts."""
    text = sentence.text
    keyed = _is_keyed(sheet, sentence)
    dates = [m.span() for pattern in (_YEAR, SINCE) for m in pattern.finditer(text)]
    quantities = [q for q in find_quantities(text) if not any(a < q.end and q.start < b for a, b in dates)]
    rows: list[dict[str, Value]] = []
    spans: list[tuple[int, int]] = []
    for quantity, words in _stretches(text, quantities):
        number = quantity.low if quantity.low is not None else quantity.high
        if number is None or number > 100 or number != int(number) or _counts_other(text, quantity, words):
            continue
        near = words[:70]
        if (bracket := near.find("(")) > 3:
            near = near[:bracket]
        if quantity.low is None and _LIMITED.search(near.partition(",")[0] + " ") is None:
            near = near.partition(",")[0] or near
        if quantity.bare and not keyed and not _ANAPHOR.search(near[:30]):
            near = _BREAK.split(near)[0]
        kind = _kind(sentence, quantity, near, rows)
        listed = rows and kind not in {"any", "article"} and _AFTER_ANOTHER.search(text[: quantity.start])
        if not (listed or _counts_sources(sentence, quantity, near, kind, keyed=keyed)):
            continue
        exact = _EXACTLY.search(text[max(0, quantity.start - 12) : quantity.start])
        high = quantity.high if exact or not quantity.bare else None
        since, of_all, since_end = find_since(words, sheet.given)
        if since and _SHARE.search(words[:since_end]):
            since = None
        end = max(_end(quantity, near), quantity.end + since_end)
        if since and of_all and rows:
            rows[0]["since"], since = since, None
            spans[0] = (spans[0][0], quantity.end + since_end)
            end = _end(quantity, near)
        rows.append({"min": quantity.low, "max": high, "type": kind, "since": since})
        spans.append((quantity.start, end))
    if rows and not any(row["since"] for row in rows):
        # Said at the end of the sentence: of the last kind that was counted, or of all.
        since, of_all, end = find_since(text, sheet.given)
        since = None if since and _SHARE.search(text[:end]) else since
        before = [i for i, span in enumerate(spans) if span[0] < end]
        if since and before:
            at = 0 if of_all else before[-1]
            rows[at]["since"] = since
            spans[at] = (spans[at][0], max(end, spans[at][1]))
    return [
        ask(sheet, "sources", row, sentence.span(*span), "must" if row["max"] is None else force_of(text))
        for row, span in zip(rows, spans, strict=True)
    ]


def _counts_other(text: str, quantity: Quantity, words: str) -> bool:
    """Whether a quantity plainly counts something else: pages, figures, weeks, a chapter's number."""
    other = _OTHER_NOUN.match(words)
    return bool(
        (other and _type_in(other.group()) != "data")
        or words.startswith(")")
        or (quantity.bare and re.match(r" of (?:our|the|your|his|her|my)\b", words))
        or ("entries" in words[:9] and re.search(r"\bannotated\b", text[: quantity.start], re.IGNORECASE))
        or re.search(r"\b(?:of (?:the|these|those)|if|when|where) $", text[: quantity.start][-10:], re.IGNORECASE)
        or _HOLDING.search(text[: quantity.start])
        or _NUMBERED.search(text[max(0, quantity.start - 20) : quantity.start])
    )


_NONE_OUTSIDE = re.compile(r"(?:\b(?:no|not|without)|n't)\b[^.;]{0,25}\boutside sources?\b", re.IGNORECASE)


def _without_number(sheet: Sheet, kind: str, span: Span, force: Force) -> Requirement:
    return ask(sheet, "sources", {"min": None, "max": None, "type": kind, "since": None}, span, force)


def _uncounted(sheet: Sheet, sentence: Sentence) -> list[Requirement]:
    """Kinds of source that are asked for without a number."""
    text = sentence.text
    if (match := _NONE_OUTSIDE.search(text)) and not re.search(r"\b(?:need|have to|required?|rather|if you)\b", text):
        none = {"min": None, "max": 0, "type": "outside", "since": None}
        return [ask(sheet, "sources", none, sentence.span(match.start(), match.end()), force_of(text))]
    if match := _UNCOUNTED.search(text):
        kind, hit = _type_in(text), _TYPE.search(text)
        if hit is None or kind not in {"peer-reviewed", "scholarly", "primary"} or _LEFT_FREE.search(text):
            return []
        span = sentence.span(min(match.start(), hit.start()), max(match.end(), hit.end()))
        return [_without_number(sheet, kind, span, force_of(text))]
    if (match := _RANGE_OF.search(text)) and re.search(r"\bsources\b", match["what"]):
        span = sentence.span(match.start(), match.end())
        return [_without_number(sheet, kind, span, "should") for kind in _TYPE.named(text, match.start())]
    if match := _SIGNIFICANT.search(text):
        return [_without_number(sheet, "outside", sentence.span(match.start(), match.end()), force_of(text))]
    return []


def _is_with(sentence: Sentence, found: list[Requirement]) -> bool:
    """Whether its passage holds a requirement that was found."""
    whole = sentence.passage.span(0, len(sentence.passage.text))
    return any(whole.start <= each.span.start < whole.end for each in found)


def _date_all(sheet: Sheet, found: list[Requirement]) -> list[Requirement]:
    """The requirements with the year that a sentence of its own sets for all sources, on the widest of them."""
    if not found or any(r.values["since"] for r in found):
        return found
    for sentence in sheet.sentences:
        since, of_all, _ = find_since(sentence.text, sheet.given)
        if (
            since
            and (of_all or _ALL_SOURCES.search(sentence.text))
            and (_is_source_sentence(sheet, sentence) or _is_with(sentence, found))
        ):
            at = next((i for i, r in enumerate(found) if r.values["type"] == "any"), 0)
            dated = replace(found[at], values={**found[at].values, "since": since})
            return [*found[:at], dated, *found[at + 1 :]]
    return found


def find_sources(sheet: Sheet) -> list[Requirement]:
    """How many sources of which kind the sheet asks for."""
    found: list[Requirement] = []
    seen: set[tuple[object, ...]] = set()
    for sentence in sheet.sentences:
        if sentence.passage.weighed or not _is_source_sentence(sheet, sentence):
            continue
        for requirement in (*_counted(sheet, sentence), *_uncounted(sheet, sentence)):
            key = tuple(requirement.values[k] for k in ("type", "min", "max"))
            if key not in seen:
                seen.add(key)
                found.append(requirement)
    found = _date_all(sheet, found)
    counted = {r.values["type"] for r in found if r.values["min"] is not None or r.values["max"] is not None}
    kept = [
        r
        for r in found
        if r.values["min"] is not None or r.values["max"] is not None or r.values["type"] not in counted
    ]
    return ask_all_cited(sheet, kept)
