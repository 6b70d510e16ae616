"""What the sheets ask of the hand-in: form, name, way, statements, and whether the name may stand in it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from fairhand.brief.layout import Sentence, read_sheet
from fairhand.brief.wording import TOLD
from fairhand.model.requirement import Requirement

FORMS = ("pdf", "docx", "odt", "html", "md")
"""The kinds of file that can be made."""
KINDS: Mapping[str, str] = {
    "tools": "What programs you used, and for what",
    "help": "Who helped you, and with what",
    "originality": "That the work is your own",
}
"""The statements that sheets ask for, and what each is about."""
HEADS: Mapping[str, str] = {"tools": "Programs used", "help": "Help received", "originality": "Originality"}
"""What stands over each statement where it is handed in."""
_ANONYMOUS = re.compile(
    r"\banonym(?:ous(?:ly)?|ity|i[sz]ed?)\b|\bblind[- ](?:mark(?:ed|ing)|grad(?:ed|ing)|read(?:ing)?)\b"
    r"|\b(?:mark|grad|read)(?:ed|ing)? blind\b"
    r"|\b(?:do not|don't|never|must not|should not|may not|not to) (?:put|write|include|give|state|show|have|print|use"
    r"|type|add)\b[^.;]{0,25}\byour (?:full )?names?\b"
    r"|\bno names?\b[^.;]{0,40}\b(?:on|in|anywhere|appear|please)\b"
    r"|\b(?:without|leave (?:off|out)|omit|remove|take (?:off|out)|strip)\b[^.;]{0,20}"
    r"\b(?:your|any|all) (?:full )?names?\b"
    r"|\b(?:your|student|any) names? (?:must|should|may|is|are|shall|do|does)(?: not|n't)\b"
    r"|\b(?:candidate|student|examination|exam|matriculation) number,?"
    r" (?:only|alone|instead of|and not|rather than|but not)\b",
    re.IGNORECASE,
)
_NOT_THE_PAPER = re.compile(
    r"\b(?:not|n't|never|no longer) (?:be )?(?:marked |graded |read )?(?:anonym|blind)|\banonym\w+ (?:sources?|authors?"
    r"|works?|texts?|poems?|tales?|letters?|surveys?|respondents?|participants?|interview\w*|informants?|pamphlets?"
    r"|articles?|reviews? of)|\bpeer[- ]review|\bfeedback form|\bnames? of (?:your )?(?:informants?|participants?"
    r"|respondents?|sources?|interview\w*)\b|\bfile name\b"
    r"|\b(?:papers?|essays?|work|reports?|anything|one)"
    r" (?:that (?:is|are|comes?) |handed in )?(?:without|with no|not bearing)\b"
    r"[^.;]{0,30}\b(?:cannot|will not|won't|can't|not|be returned|lose|zero)\b",
    re.IGNORECASE,
)
_ORIGINALITY = re.compile(
    r"\b(?:declaration|statement|pledge|affirmation|certificat(?:e|ion)|undertaking|cover ?sheet|oath|form)\b"
    r"[^.;]{0,50}\b(?:originality|authorship|own (?:original |unaided )?work|honou?r|integrity|plagiari\w+|honesty)\b"
    r"|\b(?:honou?r|integrity|originality|plagiarism|authorship)(?: code)?"
    r" (?:pledge|declaration|statement|form|cover ?sheet)\b"
    r"|\b(?:sign(?:ed)?|attach|include|append|add|copy out|write out|complete|fill in)\b[^.;]{0,40}"
    r"\b(?:pledge|declaration|cover ?sheet|(?:honou?r|integrity) (?:code|statement))\b"
    r"|\b(?:declare|certify|affirm|state|confirm|pledge)\b[^.;]{0,30}\bown (?:original |unaided )?work\b",
    re.IGNORECASE,
)
_HELP = re.compile(
    r"\b(?:acknowledg\w+|declar\w+|disclos\w+|name|list|state|say|thank|note|credit|mention)\b[^.;]{0,45}"
    r"\b(?:help|assistance|who (?:helped|read|advised)|anyone who|tutor(?:s|ing)?|readers?|proof-?readers?"
    r"|writing cent(?:re|er)|classmates?|collaborat\w+)\b"
    r"|\bstatement (?:of|on|about) (?:help|assistance|collaboration|support)\b"
    r"|\backnowledg(?:e)?ments? (?:page|section)\b",
    re.IGNORECASE,
)
_TOOLS = re.compile(
    r"\b(?:statement|declaration|note|paragraph|appendix|line|sentence|footnote)\b[^.;]{0,50}"
    r"\b(?:AI|A\.I\.|artificial intelligence|chatbots?|generative|language models?|software|programs?|tools?)\b"
    r"|\b(?:AI|artificial intelligence)(?: use)? (?:statement|declaration|disclosure|acknowledge?ment)\b",
)
_NO = re.compile(r"\b(?:no|not|n't|without|need(?:ed)? not)\b[^.;]{0,25}$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Statement:
    """A statement that the sheet asks for, and that only the writer can make."""

    kind: str
    """One of ``KINDS``."""
    asks: str
    """The words of the sheet."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way by which the paper is to be handed in."""

    by: str
    """``upload``, ``email``, ``print`` or ``in-class``."""
    where: str


