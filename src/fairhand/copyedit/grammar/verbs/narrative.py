"""A sentence in the present within a run of past ones: *The men marched. The guards open the gate. Nobody spoke*.

**Source**: "unnecessary shift in verb tense" in A. A. Lunsford and K. J. Lunsford 2008. The present of comment, of
literature, of reports (*argues*) and of what still holds is lawful beside the past, so that only what persons do is
looked at, by verbs that neither report, nor hold still, nor tell a habit; *I* and *we* write as well as act.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Literal

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.counted import PERSONS
from fairhand.copyedit.grammar.slip import Slip

LASTING = frozenset(
    "wrote said thought knew found made saw held led ran taught kept meant told came spoke read drew felt understood"
    " is are am was were has have had do does did remain stand lie hold contain belong continue live seem appear"
    " mean make show suggest say argue claim write state describe explain note observe insist conclude report"
    " think believe know find consider use work teach run own lead head direct serve edit study play keep want"
    " need like love represent refer include provide exist require occur call see propose agree recommend ask tell"
    " depend vary tend thank hope feel assume discuss present focus estimate define deny calculate add remember"
    " recall respond understand come speak wish matter succeed emphasize emphasise stress point maintain"
    " acknowledge admit assert contend warn remind criticize criticise compare contrast portray depict link trace"
    " relate treat concern rely draw address cite quote analyze analyse examine explore identify reveal indicate"
    " demonstrate illustrate prove challenge question interpret read view regard reject accept support defend"
    " attribute hypothesize hypothesise fit cut hit put set let cost shut spread split quit beat cast hurt burst"
    " bet".split()
)
"""Verbs that report, hold still, tell a habit, or have one form for both tenses."""
WAIVED = frozenset(
    "now today still always often sometimes never usually every each yet nowadays currently since"
    " whenever once if would".split()
)
"""Words that may part the times of two verbs."""
_FOLK = frozenset(
    "he she they men women children people wives crew king queen mayor husband wife commissioners trustees clerks"
    " boys girls police crowd troops family mob guards guard strikers rioters marchers protesters protestors"
    " rebels dockers delegates deputies envoys sailors neighbours neighbors thieves monks nuns bishop bishops"
    " servants porters drivers firemen president governor general emperor pope duke prince princess colonel"
    " admiral chancellor senator ambassador".split()
)
_WRITERS = frozenset(
    "author narrator speaker poet writer novelist protagonist critic historian scholar researcher reader filmmaker"
    " artist composer philosopher economist sociologist psychologist theorist reviewer".split()
)
"""Persons whose deeds are told in the present of literature and of reports."""
_LITERARY = _WRITERS | frozenset(
    "novel poem play story film scene chapter stanza verse essay book character plot act movie myth epic tale painting"
    " portrait opera ballad sonnet fiction episode passage".split()
)
"""Words beside which the present may be that of literature."""
_LONG = 7
"""Letters of the shortest word in *-ist* or *-ian* that is taken for a person."""
_YEAR = re.compile(
    r"\b(?:[Ii]n|[Bb]y|[Dd]uring|[Oo]n|[Uu]ntil) (?:[a-z]+ )?(?:the [a-z]+ of )?(?:\d+ )?(?:[A-Z][a-z]+,? )?"
    r"(?:1[5-9]\d\d|20[01]\d)\b"
)

Time = Literal["past", "present"]


def is_doer(clause: Clause, subject: int) -> bool:
    """Whether a subject is persons who act: neither the writer nor those whose writing is told of."""
    key = clause.words[subject].key
    one = key.removesuffix("s")
    named = one in PERSONS or key in PERSONS or (len(one) >= _LONG and one.endswith(("ist", "ian")))
    return key in _FOLK or (named and not {key, one} & _WRITERS)


def is_literary(clause: Clause) -> bool:
    """Whether a sentence speaks of a work or its maker, of whom the present of literature tells."""
    return any({word.key, word.key.removesuffix("s")} & _LITERARY for word in clause.words)


def is_lasting(verb: str) -> bool:
    """Whether a verb may be in the present beside the past, or in the past beside the present.

    >>> is_lasting("argues"), is_lasting("marches"), is_lasting("relies")
    (True, False, True)
    """
    forms = {verb, *(verb.removesuffix(ending) for ending in ("s", "es", "d", "ed"))}
    return bool((forms | {f"{verb[:-3]}y"} if verb.endswith(("ies", "ied")) else forms) & LASTING)


def find_narrative_shifts(clauses: Sequence[Clause]) -> Iterator[Slip]:
    """The verb of each sentence in the present that stands in a run of sentences in the past.

    Args:
        clauses: The sentences of the writer's own prose in order.
    """
    for at, clause in enumerate(clauses):
        verb = _present(clause)
        if verb is None or _time(clauses, at, -1) != "past":
            continue
        subject = clause.subject_of(verb)
        if subject is None or any(word.key in ("i", "we") for word in clause.words[:verb]):
            continue
        beside = [
            clauses[n]
            for n in range(max(0, at - 2), min(len(clauses), at + 2))
            if clauses[n].paragraph == clause.paragraph
        ]
        if any(is_literary(each) for each in beside):
            continue
        told = is_doer(clause, subject) and "past" in (_time(clauses, at, 1), _time(clauses, at, -2))
        if told or (_YEAR.search(clause.text) and clause.words[subject].key not in ("this", "that", "which")):
            yield Slip(clause.place(verb), clause.words[verb].text, "", "run")


def _present(clause: Clause) -> int | None:
    """The chief verb of a sentence where it is in the present, and a deed."""
    verb = _chief(clause)
    if verb is None or clause.words[verb].tag not in ("VBZ", "VBP") or clause.words[-1].text == "?":
        return None
    if is_lasting(clause.words[verb].key) or clause.of_role(verb, "aux", "auxpass"):
        return None
    return None if {word.key for word in clause.words} & WAIVED else verb


def _chief(clause: Clause) -> int | None:
    roots = [number for number, word in enumerate(clause.words) if word.head == number]
    return roots[0] if len(roots) == 1 else None


def _time(clauses: Sequence[Clause], at: int, step: int) -> Time | None:
    """The tense of a sentence near another in its paragraph; None where there is none, or it is no plain one."""
    near = at + step
    if not 0 <= near < len(clauses) or clauses[near].paragraph != clauses[at].paragraph:
        return None
    chief = _chief(clauses[near])
    finite = clauses[near].finite_of(chief) if chief is not None else None
    tag = clauses[near].words[finite].tag if finite is not None else ""
    return "past" if tag == "VBD" else "present" if tag in ("VBZ", "VBP") else None
