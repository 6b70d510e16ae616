"""Elements: what the paper must contain without being a section: thesis, figures, keywords, statements."""

from __future__ import annotations

import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import find_quantities
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement, Value

_COUNTABLE: tuple[tuple[str, str], ...] = (
    (
        "figure",
        (
            r"(?:(?!that|which|who|of|for|to|is|are|in|with|on|at|or\b)\w+(?:-\w+)?[ ,]{1,2}(?:and )?){0,4}?(?:figures?"
            r"|images?|illustrations?|maps?|graphs?|plots?|exhibits?|charts?|diagrams?|photographs?|photos|stills"
            r"|screenshots"
            r"|screen (?:captures|grabs)|music(?:al)? examples?|pictures|visuals?|graphics?)"
        ),
    ),
    ("table", r"(?:\w+ ){0,2}?tables?"),
    ("direct-quotation", r"(?:\w+ ){0,2}?(?:quotations?|quotes)"),
    ("keywords", r"key ?words?"),
    (
        "counterargument",
        (
            r"(?:\w+ ){0,2}?(?:counter-?arguments?|counter-?claims?|objections?|opposing (?:views?|arguments?"
            r"|viewpoints?))"
        ),
    ),
)
_COUNT_PATTERNS = tuple(
    (what, re.compile(rf"[- ]+(?:of )?(?P<noun>{words})\b", re.IGNORECASE)) for what, words in _COUNTABLE
)

