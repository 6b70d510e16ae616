"""Sources: how many, of what kind, how recent."""

from __future__ import annotations

import datetime as dt
import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import NUMBER, Quantity, find_quantities, number_value
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement

_TYPES: tuple[tuple[str, str], ...] = (
    ("peer-reviewed", r"peer[- ]?review(?:ed)?|refereed"),
    ("primary", r"primary\b(?:[- ](?:sources?|texts?|documents?|materials?))?|archival|original (?:sources|documents)"),
    (
        "data",
        r"data ?sets?|data sources?|census tables?|statistical (?:sources?|tables?|series)|data series|official statistics",
    ),
    (
        "news",
        r"news(?:paper)?s?\b|press (?:reports?|articles?)|news (?:pieces|articles|items|sources)|magazine articles?|journalism",
    ),
    (
        "print",
        r"(?:only )?in print\b|print(?:ed)? (?:sources?|items?|works?|books?)|print and (?:digital|online|electronic)|exists? only on paper",
    ),
    (
        "outside",
        r"outside (?:the |of )?(?:sources?|course|class|reading|required|assigned)|from outside|external sources?|beyond (?:the|our|those)|not (?:on|from) (?:the|our) (?:reading list|syllabus|course)|independently found|outside sources?",
    ),
    ("scholarly", r"scholarly|academic|scholarship|learned journals?|university press|secondary scholarship"),
    ("book", r"books?\b|monographs?|book-length"),
)
_TYPE = re.compile("|".join(rf"(?P<t{i}>\b(?:{words}))" for i, (_, words) in enumerate(_TYPES)), re.IGNORECASE)
_NOUN = re.compile(
    r"\b(?:sources?|references?|items?|works?|texts?|citations?|articles?|books?|monographs?|studies|papers?|publications?|journals?|documents?|reports?|authorities|readings?|materials?"
    r"|data ?sets?|tables?|pieces?|essays|chapters?|entries|cases|accounts?|commentaries|critics)\b(?! styles?| formats?)",
    re.IGNORECASE,
)
_STRICT_NOUN = re.compile(
    r"\b(?:sources?|references?|items? of (?:reading|literature)|citations|works (?:cited|of scholarship)|publications|articles?|books?|monographs?|studies|data ?sets?)\b",
    re.IGNORECASE,
)
_OTHER_NOUN = re.compile(
    r"[- ]*(?:\w+[- ]){0,2}?(?:words?|pages?|sides?|minutes?|hours?|days?|weeks?|months?|years?|marks?|points?|per ?cent|percent|%|paragraphs?|sections?|figures?|keywords?|quotations?|quotes|images?|maps?|graphs?"
    r"|questions?|people|students?|groups?|copies|copy|lines?|inch(?:es)?|pt\b|point\b|cm\b|mm\b|sentences?|examples?|times?|counter-?arguments?|headings?|meetings?|steps?|parts?|tables?|episodes?|elegies|poems|states|cities|countries"
    r"|themes?|reasons?|arguments?|characters?|observations?|classmates?|drafts?|slides?|editions?|letters?|spac\w+|level)\b",
    re.IGNORECASE,
)
_KEY = re.compile(
    r"\b(?:sources?|evidence|research|reading|references|(?<!annotated )bibliography|literature|secondary|materials?|texts? to use|scholarship)\b",
    re.IGNORECASE,
)
_NOT_KEY = re.compile(
    r"\b(?:marks?|points|grading|rubric|criteria|graded|late|due|dates|original sources)\b", re.IGNORECASE
)
_DEMAND = re.compile(
    r"\b(?:us(?:e|es|ing)|cit(?:e|es|ing)|includ(?:e|es|ing)|draw(?:s|ing)? (?:up)?on|consult(?:ing)?|need(?:s|ed)?|must|should|require[sd]?|requirements?|expect(?:ed)?|find|read|refer(?:ence|ring)?(?: to)?|want|have to|has to"
    r"|supported? (?:by|with)|based on|engage with|look at|incorporat\w+|contain|at least|minimum|no fewer|or more|aim for|make use|work with|rest on|of (?:them|these|those|which))\b",
    re.IGNORECASE,
)
_NO_NUMBER = re.compile(
    r"\b(?:no (?:minimum|required|set|fixed|particular|magic) (?:number|minimum)|no minimum|as many|how many|number of sources)\b",
    re.IGNORECASE,
)
_ANAPHOR = re.compile(r"\b(?:of (?:them|these|those|which|the \w+)|among (?:them|these))\b", re.IGNORECASE)
_SINCE = re.compile(
    rf"\b(?:(?P<none>(?:nothing|none|no (?:source|item|work)s?)\b[^.;]{{0,30}}?(?:before|older than|earlier than|prior to))|(?P<since>since|from|(?:no|not) (?:earlier|older) than|in or after|as of)|(?P<after>after|later than)) "
    r"(?P<year>(?:19|20)\d\d)(?! ?(?:words|[-–]))|(?P<onward>(?:19|20)\d\d) (?:or (?:later|after|newer)|onwards?|and (?:later|after))"
    rf"|(?:(?:with)?in|from|over|during) the (?:last|past|previous) (?P<years>{NUMBER})(?P<decades> decades?| years?)|(?:no|not) (?:older|more) than (?P<old>{NUMBER}) years(?: old)?"
    r"|(?:last|past) (?P<decade>decade)",
    re.IGNORECASE,
)
_UNCOUNTED = re.compile(
    r"\b(?:(?:all|every|your|use|cite|only|reputable|these|any|each)\b[^.;:]{0,40}\b(?:sources?|articles?|references|literature|work)\b[^.;:]{0,30}\b(?:must|should|need to|has to|have to|are to|means?)\b"
    r"|(?:use|cite|consult|draw on|rely on) (?:only|exclusively|solely)|only (?:use|cite|consult)|make sure[^.;:]{0,40}\b(?:is|are|found)\b|(?:only|exclusively) from)",
    re.IGNORECASE,
)
_RANGE_OF = re.compile(
    r"\b(?:a (?:range|mix(?:ture)?|variety|balance|combination) of|both) (?P<what>[^.;:]{5,90})", re.IGNORECASE
)
_SIGNIFICANT = re.compile(
    r"\b(?:shows?|do|demonstrate|conduct|includ\w+|requires?)\b[^.;:]{0,40}\bresearch\b[^.;:]{0,40}\boutside (?:of )?(?:the |your )?(?:course|class|assigned)",
    re.IGNORECASE,
)


