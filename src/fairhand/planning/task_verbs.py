"""What the verb of a task asks of the sentence that the paper is about; what is missing is asked, never judged."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from fairhand.model.focus import Query

_WHERE = (
    "University of Alberta, Augustana Writing Centre, Understanding Your Assignment; Texas A&M University Writing "
    "Center, Understanding Writing Assignments; Queen's University SASS, Assignment Terminology"
)


@dataclass(frozen=True, slots=True)
class Verb:
    """A verb that tasks are set with."""

    asks_for: str
    """What it asks for, to follow its name."""
    question: str
    """What to ask where no sign of that is found."""
    sign: re.Pattern[str]
    """A word that shows that it is there."""


def _sign(*words: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(words)})\b", re.IGNORECASE)


_CAUSE = (
    r"because|since|why|how|caus(?:e|es|ed|ing)|led|leads?(?: to)?|result(?:s|ed|ing)?|due to|owing to|through"
    r"|by \w+ing"
    r"|so that|made|makes?|mean(?:s|t)|brought|depend(?:s|ed)?|explain(?:s|ed)?|for (?:want|lack|fear) of|from"
    r"|driv(?:e|es|en)"
    r"|drove|reasons?|account(?:s|ed)? for|kept|keeps?|allow(?:s|ed)?|enabl(?:e|es|ed)|prevent(?:s|ed)?|forc(?:e|es|ed)"
    r"|produc(?:e|es|ed)|shap(?:e|es|ed)|thanks to"
)
_CHANGE = (
    r"until|till|became|become|becomes|grew|grow|grows|later|gradually|over time|centur(?:y|ies)|decades?|chang(?:e"
    r"|es|ed)"
    r"|shift(?:s|ed)?|turn(?:s|ed)|rose|rise|rises|fell|fall|falls|declin(?:e|es|ed)|spread|spreads|begin|began|begins"
    r"|end(?:s|ed)?|first|then|after|before|since|develop(?:s|ed|ment)?|evol(?:ve|ved|ves|ution)|moved?|moves"
    r"|from [^.]{1,60}? to"
    r"|no longer|once|still|1\d{3}s?|20\d\d|emerg(?:e|es|ed)|lost|lose|disappear(?:s|ed)?|replac(?:e|es|ed)"
)
_WORTH = (
    r"(?:in)?effective(?:ly|ness)?|success(?:ful|fully|es)?|succeed(?:s|ed)?|fail(?:s|ed|ure|ures|ing)?|better|best"
    r"|worse"
    r"|worst|worth\w*|valuable|value|strong(?:er|est)?|weak(?:er|est|ness|nesses|ens|ened)?|strength(?:s)?|should|ought"
    r"|must|good|bad|poor(?:ly)?|well|fair(?:ly|er)?|unfair|just(?:ice|ified|ifies)?|unjust|(?:in)?adequate(?:ly)?"
    r"|too|enough"
    r"|limited|limits?|outweigh(?:s|ed)?|useful|useless|misleading|convincing(?:ly)?|persua\w+|sound|flaw(?:s|ed)?"
    r"|overstat\w+|overlook\w*|ignor(?:e|es|ed)|merits?|faults?|costs?|harm(?:s|ed|ful)?|benefits?|beneficial|improv\w+"
    r"|important|significan\w+|necessary|reliable|unreliable|right|wrong|little|hardly|more|less|most|only part\w*"
    r"|help(?:s|ed)?"
)
_PARTS = (
    rf"{_CAUSE}|parts?|role|structure|form|function(?:s|ed)?|works?|patterns?|relations?(?:hips?)?|between|both|each"
    r"|(?:two|three|four) \w+|consist(?:s|ed)?|reveal(?:s|ed)?|show(?:s|ed|n)?|us(?:e|es|ed|ing)|rest(?:s|ed)? on"
    r"|effect(?:s)?"
    r"|suggest(?:s|ed)?|create(?:s|d)?|present(?:s|ed)?|represent(?:s|ed)?|symboli[sz]\w+|turn(?:s|ed)? on"
    r"|reflect(?:s|ed)?"
)
_SIDES = (
    r"although|though|while|whilst|whereas|despite|in spite of|but|yet|however|both|neither|on the (?:one|other) hand"
    r"|not only|rather than|more than|less than|debat\w+|disput\w+|whether|even if|even though|not [^.]{1,80}? but"
    r"|instead"
    r"|except|unless|only (?:if|when|where)|as well as|more|less"
)

VERBS: dict[str, Verb] = {
    "compare": Verb(
        "what is alike and what differs between two things, and why that matters",
        "Which two things, and where do they differ or agree?",
        _sign(
            r"than|both|whereas|while|unlike|like|compar\w+|contrast\w*|differ\w*|similar\w*|alike|between|more|less"
            r"|same|other|neither|but|out(?:liv|last|sell|pac|number|weigh)\w*|resembl\w+|share[sd]?|either|each"
        ),
    ),
    "evaluate": Verb(
        "your judgement of its worth, and what you measure it by", "How good is it, and by what measure?", _sign(_WORTH)
    ),
    "assess": Verb(
        "your judgement of how much or how well, and what you measure it by",
        "How much, or how well, and by what measure?",
        _sign(_WORTH),
    ),
    "critique": Verb(
        "what is strong and what is weak in it", "What is strong in it, and what is weak?", _sign(_WORTH, _SIDES)
    ),
    "explain": Verb("how or why it came about", "How, or why? No cause is named yet.", _sign(_CAUSE)),
    "analyse": Verb(
        "its parts, and how they work together", "Which of its parts, and how do they work together?", _sign(_PARTS)
    ),
    "discuss": Verb(
        "more than one side of the matter, and where you stand",
        "What is the other side, and why not that?",
        _sign(_SIDES),
    ),
    "trace": Verb("how it changed, from when to when", "What changed, from when to when?", _sign(_CHANGE)),
    "propose": Verb(
        "what is to be done, and by whom",
        "What should be done, and who should do it?",
        _sign(
            r"should|ought|must|need(?:s)? to|propos\w+|recommend\w*|would|could|can|let|by \w+ing|plan|require[sd]?"
            r"|has to|have to|ban|bans|introduce|is to|are to"
        ),
    ),
    "summarise": Verb(
        "what its author says, in short",
        "Whose work is it, and what does it say?",
        _sign(
            r"argu(?:e|es|ed)|claim(?:s|ed)?|show(?:s|ed|n)?|according|hold(?:s)?|held|say(?:s)?|said|find(?:s)?|found"
            r"|writ(?:e|es)|wrote|suggest(?:s|ed)?|conclud(?:e|es|ed)|maintain(?:s|ed)?|describ(?:e|es|ed)|tell(?:s)?"
            r"|told"
            r"|that|think(?:s)?|see(?:s)?|explain(?:s|ed)?|trac(?:e|es|ed)|report(?:s|ed)?"
        ),
    ),
    "reflect": Verb(
        "what you met with, and what it changed in you",
        "Where are you in it, and what changed for you?",
        _sign(r"i|me|my|mine|we|us|our|myself"),
    ),
    "describe": Verb(
        "what it is like, so that a reader would know it",
        "What is it like? Name what a reader would know it by.",
        _sign(
            r"is|are|was|were|has|have|had|look(?:s|ed)?|consist\w*|with|made of|like|show(?:s|ed)?|appear(?:s|ed)?"
            r"|\w+ed"
        ),
    ),
}
"""Each by the base form in which a sheet's task is kept. **Source**: the handbooks named in each query; the signs are
common practice, and miss what is said in other words."""
_OTHER_NAMES = {"analyze": "analyse", "summarize": "summarise", "criticise": "critique", "criticize": "critique"}
ARGUES = ("argue",)
"""Verbs that ask for a claim: the questions put to a thesis are put to the focus."""


def ask_of_task(focus: str, verbs: Iterable[str]) -> tuple[Query, ...]:
    """What the task's verbs ask for and the sentence does not yet seem to say; nothing for a verb that is not known.

    >>> [query.asks for query in ask_of_task("The tram libraries of Velden", ["explain", "argue"])]
    ['The task says “explain”, which asks for how or why it came about. How, or why? No cause is named yet.']
    >>> ask_of_task("The tram libraries ended because the trams grew faster.", ["explain"])
    ()
    """
    queries = []
    for verb in dict.fromkeys(_OTHER_NAMES.get(verb, verb) for verb in verbs) if focus.strip() else ():
        known = VERBS.get(verb)
        if known and not known.sign.search(focus):
            queries.append(Query(f"The task says “{verb}”, which asks for {known.asks_for}. {known.question}", _WHERE))
    return tuple(queries)
