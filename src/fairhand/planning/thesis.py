"""Whether the sentence called the thesis is one claim that somebody could dispute: asked, never judged."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache

from fairhand.language.sentences import split_sentences
from fairhand.model.focus import Query

HARVARD = "Harvard College Writing Center, Developing a Thesis (from memory)"
PURDUE = "Purdue OWL, Establishing Arguments: the thesis must be debatable"
INDIANA = "Indiana University, Writing Tutorial Services, How to Write a Thesis Statement (from memory)"
HULT = "Hult and Huckin 1999, The New Century Handbook, 113"

_BE = (
    r"am|is|are|was|were|be(?= (?:a|the|no|seen|read|understood)\b)|isn['’]t|aren['’]t|wasn['’]t|weren['’]t|has|have"
    r"|had"
    r"|hasn['’]t|haven['’]t|hadn['’]t|do|does|did|don['’]t|doesn['’]t|didn['’]t|can|cannot|could|may|might|must|shall"
    r"|should|will|would|ought|can['’]t|couldn['’]t|shouldn['’]t|won['’]t|wouldn['’]t"
)
_PASTS = (
    r"became|began|bought|broke|brought|built|came|chose|cost|cut|did|drew|drove|ended|fed|fell|felt|fought|found"
    r"|gave|gained"
    r"|got|grew|heard|held|hid|hit|kept|knew|laid|lay|led|left|lent|let|lost|made|meant|met|paid|put|ran|read|rose"
    r"|said|sat|saw|sent|set|shook|showed|shut|sold|sought|spent|spoke|spread|stood|struck|swept|taught|thought|threw"
    r"|took|told|understood|undid|went|withstood|woke|won|wore|wrote"
)
_PRESENTS = (
    r"makes?|gives?|takes?|keeps?|becomes?|begins?|brings?|creates?|destroys?|enables?|ensures?|explains?|fails?"
    r"|follows?"
    r"|forces?|hides?|holds|ignores?|improves?|leads|loses?|lowers?|means|needs|obscures?|offers|owes?|prevents?"
    r"|proves?"
    r"|provides?|raises|reduces?|reflects?|refuses?|relies|rely|remains?|reveals?|seems?|serves?|shows|succeeds?"
    r"|suggests?"
    r"|teaches|tells|threatens?|turns|undermines?|weakens?|worsens?|argues?|deserves?|depends?|derives?|matters"
    r"|belongs?"
    r"|blames?|comes|goes|knows?|lies|owns|rests|says|sees|speaks|stands|works(?! (?:of|by|cited))|harms(?! (?:of|to"
    r"|and))"
    r"|helps|causes(?! (?:of|and|for)|[.,;:]|$)|shapes(?! (?:of|and|in))|benefits(?! (?:of|and|for|from))"
    r"|costs(?! (?:of|and"
    r"|for|to))"
    r"|changes(?! (?:of|and|in|to|for))|produces?|treats|uses(?! (?:of|and|for))|wants|asks|outweighs?|persists?"
)
_VERB = re.compile(rf"\b(?:{_BE}|{_PASTS}|{_PRESENTS})\b", re.IGNORECASE)
_PAST = re.compile(r"(?<=\w) (\w{2,30}ed)\b(?! by\b)", re.IGNORECASE)
_NOT_PAST = re.compile(
    r"(?:the|a|an|of|in|on|for|to|and|or|by|with|as|from|its|their|his|her|this|that) \w+ed\b$", re.IGNORECASE
)
_QUESTION = re.compile(
    r"\W*(?:(?:to what extent|in what ways?|how (?:far|much|many|well|did|do|does|is|are|was|were|can|should|could"
    r"|has|have)"
    r"|why (?:did|do|does|is|are|was|were|can|should|has|have)|what (?:is|are|was|were|did|does|do|caused|makes?|made)"
    r"|who (?:is|was|were|did)|which \w+ (?:is|was|did)|whether)\b|(?:is|are|was|were|do|does|did|can|should|has|have"
    r"|will"
    r"|would) (?:the|a|an|it|they|there|we|this|these) )",
    re.IGNORECASE,
)
_ANNOUNCES = re.compile(
    r"\b(?:this|the|my) (?:\w+ )?(?:paper|essay|report|thesis|study|project|assignment|review"
    r"|discussion)\b(?: \w+){0,2} "
    r"(?:will|is going to|aims?|seeks?|examines?|explores?|discusses|looks?|investigates?|considers?|describes?"
    r"|is (?:about|on)"
    r"|deals|focus(?:es)?|concerns?|analy[sz]es|compares)\b"
    r"|\b(?:i|we) (?:will|shall|want to|am going to|are going to|intend to|aim to|plan to) (?:\w+ )?"
    r"(?:examine|explore|discuss|look|investigate|consider|describe|write|analy[sz]e|compare|focus|study|talk)\b",
    re.IGNORECASE,
)
_FIGURE = re.compile(
    r"\d|\b(?:per ?cent|half|third|quarter|hundred|thousand|million|billion|doubled|halved|tripled)\b", re.IGNORECASE
)
_ARGUES = re.compile(
    r"\b(?:because|since|although|though|while|despite|not|n['’]t|but|rather|more|less|most|too|should|ought|must"
    r"|(?<!\d )may"
    r"|might"
    r"|could|would|cannot|only|mere(?:ly)?|hardly|never|mainly|chiefly|largely|real(?:ly)?|true|better|worse|best"
    r"|worst|good|bad"
    r"|fail(?:s|ed|ure)?|success\w*|cause[sd]?|led|leads|made|makes|mean(?:s|t)|show(?:s|ed)|prove[sd]?|suggests?|due"
    r"|depend\w*"
    r"|so that|if|unless|explain\w*|owe[sd]?|thanks|result\w*|wrong\w*|right|unfair\w*|fair\w*|effective\w*|important"
    r"|harm\w*"
    r"|help(?:s|ed)?|ruin\w*|save[sd]?|change[sd]?|shape[sd]?|turn(?:s|ed)|forced?|allow(?:s|ed)|by \w+ing|through"
    r"|as much as"
    r"|weaken\w*|strengthen\w*|enough|essential\w*|little|few)\b|\bn['’]t\b",
    re.IGNORECASE,
)
_SUBJECT = r"(?:the|this|these|those|they|it|he|she|we|its|their|his|her|a|an|both|some|many|most|all|no|[a-z]+s) "
_JOINED = re.compile(
    rf"(?:; (?:and |also |moreover,? |furthermore,? )?|, and (?:also |moreover,? |furthermore,? )?){_SUBJECT}",
    re.IGNORECASE,
)
_NEGATED = re.compile(r"\b(?:not|never|no|neither|nor|cannot|hardly)\b|n['’]t\b", re.IGNORECASE)


@lru_cache(maxsize=256)
def ask_of_thesis(thesis: str) -> tuple[Query, ...]:
    """What to ask of a sentence that is to be the thesis, the gravest first; nothing where no sign stands against it.

    The signs are of form alone, and say nothing of whether it is true, or worth a paper.

    >>> [query.asks for query in ask_of_thesis("Why did reading end?")]
    ['It asks. What is your answer?']
    >>> ask_of_thesis("Reading ended because the trams took away the minutes in which people read.")
    ()
    """
    thesis = " ".join(thesis.split())
    if not thesis:
        return ()
    form = next((Query(asks, source) for found, asks, source in _FORMS if found(thesis)), None)
    queries = [form] if form else []
    if len(split_sentences(thesis)) > 1:
        queries.append(Query("It is more than one sentence. Which of them is the claim?", INDIANA))
    elif form is None and _joins_claims(thesis):
        queries.append(
            Query("It seems to claim two things. Which is the paper's, and does the other serve it?", INDIANA)
        )
    return tuple(queries)


def _asks(thesis: str) -> bool:
    return thesis.rstrip(" \"”’')").endswith("?") or _QUESTION.match(thesis) is not None


def _announces(thesis: str) -> bool:
    return _ANNOUNCES.search(thesis) is not None and " that " not in thesis


def _is_topic(thesis: str) -> bool:
    """Whether no word of it looks like the verb of a claim."""
    if _VERB.search(thesis):
        return False
    return all(_NOT_PAST.search(thesis[max(0, found.start() - 40) : found.end()]) for found in _PAST.finditer(thesis))


def _is_figure(thesis: str) -> bool:
    return _FIGURE.search(thesis) is not None and _ARGUES.search(thesis) is None


def _joins_claims(thesis: str) -> bool:
    """Whether two clauses stand side by side, each with a verb, and the first is not there to be denied."""
    for found in _JOINED.finditer(thesis):
        before, after = thesis[: found.start()], thesis[found.end() :]
        if _has_verb(before) and _has_verb(after) and not _NEGATED.search(before) and "," not in before:
            return True
    return False


def _has_verb(clause: str) -> bool:
    return not _is_topic(f" {clause}")


_FORMS: tuple[tuple[Callable[[str], bool], str, str], ...] = (
    (_asks, "It asks. What is your answer?", HARVARD),
    (_announces, "It says what the paper will do. What will it say?", PURDUE),
    (_is_topic, "It names a subject. What do you say of it?", PURDUE),
    (
        _is_figure,
        "It seems to state a fact that can be looked up. What does it show, that somebody could dispute?",
        HULT,
    ),
)
"""What may stand in the way of a claim: how it is told, what is asked, and who asks it."""