_BREAK = re.compile(r"[,(;:—]| - | (?:that|which|to|if|when|as)\b")
_LISTED = re.compile(r"\b(?:reference list|bibliography|works cited|list of references)\b", re.IGNORECASE)


def _type_in(words: str) -> str:
    hits = {next(i for i in range(len(_TYPES)) if m[f"t{i}"]) for m in _TYPE.finditer(words)}
    return _TYPES[min(hits)][0] if hits else "any"


def _since_in(words: str, given: dt.date | None) -> tuple[int | None, bool, int, int]:
    """The year from which sources may date, whether it is said of all, and where it is said."""
    match = _SINCE.search(words)
    if not match or re.search(
        r"\b(?:majority|most|half|some|many|mostly|preferably)\b[^,;]{0,40}$", words[: match.start()], re.IGNORECASE
    ):
        return None, False, 0, 0
    year: int | None = None
    if match["year"]:
        year = int(match["year"]) + (1 if match["after"] else 0)
    elif match["onward"]:
        year = int(match["onward"])
    elif given:
        count = number_value(match["years"] or match["old"] or "10")
        years = int(count) * (10 if match["decades"] and "decade" in match["decades"] else 1)
        year = given.year - years if years < 500 else None
    return year, bool(match["none"]), match.start(), match.end()


def _is_keyed(sheet: Sheet, sentence: Sentence) -> bool:
    """Whether its label or heading says that it is about sources; the sheet's title says nothing of the kind."""
    heading = "" if sentence.passage.heading in sheet.title else sentence.passage.heading
    return bool(_KEY.search(sentence.passage.key) or _KEY.search(heading)) and not _NOT_KEY.search(sentence.context)


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
        or re.search(r"\b(?:works|items|texts|readings|accounts|commentaries|critics)\b", text, re.IGNORECASE)
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


