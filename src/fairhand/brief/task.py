"""The task: the verbs of the question."""

from __future__ import annotations

import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import ADVICE, TOLD, ask
from fairhand.model.requirement import Requirement

_VERBS: tuple[tuple[str, str], ...] = (
    ("compare", r"compar(?:e|es|ing)"),
    ("evaluate", r"evaluat(?:e|es|ing)"),
    ("analyse", r"analy[sz](?:e|es|ing)"),
    ("discuss", r"discuss(?:es|ing)?"),
    ("argue", r"argu(?:e|es|ing)|defend(?=s? (?:your|a|an|one) )"),
    ("explain", r"explain(?:s|ing)?"),
    ("assess", r"assess(?:es|ing)?"),
    ("critique", r"critiqu(?:e|es|ing)"),
    ("trace", r"trac(?:e|es|ing)"),
    ("propose", r"propos(?:e|es|ing)"),
    ("summarise", r"summari[sz](?:e|es|ing)"),
    ("reflect", r"reflect(?:s|ing)?(?= |$|\.|,|\")"),
)
_VERB = make_terms(_VERBS)
_ADVERB = (
    r"(?:(?:do|critically|briefly|carefully|then|also|finally|clearly|fully|first|next|closely|systematically"
    r"|in detail) )?"
)
_OPENS = re.compile(
    rf"(?:^|[\"“(]|[,;:—\t=] ?|\b(?:and|or|then|please|must|should|will|shall|can then|to both) |[.?!]\"? ){_ADVERB}$",
    re.IGNORECASE,
)
_YOU = re.compile(
    rf"\b(?:you {_ADVERB}|(?:you(?:'ll| will| should| must| need to| have to| are (?:expected|asked|required"
    rf"|invited) to| shall)|asked to|expected to|required to|aim(?:s)? (?:is )?to|task is to|is to|(?:want|expect"
    rf"|ask|would like|invite|require) you to|order to|paper (?:should|must|will)|essay (?:should|must|will)"
    rf"|section should|report (?:should|must|will)|(?:essay|paper|report|review|brief|it|you) (?:has|have|is|are"
    rf"|needs?|ought) to) (?:\w+ ){{0,2}}?{_ADVERB})$",
    re.IGNORECASE,
)
_TO_LIST = re.compile(rf"\b(?:to|and to|but to) {_ADVERB}$", re.IGNORECASE)
_THAT = re.compile(
    rf"\b(?:write|words|pages|essay|paper|memo(?:randum)?|proposal|report|review|assignment|brief|analysis|annotation"
    rf"|entry)\b[^.;]{{0,90}}\b(?:that|which"
    rf"|in which you) {_ADVERB}$",
    re.IGNORECASE,
)
_NOT_TASK = re.compile(
    r"\b(?:sources?|length|format|presentation|layout|style|referenc\w+|citations?|late(?:ness)?|penalt\w+|submi\w+"
    r"|handing in|grading|graded|marks?|marking|rubric|criteria|polic(?:y|ies)|conduct|integrity|ai|collaboration"
    r"|working with"
    r"|dates?|deadlines?|help|contact|questions$|questions to keep|mechanics|revis\w+|support|good practice"
    r"|attendance|honesty|turning it in|search|readability|paragraphs?|not part|abstract|reading"
    r"|methodology questions)\b",
    re.IGNORECASE,
)
_PURPOSE = re.compile(r"\b(?:purpose|aim|task|goal|objective)s?\b", re.IGNORECASE)
_TUTOR = re.compile(
    r"\b(?:tutors?|supervisors?|instructors?|I|we|we'll|I'll|classmates|anyone|examiners|lecturer|librarian"
    r"|students)\b(?: (?:will|may|can|could|do|often|shall|also|then))* $",
    re.IGNORECASE,
)
_OTHERS = re.compile(
    r"^ (?:(?:your|the|any|these|this|it|them|plans?|ideas?|drafts?|in|questions) ){0,3}(?:with (?:your|me|a|anyone"
    r"|other|classmates|friends|the (?:class|instructor|tutor|librarian))|plans? in|in (?:class|tutorials?"
    r"|small groups|office)|responses? in small groups|drafts)\b",
    re.IGNORECASE,
)
_NEGATED = re.compile(
    r"\b(?:not|n't|never|rather than|instead of|without|may|could|able to|ability to|help(?:s)? (?:you )?"
    r"|learn(?:ed)? (?:how )?to|free to|need not|how (?:people|you|they|others)|that you|try to|likely to|way to"
    r"|used to|want to|how to|if you|when you)(?: \w+){0,2} $",
    re.IGNORECASE,
)
_ADVISING = re.compile(
    r"\b(?:AI|artificial intelligence|for example|such as|don't forget|whenever possible|as you (?:think|work"
    r"|revise|explore)|during revisions"
    r"|per se|learned|answer the following)\b",
    re.IGNORECASE,
)
_NOUNISH = re.compile(r"^(?: (?:of|essay|paper|question|section|paragraph)s?\b)|^-|^d\b", re.IGNORECASE)