@dataclass(frozen=True, slots=True)
class Asked:
    """All that the sheets ask of the hand-in."""

    forms: tuple[str, ...] = ()
    """The kinds of file that are taken, in the sheet's order; none where it does not say."""
    file_name: str = ""
    """As the sheet gives it, its parts still to be filled."""
    ways: tuple[Way, ...] = ()
    anonymous: str = ""
    """The words of the sheet that forbid the name; empty where none do."""
    statements: tuple[Statement, ...] = ()
    wants_count: bool = False
    """Whether the number of words is to be stated."""

    @property
    def form(self) -> str:
        """The kind of file to make: the first that is asked for and can be made."""
        return next((form for form in self.forms if form in FORMS), FORMS[0])


def read_asked(requirements: Sequence[Requirement], sheets: Mapping[str, str]) -> Asked:
    """What the hand-in is to be, by what is asked and by the sheets' own sentences.

    What only sentences tell (a statement to be signed, a name that may not stand) is taken from the wordings of
    assignment sheets (common practice), and shown with the words, so that the writer can overrule it.

    Args:
        requirements: What the sheets ask, the writer's corrections in it.
        sheets: The text of each sheet by its name.

    >>> asked = read_asked((), {"a.txt": "Essays are marked anonymously. Attach a signed declaration of honesty."})
    >>> asked.anonymous, [one.kind for one in asked.statements], asked.form
    ('Essays are marked anonymously.', ['originality'], 'pdf')
    """
    of_form = {"file-type": list[str](), "file-name": list[str]()}
    for one in requirements:
        what, value = str(one.values.get("what")), one.values.get("value")
        if one.kind == "format" and what in of_form and isinstance(value, str):
            of_form[what].append(value)
    sentences = [sentence for name, text in sheets.items() for sentence in read_sheet(name, text).sentences]
    named = {one.kind: one for one in reversed((*_by_policy(requirements), *_by_sentence(sentences)))}
    return Asked(
        forms=tuple(dict.fromkeys(of_form["file-type"])),
        file_name=next(iter(of_form["file-name"]), ""),
        ways=tuple(
            Way(str(one.values.get("by")), str(one.values.get("where") or ""))
            for one in requirements
            if one.kind == "submit"
        ),
        anonymous=next((_plain(one.text) for one in sentences if forbids_name(one.text)), ""),
        statements=tuple(named[kind] for kind in KINDS if kind in named),
        wants_count=any(
            one.kind == "element" and one.values.get("what") == "word-count-stated" for one in requirements
        ),
    )


def forbids_name(sentence: str) -> bool:
    """Whether a sentence of a sheet forbids the writer's name in the paper.

    >>> forbids_name("Do not put your name on the paper."), forbids_name("Put your name and the date at the top.")
    (True, False)
    >>> forbids_name("Two anonymous pamphlets are in the reader."), forbids_name("Essays are not marked anonymously.")
    (False, False)
    """
    found = _ANONYMOUS.search(sentence)
    return found is not None and not _NOT_THE_PAPER.search(sentence) and not TOLD.search(sentence)


def _by_policy(requirements: Sequence[Requirement]) -> Iterator[Statement]:
    for one in requirements:
        of_tools = one.kind == "policy" and one.values.get("what") == "ai" and one.values.get("rule") == "disclose"
        if of_tools or (one.kind == "element" and one.values.get("what") == "ai-statement"):
            yield Statement("tools", _plain(one.evidence))


def _by_sentence(sentences: Sequence[Sentence]) -> Iterator[Statement]:
    for sentence in sentences:
        if TOLD.search(sentence.text):
            continue
        for kind, pattern in (("originality", _ORIGINALITY), ("help", _HELP), ("tools", _TOOLS)):
            found = pattern.search(sentence.text)
            if found and not _NO.search(sentence.text[: found.start()]):
                yield Statement(kind, _plain(sentence.text))


def _plain(words: str) -> str:
    return " ".join(words.split())