def _counted(sheet: Sheet, sentence: Sentence, given: dt.date | None) -> list[Requirement]:
    text = sentence.text
    keyed = _is_keyed(sheet, sentence)
    years = [m.span() for m in re.finditer(r"\b(?:19|20)\d\d\b|\b\d{1,2}(?:st|nd|rd|th)\b", text)]
    years += [m.span() for m in _SINCE.finditer(text)]
    quantities = [q for q in find_quantities(text) if not any(a < q.end and q.start < b for a, b in years)]
    rows: list[dict[str, object]] = []
    spans: list[tuple[int, int]] = []
    for quantity, words in _stretches(text, quantities):
        number = quantity.low if quantity.low is not None else quantity.high
        if number is None or number > 100 or number != int(number):
            continue
        other = _OTHER_NOUN.match(words)
        if (
            (other and _type_in(other.group()) != "data")
            or words.startswith(")")
            or (quantity.bare and re.match(r" of (?:our|the|your|his|her|my)\b", words))
        ):
            continue
        before = text[max(0, quantity.start - 60) : quantity.start]
        if re.search(
            r"(?:\b(?:chapters?|parts?|week|section|page|pp?\.|level|paper|assignment|vol(?:ume)?|size|unit|lens|edition|no\.|group)|[#$£€]) $",
            before,
            re.IGNORECASE,
        ):
            continue
        near = words[:70]
        if (bracket := near.find("(")) > 3:
            near = near[:bracket]
        if quantity.bare and not keyed and not _ANAPHOR.search(near[:30]):
            near = _BREAK.split(near)[0]
        kind = _type_in(near)
        noun = _NOUN.search(near)
        anaphor = _ANAPHOR.search(near[:30]) or _ANAPHOR.search(before[-18:])
        if kind == "any" and not noun and not quantity.start and keyed:
            noun = re.match(r"", near)
        label = re.search(r"([\w -]{3,40}): $", before)
        label_kind = (
            _type_in(label[1])
            if label
            else _type_in(sentence.passage.key)
            if sentence.passage.body and not sentence.start
            else "any"
        )
        if kind == "any" and label_kind != "any" and not noun:
            kind = label_kind
        if kind == "any" and re.match(r" such\b", near):
            kind = _type_in(text[: quantity.start])
        if kind == "any" and anaphor and rows and _SINCE.search(words):
            kind = str(rows[-1]["type"])
        if kind == "any" and noun is None and not (keyed and (not quantity.bare or anaphor)):
            continue
        if (
            kind == "any"
            and noun
            and not keyed
            and not _STRICT_NOUN.search(near)
            and not re.match(
                r" (?:\w+ )?(?:items?|works|texts|readings|secondary|accounts|entries|critics|commentaries)\b",
                near,
                re.IGNORECASE,
            )
        ):
            continue
        if noun and kind == "any" and noun.start() > 40:
            continue
        if not (keyed or not quantity.bare or anaphor or _DEMAND.search(text) or quantity.start < 3):
            continue
        if (
            kind == "any"
            and re.search(r"\bone (?:article|source|of)\b", text[quantity.start :][:14], re.IGNORECASE)
            and quantity.bare
            and not anaphor
        ):
            continue
        low, high = quantity.low, quantity.high
        if quantity.bare and low == high:
            exact = re.search(r"\b(?:exactly|precisely|only)\b", before[-12:], re.IGNORECASE)
            high = high if exact else None
        since, of_all, since_start, since_end = _since_in(words, given)
        end = quantity.end + (since_end if since else 0)
        if not since or since_end < len(near):
            hit = max(
                (m.end() for m in (*_TYPE.finditer(near), *_NOUN.finditer(near[:45])) if m.end() <= 60), default=0
            )
            end = max(end, quantity.end + hit)
        row: dict[str, object] = {"min": low, "max": high, "type": kind, "since": since}
        if since and of_all and rows:
            rows[0]["since"], row["since"] = since, None
            spans[0] = (spans[0][0], quantity.end + since_end)
            end = quantity.end + max((m.end() for m in _TYPE.finditer(near)), default=0)
        rows.append(row)
        spans.append((quantity.start, end))
    if rows and not any(row["since"] for row in rows):
        since, of_all, start, end = _since_in(text, given)
        if since and start > spans[0][0]:
            at = 0 if of_all else max(i for i, s in enumerate(spans) if s[0] < start)
            rows[at]["since"] = since
            spans[at] = (spans[at][0], max(end, spans[at][1]))
    return [
        ask(sheet, "sources", row, sentence.span(*span), "must" if row["max"] is None else force_of(text))  # type: ignore[arg-type]
        for row, span in zip(rows, spans, strict=True)
    ]


def _uncounted(sheet: Sheet, sentence: Sentence) -> list[Requirement]:
    """Kinds of source that are asked for without a number."""
    found = []
    text = sentence.text
    if match := _UNCOUNTED.search(text):
        kind = _type_in(text)
        if kind in {"peer-reviewed", "scholarly", "primary"} and not re.search(
            r"\b(?:not have to|need not|do not|don't|can be)\b", text
        ):
            hit = _TYPE.search(text)
            end = max(match.end(), hit.end() if hit else 0)
            values = {"min": None, "max": None, "type": kind, "since": None}
            found.append(
                ask(
                    sheet,
                    "sources",
                    values,
                    sentence.span(min(match.start(), hit.start() if hit else match.start()), end),
                    force_of(text),
                )
            )
    elif (match := _RANGE_OF.search(text)) and re.search(r"\bsources\b", match["what"]):
        for kind in dict.fromkeys(
            _TYPES[next(i for i in range(len(_TYPES)) if m[f"t{i}"])][0] for m in _TYPE.finditer(text, match.start())
        ):
            found.append(
                ask(
                    sheet,
                    "sources",
                    {"min": None, "max": None, "type": kind, "since": None},
                    sentence.span(match.start(), match.end()),
                    "should",
                )
            )
    elif match := _SIGNIFICANT.search(text):
        found.append(
            ask(
                sheet,
                "sources",
                {"min": None, "max": None, "type": "outside", "since": None},
                sentence.span(match.start(), match.end()),
                force_of(text),
            )
        )
    return found


def find_sources(sheet: Sheet, given: dt.date | None = None) -> list[Requirement]:
    """How many sources of which kind the sheet asks for."""
    found: list[Requirement] = []
    seen: set[tuple[object, ...]] = set()
    for sentence in sheet.sentences:
        if not _is_source_sentence(sheet, sentence):
            continue
        for requirement in (*_counted(sheet, sentence, given), *_uncounted(sheet, sentence)):
            key = tuple(requirement.values[k] for k in ("type", "min", "max"))
            if key not in seen:
                seen.add(key)
                found.append(requirement)
    counted = {r.values["type"] for r in found if r.values["min"] is not None or r.values["max"] is not None}
    return [
        r
        for r in found
        if r.values["min"] is not None or r.values["max"] is not None or r.values["type"] not in counted
    ]