_PREPOSED = re.compile(
    r"^\W*(?:In|By|With|Using|Drawing|After|From|Focusing|Through|Taking|Building|Once)\b[^.;]{0,200}, ?$"
)
_LETTERED = re.compile(rf"(?:should|must|will|to|[,;])[^.]{{0,40}}\([a-z0-9]{{1,3}}\) {_ADVERB}$", re.IGNORECASE)
_ITEMISED = re.compile(
    r"\b(?:essay|paper|report|review|note|commentary|assignment|study|brief|you)\b[^.]{0,160}\([a-z0-9]\) (?:\w+ly )?$",
    re.IGNORECASE,
)
"""The verbs of an itemised sentence: "A case note (a) explains …, (b) assesses …"."""
_ORDER = re.compile(
    r"\b(?:you|paper|essay)\b|(?:^|: ?|\. )\W*(?:please |first,? |then |finally,? )?(?:think|read|select|choose"
    r"|pick|write|describe|show|identify|consider|examine|explore|look|take|define|use|find|answer|give|state|set"
    r"|start|begin|review|draw|outline|advise|recommend|weigh|investigate|apply|collect|gather|carry out|conduct"
    r"|visit|interview|prepare|ask)\b",
    re.IGNORECASE,
)


def _sets_task(sentence: Sentence, match: re.Match[str]) -> bool:
    text = sentence.text
    body = sentence.passage.body - sentence.start
    # What stands after a label opens its sentence: "Task  Propose and defend …".
    before, after = text[body if 0 < body <= match.start() else 0 : match.start()], text[match.end() :]
    clause = re.split(r"[.;?!:] ", before)[-1]
    if _NOUNISH.search(after) or _OTHERS.search(after) or _TUTOR.search(clause) or _NEGATED.search(clause):
        return False
    word = match.group().lower()
    if word.endswith("s") and word not in {"discuss", "assess"}:
        return bool(_THAT.search(before) or _ITEMISED.search(before)) or bool(
            re.search(r"\band $", before) and re.search(r"\b(?:that|which)\b[^.;]*", clause) and _VERB.search(clause)
        )
    if word.endswith("ing"):
        return bool(
            re.search(r"\b(?:write|essay|paper|paragraphs?|report|review)\b[^.;]{0,90}$", clause, re.IGNORECASE)
        )
    clause = re.sub(rf"{_ADVERB}$", "", clause, flags=re.IGNORECASE)
    opens = _OPENS.search(before)
    if (opens and _PREPOSED.match(clause)) or _LETTERED.search(before):
        return True
    if opens and opens.group().lower().strip() in {"and", "or", ",", "then"}:
        # A second verb carries on an order only where the clause gives one.
        return bool(
            _VERB.search(clause) or _YOU.search(clause + "x ") or _ORDER.search(clause) or not clause.strip(" ,")
        )
    if opens and (
        not clause.strip(" \"'(")
        or re.search(
            r"[\":;—(,\t=] ?(?:\w+ )?$|(?:must|should|will|shall|please|then) (?:\w+ )?$", clause, re.IGNORECASE
        )
    ):
        return True
    if _YOU.search(before) or _THAT.search(before):
        return True
    if re.fullmatch(rf"\W*to {_ADVERB}", before, re.IGNORECASE) and _PURPOSE.search(sentence.context):
        return True
    return bool(
        _TO_LIST.search(before)
        and (
            re.search(
                r"\b(?:read|task|aim|goal|asked|assignment|second|critically|purpose is|you to)\b",
                clause,
                re.IGNORECASE,
            )
        )
    )


def find_task(sheet: Sheet) -> list[Requirement]:
    """The verbs that the sheet's question sets, each once."""
    found: list[Requirement] = []
    seen: set[str] = set()
    for sentence in sheet.sentences:
        text = sentence.text
        where = f"{sentence.passage.heading} | {sentence.passage.key}"
        titled = sentence.passage.heading and sentence.passage.heading in sheet.title
        if (
            (not titled and _NOT_TASK.search(where))
            or ADVICE.search(where)
            or TOLD.search(text)
            or _ADVISING.search(text)
        ):
            continue
        if sentence.passage.kind == "row" and not sentence.passage.key:
            continue
        for match in _VERB.finditer(text):
            verb = _VERB.name(match)
            if verb in seen or not _sets_task(sentence, match):
                continue
            seen.add(verb)
            end = re.compile(r"[.,;:?!]|$").search(text, match.end())
            stop = min(end.start() if end else len(text), match.end() + 60)
            stop = (
                text.rfind(" ", match.end(), stop)
                if stop == match.end() + 60 and " " in text[match.end() : stop]
                else stop
            )
            found.append(ask(sheet, "task", {"verb": verb}, sentence.span(match.start(), stop)))
    return found