_PLAIN: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (what, re.compile(words, re.IGNORECASE))
    for what, words in (
        (
            "thesis",
            (
                r"\b(?:(?:an?|your|the|one) (?:[\w-]+,? ){0,3}?thesis(?: statement)?(?! (?:committee|supervisor"
                r"|that seems|from|by))|thesis-driven|or thesis\b|thesis statement|thesis(?=\.?$))"
            ),
        ),
        (
            "counterargument",
            (
                r"\b(?:an? (?:\w+ )?(?:counter-?argument|counter-?claim)|counter-?arguments?|counter-?claims?"
                r"|(?:the )?(?:best|strongest|main|most serious|an?|one|likely"
                r"|possible) (?:\w+ )?objections?[^.;]{0,80}\b(?:repl(?:y|ies)|respond|answer|rebut|refute)"
                r"|(?:take on|answer|engage with|reply to|respond to) (?:\w+ ){1,3}who (?:would |might "
                r"|could )?disagrees?"
                r"|(?:raise|give|present|put|state|offer|develop|discuss)\b[^.;]{0,60}\bobjections?"
                r"|(?:address|consider|respond to|acknowledge|refute|rebut|reply to|answer|engage with"
                r"|anticipate) (?:\w+ ){0,6}(?:objections?|opposing (?:\w+ )?(?:views?|viewpoints?|arguments?"
                r"|positions?|sides?)|other sides?))"
            ),
        ),
        (
            "figure",
            (
                r"\b(?:include|with|add|provide|contain|incorporate|requires?) (?:\w+ ){0,2}?an? (?:\w+ ){0,2}(?:figure"
                r"|map|graph|chart|diagram|image|illustration)\b"
            ),
        ),
        (
            "table",
            (
                r"\b(?:include|with|add|provide|contain|incorporate|requires?|or"
                r"|and) (?:\w+ ){0,2}?a (?:\w+ ){0,2}table\b(?! of contents)"
            ),
        ),
        (
            "abstract",
            r"\b(?:an|your|with an|structured|short) (?:\d[\w-]* |\w+[- ]){0,2}?abstract\b|(?:^|; )abstract\b",
        ),
        (
            "keywords",
            (
                r"\b(?:(?:list|give|add|provide|include|supply|with|and|followed by) (?:of |some |several |your )?"
                r"|^)key ?words\b"
            ),
        ),
        ("introduction", r"\ban (?:\w+ )?introduction\b|^introduction(?=$|\.$| and \w+$)"),
        (
            "conclusion",
            (
                r"(?<!to )(?<!at )(?<!reach )\ba (?:[\w-]+ ){0,2}?conclusion\b|(?:^|; )conclusion(?=;|$)"
                r"|^introduction and conclusion$"
            ),
        ),
        (
            "headings",
            (
                r"\b(?:(?:sub-?)?headings are (?:expected|required|needed|compulsory)"
                r"|use (?:\w+ ){0,3}(?:sub-?)?headings|level[- ](?:one|two|1|2)[^.;]{0,30}headings"
                r"|with (?:\w+ ){0,2}(?:sub-?)?headings|headings (?:should|must) be used|(?:clear|descriptive"
                r"|section) (?:sub-?)?headings|(?:include|use|have)\b[^.;]{0,40}\b(?:sub-?)?headings)"
                r"|^(?:sub-?)?headings\.?$"
            ),
        ),
        (
            "direct-quotation",
            (
                r"\b(?:include|use|with) (?:\w+ ){0,2}direct (?:quotations?|quotes)|quote directly\b"
                r"|\b(?:include|contain|use|have) (?:an?|one) (?:\w+ )?(?:block|indented|set-off) quot(?:ation|e)\b"
            ),
        ),
        (
            "no-first-person",
            (
                r"\b(?:(?:do not|don't|never|avoid|not|no|without)(?: (?:us(?:e|ing)|write in|writing in|in|to use|be"
                r"|be written in))?(?: the)?(?: use of)?(?: the)? first[- ]person|(?:avoid|do not use|don't use"
                r"|never use) (?:\"I\"|'I'|I\b)|(?:in|use) the third person)"
            ),
        ),
        (
            "literature-review",
            (
                r"\ba (?:[\w-]+ ){0,3}?(?:literature review|review of (?:the )?(?:relevant |existing "
                r"|previous )?(?:literature|research))\b|^literature review(?: section|\.?$| required)"
            ),
        ),
        (
            "method",
            (
                r"\b(?:an? (?:\w+ ){0,3}(?:on|of|about|describing|explaining) (?:your|the) (?:methods?|methodology)"
                r"|a (?:\w+ )?(?:methods?|methodology) (?:section|paragraph|statement)|describe your (?:method"
                r"|methodology|methods))\b|^method(?:s|ology)? section"
            ),
        ),
        (
            "word-count-stated",
            (
                r"\b(?:(?:state|give|include|put|add|note|print|write|record|declare|indicate|show|report) (?:the "
                r"|your |an? )?(?:\w+ )?(?:word[- ]count|number of words)|^word[- ]count (?:on|at) the"
                r"|word[- ]count (?:must|should|is to|has to"
                r"|needs to|will)?\s?(?:be )?(?:stated|given|included|shown|recorded|declared|noted|appear\w*|printed)"
                r"|(?:bear|carry|show)[^.;]{0,60}\bword[- ]count|(?:cover|title|front) (?:page"
                r"|sheet)\b[^.;]{0,60}\bword[- ]count|(?:with|giving|and|stating|includ\w+"
                r"|,)[^.;]{0,60}(?<!in )(?<!from )\bthe word[- ]count)"
            ),
        ),
        (
            "reflection",
            (
                r"\b(?:a|one|an) (?:[\w-]+ ){0,2}?(?:paragraph of reflection|reflection|reflective (?:statement|note"
                r"|paragraph|account|commentary))\b"
            ),
        ),
    )
)
_DEMANDING = re.compile(
    r"\b(?:must|should|need|needs|required?|include|includes|have|has|with|begin|open|start|end|close|state|give"
    r"|provide|add|expected|please|write|contain|contains|want|follow(?:ed)? by|put|make|makes|present|develop|use"
    r"|support|quote|takes?|advance)\b",
    re.IGNORECASE,
)
_NEGATED = re.compile(
    r"\b(?:no|not|n't|without|never|optional|unless|need not|neither|nor|instead of|rather than|whether|if you)\b"
    r"|n't\b",
    re.IGNORECASE,
)
_AI = re.compile(r"\b(?:AI|A\.I\.|artificial intelligence|generative|chatbots?|language models?)\b")
_STATEMENT = re.compile(
    r"\b(?:(?:AI|use|disclosure|acknowledg\w+|declaration) (?:use )?(?:statement|declaration|acknowledg\w+|note)"
    r"|statement\b[^.;]{0,40}\b(?:of|on|about|describing|explaining|saying) (?:\w+ ){0,3}(?:AI|use)"
    r"|(?:disclos\w+|declar\w+|acknowledg\w+|say so|describ\w+|explain\w*|state[d]?|report\w*|not(?:e|ed)"
    r"|list(?:ed)?|tell me)\b[^.;!?]{0,90}?\b(?:in (?:an? |the |your )(?:[\w-]+ ){0,3}(?:note|footnote|endnote"
    r"|statement|paragraph|appendix|declaration|acknowledg\w+|sentence|cover sheet)|on the (?:last|final|title"
    r"|first|cover) (?:page|sheet)|at the end))",
    re.IGNORECASE,
)
_KEYED = re.compile(
    r"(?:(?P<table>tables?)|(?P<keywords>key ?words)|figures?|visuals?|images?|illustrations?|maps?|charts?):? (?=\S)",
    re.IGNORECASE,
)
_RUBRIC = re.compile(r"\b(?:rubric|grading|marks?|criteri|points|assess(?:ment|ed)|graded|marked)\b", re.IGNORECASE)
_BLOCK = re.compile(r"\b(?:block|indented|set-off)\b", re.IGNORECASE)
_COUNT_NEGATED = re.compile(r"\b(?:no|not|n't|without|neither|nor|than|exclud\w+|count\w*)\W*$", re.IGNORECASE)
_NOT_THIS = re.compile(r"\b(?:copied|longer than|of the novel|of contents|multiplication)\b", re.IGNORECASE)


