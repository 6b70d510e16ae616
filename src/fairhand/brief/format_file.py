"""The file that is handed in: its type and name; and the paper copy."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.brief.hit import Hit
from fairhand.brief.layout import Sentence
from fairhand.brief.printing import find_printed_copy
from fairhand.brief.terms import make_terms

_TYPES: tuple[tuple[str, str], ...] = (
    (
        "docx",
        (
            r"\.docx?\b|\bdocx\b|(?:MS |Microsoft )?Word (?:document|file|format|doc\b)|\bin Word\b|\bas (?:a )?Word\b"
            r"|\bWord-process(?:ed|or) (?:file|document)|\bWord(?= or |,? not )|(?<=PDF or )Word"
            r"|(?<=ile type: )Word\b|(?<=ile format: )Word\b|(?<=ormat: )Word\b"
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
    r"\b(?:via|files?|hand-in|sav(?:e|ed)|submi\w+|upload\w*|e-?mail\w*|send|sent|format|as an?|only|single"
    r"|deliverables?|hand(?:ed)? in|turn(?:ed)? in|attach\w*|post|has to be|must be|export\w*|document|opened"
    r"|accepted|convert\w*|(?:soft|electronic) cop(?:y|ies))\b",
    re.IGNORECASE,
)
_FILE_KEY = re.compile(r"files?\b", re.IGNORECASE)
_BARE_NAME = re.compile(r"(?<![\w-])(?P<name>[A-Za-z0-9]+(?:_[A-Za-z0-9]+){1,6}(?:\.[A-Za-z]{2,4})?)(?![\w-])")
_WITH_ENDING = re.compile(r"(?<![\w/.@-])[A-Za-z0-9]+(?:_[A-Za-z0-9]+)+\.(?:pdf|docx?|odt|rtf)\b")
_NAMED = re.compile(
    r"(?:\b(?:sav(?:e|ed)(?: \w+){0,3} as|submit(?:ted)? as|nam(?:e|ed|ing)|call(?:ed)?|titled?|labell?ed"
    r"|file[- ]?names?)\b(?:(?:[^.;?!\n]"
    r"|e\.g\.){0,90}?)[ :(\"'])(?P<name>[A-Za-z0-9{}<>\[\]]+(?:[_-][A-Za-z0-9{}<>\[\]]+)+(?:\.[A-Za-z]{2,4})?)",
    re.IGNORECASE,
)


def find_print(sentence: Sentence) -> Iterator[Hit]:
    """The paper itself, printed."""
    if match := find_printed_copy(sentence.text):
        yield "printed", True, match.start(), match.end()


def find_file_types(sentence: Sentence) -> Iterator[Hit]:
    """The types of file that are taken."""
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


def find_file_names(sentence: Sentence) -> Iterator[Hit]:
    """The file's name as the sheet gives it, with the type that it ends in."""
    named = _FILE_KEY.match(sentence.passage.key) and _BARE_NAME.search(sentence.text, sentence.passage.body)
    ended = _WITH_ENDING.search(sentence.text)
    if ended and not named and not _NAMED.search(sentence.text):
        yield "file-name", ended.group(), ended.start(), ended.end()
    for match in (named,) if named else _NAMED.finditer(sentence.text):
        name = match["name"]
        if "_" in name or (
            re.search(r"\bfile|\bsave|\bdocument|\bPDF", sentence.text + sentence.context, re.IGNORECASE)
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
