"""Format: type, spacing, margins, heads, page numbers, files."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import NUMBER, number_value
from fairhand.brief.printing import find_printed_copy
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement, Value

Hit = tuple[str, Value, int, int]
"""What, its value, and the stretch of the sentence that asks it."""

_FACES = (
    "Times New Roman", "Times", "Arial", "Calibri", "Cambria", "Garamond", "EB Garamond", "Georgia", "Helvetica",
    "Verdana", "Courier New", "Courier", "Palatino Linotype", "Palatino", "Book Antiqua", "Bookman Old Style",
    "Century Schoolbook", "Century", "Baskerville", "Aptos", "Tahoma", "Trebuchet MS", "Lucida Sans Unicode",
    "Lucida Sans", "Computer Modern", "Liberation Serif", "Liberation Sans", "Gill Sans", "Open Sans", "Noto Serif",
    "Noto Sans", "Source Serif", "Constantia", "Didot", "Bodoni", "Caslon", "Minion Pro", "Charter", "Carlito",
    "Tinos", "Arimo", "Franklin Gothic", "Futura",
)  # fmt: skip
_FACE = re.compile(r"\b(?:" + "|".join(sorted(_FACES, key=len, reverse=True)) + r")\b")
_FACED = re.compile(rf"{_FACE.pattern},? (?P<n>[89]|1\d|2[0-4])(?![\d.]|[ -]?(?:pt|point|inch|cm|pages|words))")
_SIZE = re.compile(
    rf"(?<![\d.,])(?P<a>{NUMBER})[- ]?(?:pt\b|point\b)(?! (?:scale|lead))|\b(?:font |type "
    rf"|letter )?size:? (?:of )?(?P<b>\d{{1,2}})(?![\d.]\d| ?pages)",
    re.IGNORECASE,
)
_SPACING_WORDS = r"(?P<w{0}>double|single|triple|1\.15|1\.5|one[- ]and[- ]a[- ]half|1½|2\.0|1\.0|2)"
_SPACING = re.compile(
    rf"\b{_SPACING_WORDS.format(1)}(?:-| )?(?:line[- ])?spac(?:ed|ing|e)\b|\b(?:line[- ])?spacing(?: (?:of|at|is"
    rf"|should be|must be))?:?\s(?:of )?{_SPACING_WORDS.format(2)}\b"
    rf"|\bspaced (?:at )?{_SPACING_WORDS.format(3)}\b|\b{_SPACING_WORDS.format(4)} lines?\b(?= spac)",
    re.IGNORECASE,
)
_LENGTH = (
    r"(?P<{0}>\d{{1,2}}(?:\.\d{{1,2}})?|one[- ]and[- ]a[- ]half|one|two|half an|half"
    r"|an?)[- ]?(?P<{1}>in(?:ch(?:es)?)?\b\.?|\"|''|cm\b|mm\b|centimet(?:re|er)s?)"
)
_MARGINS = re.compile(
    rf"{_LENGTH.format('a', 'ua')}(?:[- ](?:wide |page )?margins?\b|(?: \w+)? margins?)|\bmargins?(?: (?:should be"
    rf"|must be|are|is|of(?: at least)?|set (?:at|to)|all round|on all sides"
    rf"|at least)){{0,2}}:?\s{{0,2}}(?:of )?{_LENGTH.format('b', 'ub')}",
    re.IGNORECASE,
)
_INDENT = re.compile(
    rf"\bindent(?:ed|ation|s)?\b(?: (?:the )?(?:first line|each paragraph|paragraphs?|of|by|to|is|should be|must be"
    rf"|are)){{0,4}}:?\s{{0,2}}{_LENGTH.format('a', 'ua')}|{_LENGTH.format('b', 'ub')}[- ](?:paragraph "
    rf"|first-line )?indent",
    re.IGNORECASE,
)
_PAGE_NUMBERS = re.compile(
    r"\b(?:page[- ]numbers?(?:ing|ed)?|number(?:ed)? (?:the |all |your |every |each )?(?:of the )?pages?"
    r"|pages? (?:are |is |must be |should be |to be |be )?(?:all )?numbered|pagination|paginated?)\b",
    re.IGNORECASE,
)
_CITED_PAGES = re.compile(
    r"\b(?:specific|cit(?:e|es|ed|ing|ation|ations)|quot\w+|sources?|lacks?|author|card|reference to|references?"
    r"|just put|when quoting|for each)\b",
    re.IGNORECASE,
)
_VERTICAL = re.compile(r"\b(?P<v>top|upper|bottom|lower|foot|head|footer|header)\b", re.IGNORECASE)
_SIDE = re.compile(r"\b(?P<s>right|left|centred?|centered?|center|middle)(?:-hand)?\b", re.IGNORECASE)
_RUNNING = re.compile(
    r"\b(?:running (?:heads?|headers?|title)|(?:page )?headers? (?:with|containing|that (?:has|gives|bears"
    r"|includes)|showing|on (?:each|every)))\b",
    re.IGNORECASE,
)
_TITLE_PAGE = re.compile(r"\b(?:(?:separate )?title[- ]page|cover (?:page|sheet)|titlepage)\b", re.IGNORECASE)
_NO_TITLE_PAGE = re.compile(
    r"\b(?:no|without (?:a )?|(?:do not|don't) (?:include|add|use|make|attach|bother with|give) (?:a )?"
    r"|omit (?:the |a )?|leave off (?:the )?) ?(?:separate )?(?:title[- ]page|cover (?:page|sheet))",
    re.IGNORECASE,
)
_NOT_NEEDED = re.compile(r"\b(?:needed|necessary|required|need|have to|optional)\b", re.IGNORECASE)
_MUST_NOT = re.compile(r"\b(?:none should|should not|must not|do not|don't)\b", re.IGNORECASE)
_LINES = re.compile(
    r"\b(?:(?:continuous(?:ly)? )?line[- ]number(?:s|ed|ing)?|lines (?:should be |must be |are |to be )?numbered"
    r"|number (?:the|your|all) lines)\b",
    re.IGNORECASE,
)
_HEADINGS = re.compile(
    r"\b(?:number(?:ed)? (?:your |the |all )?(?:sub-?)?headings|(?:sub-?)?headings?(?: (?:should be|must be|are"
    r"|to be))? (?:\w+ )?numbered)\b",
    re.IGNORECASE,
)
_TYPES: tuple[tuple[str, str], ...] = (
    (
        "docx",
        (
            r"\.docx?\b|\bdocx\b|(?:MS |Microsoft )?Word (?:document|file|format|doc\b)|\bin Word\b|\bas (?:a )?Word\b"
            r"|\bWord-process(?:ed|or) (?:file|document)|\bWord(?= or )|(?<=PDF or )Word"
        ),
    ),
    ("pdf", r"(?<![\w])\.?pdfs?\b(?! of (?:the|an?) (?:article|chapter|reading|book))"),
    ("odt", r"\.odt\b|\bodt\b|OpenDocument"),
    ("rtf", r"\.rtf\b|\brtf\b|rich[- ]text"),
    ("md", r"\.md\b|\bmarkdown\b"),
    ("tex", r"\.tex\b|\bLaTeX\b"),
    ("txt", r"\.txt\b|plain[- ]text file"),
    ("html", r"\.html?\b"),
)
_TYPE = make_terms(_TYPES, before="", after="")
_FILE = re.compile(
    r"\b(?:files?|hand-in|sav(?:e|ed)|submi\w+|upload\w*|e-?mail\w*|send|sent|format|as an?|only|single"
    r"|deliverables?|hand(?:ed)? in|turn(?:ed)? in|attach\w*|post|has to be|must be|export\w*|document|opened"
    r"|accepted|convert\w*)\b",
    re.IGNORECASE,
)
_NAMED = re.compile(
    r"(?:\b(?:sav(?:e|ed)(?: \w+)? as|nam(?:e|ed|ing)|call(?:ed)?|titled?|labell?ed"
    r"|file[- ]?names?)\b(?:(?:[^.;?!\n]"
    r"|e\.g\.){0,90}?)[ :(\"'])(?P<name>[A-Za-z0-9{}<>\[\]]+(?:[_-][A-Za-z0-9{}<>\[\]]+)+(?:\.[A-Za-z]{2,4})?)",
    re.IGNORECASE,
)


def _measure(number: str, unit: str) -> str:
    number = number.lower().replace("-", " ")
    words = {"one": 1.0, "two": 2.0, "an": 1.0, "a": 1.0, "half": 0.5, "half an": 0.5, "one and a half": 1.5}
    value = words[number] if number in words else float(number)
    unit = unit.lower().strip(".")
    short = "cm" if unit.startswith("c") else "mm" if unit == "mm" else "in"
    return f"{value:g} {short}"


def _either(match: re.Match[str]) -> str:
    return _measure(match["a"] or match["b"], match["ua"] or match["ub"])


_NEGATION = re.compile(r"\b(?:no|not|without|never|optional|unnecessary|instead of|neither|nor)\b|n't\b", re.IGNORECASE)


def _negated(text: str, start: int, end: int) -> bool:
    """Whether the clause round a stretch denies it."""
    left = max(text.rfind(mark, 0, start) for mark in ",;:(.") + 1
    right = min((at for mark in ",;)." if (at := text.find(mark, end)) >= 0), default=len(text))
    return bool(_NEGATION.search(text[left:right]))


def _fonts(sentence: Sentence) -> Iterator[Hit]:
    text = sentence.text
    for match in _FACE.finditer(text):
        name = match.group()
        near = text[max(0, match.start() - 40) : match.end() + 40]
        if name in {"Times", "Century", "Charter", "Georgia", "Caslon", "Futura"} and not re.search(
            r"\b(?:font|typeface|pt|point|type|size)\b", near
        ):
            continue
        yield "font", name, match.start(), match.end()


def _sizes(sentence: Sentence) -> Iterator[Hit]:
    text = sentence.text
    for match in _FACED.finditer(text):
        yield "font-size", f"{int(match['n'])} pt", match.start(), match.end()
        return
    for match in _SIZE.finditer(text):
        size = number_value(match["a"] or match["b"])
        near = text[max(0, match.start() - 45) : match.end() + 40]
        if not 6 <= size <= 30 or not (
            _FACE.search(near)
            or re.search(r"pt\b", match.group(), re.IGNORECASE)
            or re.search(
                r"\b(?:font|type|typeface|text|serif|characters|lettering)\b",
                f"{near} {sentence.context}",
                re.IGNORECASE,
            )
        ):
            continue
        yield "font-size", f"{size:g} pt", match.start(), match.end()
        return


def _spacings(sentence: Sentence) -> Iterator[Hit]:
    names = {
        "double": "double",
        "2": "double",
        "2.0": "double",
        "single": "single",
        "1.0": "single",
        "triple": "triple",
        "1.15": "1.15",
    }
    for match in _SPACING.finditer(sentence.text):
        word = next(w for w in (match["w1"], match["w2"], match["w3"], match["w4"]) if w).lower()
        yield "spacing", names.get(word, "1.5"), match.start(), match.end()
        return


def _margins(sentence: Sentence) -> Iterator[Hit]:
    for match in _MARGINS.finditer(sentence.text):
        yield "margins", _either(match), match.start(), match.end()
        return


def _indents(sentence: Sentence) -> Iterator[Hit]:
    match = _INDENT.search(sentence.text)
    if match and not re.search(
        r"hanging|quotation|quote", sentence.text[max(0, match.start() - 40) : match.end()], re.IGNORECASE
    ):
        yield "paragraph-indent", _either(match), match.start(), match.end()


def _page_numbers(sentence: Sentence) -> Iterator[Hit]:
    text = sentence.text
    match = _PAGE_NUMBERS.search(text)
    if not match:
        return
    near = text[match.end() : match.end() + 70]
    cut = re.search(r"[;.]|, (?:and )?(?:double|one|1|single|\d)", near)
    near = near[: cut.start()] if cut else near
    ahead = text[max(0, match.start() - 50) : match.start()]
    vertical, side = _VERTICAL.search(near), _SIDE.search(near)
    before_it = _VERTICAL.search(ahead), _SIDE.search(ahead)
    if not (vertical or side) and all(before_it):
        vertical, side = before_it
        near = ahead
    if not (vertical or side):
        if _CITED_PAGES.search(text) or (
            len(text.split()) > 25
            and "numbered" not in match.group().lower()
            and not match.group().lower().startswith("number")
        ):
            return
        yield "page-numbers", True, match.start(), match.end()
        return
    if _CITED_PAGES.search(text[max(0, match.start() - 30) : match.end()]):
        return
    end = match.end() + max(m.end() for m in (vertical, side) if m) if near is not ahead else match.end()
    yield "page-numbers", _place(vertical, side), match.start(), end


def _place(vertical: re.Match[str] | None, side: re.Match[str] | None) -> str:
    words = []
    if vertical:
        words.append("top" if vertical["v"].lower() in {"top", "upper", "head", "header"} else "bottom")
    if side:
        words.append(side["s"].lower() if side["s"].lower() in {"left", "right"} else "centre")
    return " ".join(words)


def _heads(sentence: Sentence) -> Iterator[Hit]:
    match = _RUNNING.search(sentence.text)
    if match and not _negated(sentence.text, match.start(), match.end()):
        yield "running-head", True, match.start(), match.end()


def _title_pages(sentence: Sentence) -> Iterator[Hit]:
    text = sentence.text
    match = _TITLE_PAGE.search(text)
    if not match:
        return
    before, after = text[: match.start()], text[match.end() :]
    if negative := _NO_TITLE_PAGE.search(text):
        rest = text[negative.end() :]
        if not _NOT_NEEDED.search(rest[:25]) or _MUST_NOT.search(rest):
            yield "no-title-page", True, negative.start(), negative.end()
        return
    if _negated(text, match.start(), match.end()):
        return
    opens = not before.strip(" -") or before.strip().lower() in {"a", "separate"}
    if (
        not opens
        and not re.match(r" (?:should|must|needs to|has to|will) ", after)
        and re.search(
            r"\b(?:on|the|each|their|from|of|count\w*|excluding|exclud\w+|excludes|including|counting) (?:the "
            r"|your |a )?$",
            before,
            re.IGNORECASE,
        )
        and not re.search(r"\b(?:include|with|add|have|need) (?:the |your |a )?$", before, re.IGNORECASE)
    ):
        return
    if (
        not opens
        and re.search(r"\b(?:exclud\w+|(?<!word )count(?:ing|ed|s)?)\b", text, re.IGNORECASE)
        and not re.search(r"\b(?:with|include|plus|add|required?) (?:\w+ )?(?:an? )?$", before, re.IGNORECASE)
    ):
        return
    article = re.search(r"\b(?:an?|separate|with|include|plus|and) $", before, re.IGNORECASE)
    carries = re.match(
        r" (?:should|must|needs to|has to|will) (?:carry|bear|include|have|give|show|state|contain)",
        after,
        re.IGNORECASE,
    )
    alone = not before.strip(" -:\t(") and (
        not after.strip(" .:\t")
        or re.match(r"[: ]*(?:required|yes|needed|with|\.|is required|must|should|:|,)", after, re.IGNORECASE)
    )
    listed = before.rstrip().endswith((",", ".", ";")) and (not after or after[0] in ",.;")
    if article or alone or listed or carries:
        yield "title-page", True, match.start(), match.end()


def _lines(sentence: Sentence) -> Iterator[Hit]:
    if match := _LINES.search(sentence.text):
        yield "line-numbers", True, match.start(), match.end()


def _headings(sentence: Sentence) -> Iterator[Hit]:
    if match := _HEADINGS.search(sentence.text):
        yield "headings", "numbered", match.start(), match.end()


def _printed(sentence: Sentence) -> Iterator[Hit]:
    if match := find_printed_copy(sentence.text):
        yield "printed", True, match.start(), match.end()


def _file_types(sentence: Sentence) -> Iterator[Hit]:
    text = sentence.text
    if not (_FILE.search(text) or _FILE.search(sentence.context)):
        return
    for match in _TYPE.finditer(text):
        before = text[max(0, match.start() - 20) : match.start()]
        if re.search(
            r"\b(?:not|no|never|rather than|than|instead of)(?: (?:an?|as|in|the))* ?\(?$", before, re.IGNORECASE
        ) or re.search(r"[\w-]$", before):
            continue
        if re.search(r"\b(?:like|such as|article|scan|reading)\b", before, re.IGNORECASE) or re.match(
            r" (?:is|are|will be)? ?(?:posted|available|on the course)", text[match.end() :]
        ):
            continue
        if _TYPE.name(match) == "docx" and sentence.text[match.end() : match.end() + 7].lower().startswith(" count"):
            continue
        yield "file-type", _TYPE.name(match), match.start(), match.end()


def _file_names(sentence: Sentence) -> Iterator[Hit]:
    for match in _NAMED.finditer(sentence.text):
        name = match["name"]
        if "_" in name or (
            re.search(r"\bfile|\bsave|\bdocument", sentence.text + sentence.context, re.IGNORECASE)
            and (re.search(r"[A-Z].*-|-.*[A-Z]|\.\w{2,4}$", name))
        ):
            yield "file-name", name, match.start(), match.end("name")
            if "." in name and (kind := _TYPE.search(name[name.rindex(".") :])):
                yield (
                    "file-type",
                    _TYPE.name(kind),
                    match.start(),
                    match.end("name"),
                )
            return


_RULES: tuple[Callable[[Sentence], Iterator[Hit]], ...] = (
    _sizes,
    _fonts,
    _spacings,
    _margins,
    _page_numbers,
    _heads,
    _title_pages,
    _headings,
    _indents,
    _lines,
    _printed,
    _file_types,
    _file_names,
)


def find_format(sheet: Sheet) -> list[Requirement]:
    """The rules of form that the sheet states, each once."""
    found: list[Requirement] = []
    seen: dict[str, set[Value]] = {}
    for sentence in sheet.sentences:
        if TOLD.search(sentence.text) or (
            sentence.passage.kind == "row"
            and re.search(r"\t\d+ ?(?:%|points?|marks?|pts)?\t?$|\(\d+ ?%\)$", sentence.passage.text)
        ):
            continue
        for rule in _RULES:
            for what, value, start, end in rule(sentence):
                values = seen.setdefault(what, set())
                if value in values or (value is True and values) or (what == "page-numbers" and values):
                    continue
                if what == "title-page" and "no-title-page" in seen:
                    continue
                values.add(value)
                found.append(
                    ask(
                        sheet,
                        "format",
                        {"what": what, "value": value},
                        sentence.span(start, end),
                        force_of(sentence.text),
                    )
                )
    return found