def _countables(sentence: Sentence) -> list[tuple[str, int | None, int, int]]:
    text = sentence.text
    hits: list[tuple[str, int | None, int, int]] = []
    for quantity in find_quantities(text):
        for what, pattern in _COUNT_PATTERNS:
            match = pattern.match(text, quantity.end)
            number = quantity.low
            if not match or number is None or number > 50 or _NOT_THIS.search(match["noun"]):
                continue
            if (
                re.search(
                    r"\b(?:and|or|of which|words?|pages?|sources?|marks?|points?|paragraphs?|days?)\b", match["noun"]
                )
                and what != "figure"
            ):
                continue
            if what == "figure" and re.search(
                r"\b(?:words?|pages?|sources?|marks?|points?|paragraphs?|days?|tables?|articles?|sections?"
                r"|references?)\b",
                match["noun"],
                re.IGNORECASE,
            ):
                continue
            asked = (
                not quantity.bare
                or _DEMANDING.search(text)
                or quantity.start < 6
                or hits
                or _DEMANDING.search(sentence.passage.lead)
                or re.search(r"minimum|at least", text, re.IGNORECASE)
            )
            if asked and not _COUNT_NEGATED.search(text[: quantity.start]):
                after = re.match(r"(?: at)?,? ?minimum", text[match.end() :])
                hits.append((what, int(number), quantity.start, match.end() + (after.end() if after else 0)))
            break
    if not hits and (keyed := _KEYED.match(text)):
        first = next(iter(find_quantities(text[keyed.end() :])), None)
        if first and first.start == 0 and first.low and not re.match(r" \w", text[keyed.end() + first.end :]):
            what = "table" if keyed["table"] else "keywords" if keyed["keywords"] else "figure"
            hits.append((what, int(first.low), 0, keyed.end() + first.end))
    if not hits and (
        meant := re.match(
            r"\W*(?:\w+ ){0,2}(?:images|screen grabs|figures|illustrations|maps|photographs|tables)\b",
            text,
            re.IGNORECASE,
        )
    ):
        for quantity in find_quantities(text):
            if (
                quantity.low
                and quantity.low < 50
                and re.search(r"\b(?:have|include|use|need|embed|insert|add) $", text[: quantity.start])
                and re.match(r"[.,;!]|$| in (?:your|the) (?:text|paper|essay)", text[quantity.end :])
            ):
                what = "table" if "tables" in meant.group().lower() else "figure"
                return [(what, int(quantity.low), quantity.start, quantity.end)]
    return hits


def _plain(sentence: Sentence) -> list[tuple[str, int | None, int, int]]:
    text = sentence.text
    hits: list[tuple[str, int | None, int, int]] = []
    for what, pattern in _PLAIN:
        match = pattern.search(text)
        if not match:
            continue
        clause_start = max(text.rfind(mark, 0, match.start()) for mark in (";", ". ", ":")) + 1
        before = text[clause_start : match.start()]
        if what != "no-first-person" and _NEGATED.search(before):
            continue
        after = text[match.end() : match.end() + 45]
        if what not in {"no-first-person", "word-count-stated"} and re.search(
            r"^ if you\b|\b(?:is|are) (?:not (?:needed|required|necessary)|optional|unnecessary)\b|\bcount", after
        ):
            continue
        if what in {
            "thesis",
            "counterargument",
            "introduction",
            "conclusion",
            "abstract",
            "literature-review",
            "method",
            "reflection",
            "table",
        }:
            opens = not before.strip(" -\t\"'(") or before.rstrip().endswith((",", " and"))
            if not (
                opens
                or _DEMANDING.search(before + (match.group() if what == "counterargument" else ""))
                or _DEMANDING.search(after[:30])
            ):
                continue
        if what == "abstract" and re.search(r"\b(?:read|example|search|take)\b", before, re.IGNORECASE):
            continue
        if (
            what == "abstract"
            and match.group().lower().strip("; ") == "abstract"
            and not re.match(
                r"[: ]*(?:required|is required|yes|of|,? ?\(?\d|\.)",
                text[match.end() :] + sentence.following,
                re.IGNORECASE,
            )
        ):
            continue
        if (
            what == "reflection"
            and re.search(r"\b(?:write|paper|essay)\b", before, re.IGNORECASE)
            and not re.search(r"\bend\b", text)
        ):
            continue
        if what == "thesis" and re.search(r"\b(?:dissertation|master|doctoral|phd)\b", text, re.IGNORECASE):
            continue
        hits.append((what, None, match.start(), match.end()))
    return hits


def find_element(sheet: Sheet) -> list[Requirement]:
    """The elements that the sheet asks for, each once."""
    found: dict[str, Requirement] = {}
    ai_near = ""
    for sentence in sheet.sentences:
        text = sentence.text
        row = sentence.passage.kind == "row" and re.search(
            r"(?<!minimum )(?<!least )(?<!\d)\d+ ?(?:%|points?|marks?|pts)?\t?$", sentence.passage.text
        )
        about_ai = (
            _AI.search(text)
            or (ai_near == sentence.passage.text)
            or re.search(r"\b(?:ai|artificial intelligence)\b", sentence.context)
        )
        if _AI.search(text):
            ai_near = sentence.passage.text
        if about_ai and "ai-statement" not in found and (match := _STATEMENT.search(text)):
            found["ai-statement"] = ask(
                sheet,
                "element",
                {"what": "ai-statement", "min": None},
                sentence.span(match.start(), match.end()),
                "must",
            )
        if row or TOLD.search(text) or re.search(r"\(\d+ ?(?:%|marks|points)\)", text):
            continue
        if _RUBRIC.search(sentence.context) and not sentence.passage.heading.lower().startswith("requirement"):
            continue
        for what, low, start, end in (*_countables(sentence), *_plain(sentence)):
            known = found.get(what)
            if known is None or (low is not None and known.values["min"] is None):
                values: dict[str, Value] = {"what": what, "min": low}
                if what == "direct-quotation" and _BLOCK.search(text[start:end]):
                    values["form"] = "block"
                found[what] = ask(sheet, "element", values, sentence.span(start, end), force_of(text))
    return sorted(found.values(), key=lambda r: r.span)
