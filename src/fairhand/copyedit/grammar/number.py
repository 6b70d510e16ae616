"""Whether a noun phrase is one or many, as far as that can be told.

**Source**: R. Quirk and others 1985 (*A Comprehensive Grammar of the English Language*, 10.34–10.50) on concord: with
collective, quantity and coordinated subjects English leaves the choice open, and nothing is told of them here.
"""

from __future__ import annotations

from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.language.lexicon import find_word

Number = Literal["one", "many"]
ONE = frozenset(
    "he she it this that each everyone everybody everything nobody someone somebody something anyone anybody"
    " anything nothing another neither either".split()
)
MANY = frozenset("they we these those many several few both".split())
OPEN = frozenset(
    "team group committee government family audience public staff crew board council class jury army police crowd"
    " party company firm press media community couple pair population generation majority minority half rest bulk"
    " lot lots number variety range series species set proportion percentage percent per cent fraction part portion"
    " third quarter handful plenty total average host array mass dozen hundred thousand million billion score deal"
    " amount sort kind type herein therein data progeny offspring means headquarters works crossroads statistics"
    " blues charades billiards checkers dominoes kudos barracks ironworks gasworks waterworks gallows"
    " mathematics physics economics politics ethics news athletics linguistics genetics mechanics dynamics acoustics"
    " aesthetics electronics tactics logistics metrics analytics semantics measles diabetes united states"
    " netherlands nations faculty youth elite enemy electorate majority membership duo trio more most all some any"
    " none such same other what which who whom whose one-third two-thirds remainder cattle people folk sheep fish"
    " deer aircraft offspring software panel mix subset bunch cluster wealth flood flock herd swarm crop thirds"
    " quarters fifths eighths tenths opposition leadership management parliament cast choir clergy nobility gentry"
    " aristocracy bourgeoisie proletariat peasantry workforce cabinet commission coalition navy gang orchestra band"
    " club union".split()
)
"""Heads whose number is left open by the language, or that the tagger knows badly."""
LEFT_OPEN = frozenset(
    "these those many several few both two three four five six various numerous other such all most some more any"
    " no what which whatever".split()
)
"""Before a singular they leave it open, or the noun itself is what is wrong."""
MEASURES = frozenset(
    "years months weeks days hours minutes seconds miles kilometres kilometers metres meters feet inches pounds"
    " dollars euros cents francs grams kilograms tons tonnes litres liters degrees percent points times acres"
    " hectares milligrams micrograms nanograms millilitres milliliters microlitres microliters centilitres centiliters"
    " millimetres millimeters micrometres micrometers centimetres centimeters yards gallons pints quarts ounces cups"
    " tablespoons teaspoons spoonfuls drops watts kilowatts volts joules calories decibels moles millimoles".split()
)
"""A sum of them is one quantity: *twenty miles is a long way*."""


def number_of(clause: Clause, subject: int, *, alone: bool = False) -> Number | None:
    """Whether the subject of a verb is one or many; None where the language leaves it open or it cannot be told.

    Args:
        clause: The sentence.
        subject: Index of the subject's chief word.
        alone: Whether nothing can be joined to it, whatever the parser says: *the gap between one and the other*.
    """
    word = clause.words[subject]
    if clause.hides((subject,)) or clause.of_role(subject, "appos"):
        return None
    if any(clause.words[each].key == "both" for each in clause.of_role(subject, "preconj")):
        return "many"
    if word.key in ("people", "police"):
        articles = {clause.words[each].key for each in clause.of_role(subject, "det", "nummod")}
        return None if articles & {"a", "one", "each", "every", "this", "no"} else "many"
    joined = None if alone else _joined(clause, subject)
    if joined is not None:
        return joined if joined == "many" else None
    if word.key in ("each", "neither", "either") and subject > 0 and not clause.of_role(subject, "prep"):
        return None
    if word.key.endswith("ics") and word.key not in _MANY_IN_ICS:
        return None
    if word.key in ONE:
        return "one"
    if word.key == "both" and not clause.of_role(subject, "prep"):
        return None
    if word.key in MANY and word.tag != "NNP":
        return "many"
    if word.key == "one" and word.tag in ("CD", "NN", "PRP") and not clause.of_role(subject, "nummod"):
        return "one" if clause.of_role(subject, "prep") else None
    if word.key in _ONE_WITH_THE and clause.words[max(0, subject - 1)].key == "the" and clause.of_role(subject, "prep"):
        return "one"
    if word.key in _MEASURED and _is_of_one(clause, subject):
        return "one"
    if word.key in OPEN or word.tag not in NOUNS or word.tag.startswith("NNP"):
        return None
    if not word.text.isalpha() or (word.text[0].isupper() and subject > 0):
        return None
    beside = {clause.words[each].key for each in clause.of_role(subject, "amod", "det", "nummod")}
    if word.tag == "NN" and beside & LEFT_OPEN:
        return None
    return _of_noun(clause, subject)


def _is_of_one(clause: Clause, quantity: int) -> bool:
    """Whether it is a quantity of what is not counted: *the amount of sugar*."""
    words = clause.words
    objects = [each for at in clause.of_role(quantity, "prep") if words[at].key == "of" for each in clause.children[at]]
    if len(objects) != 1 or words[objects[0]].tag != "NN" or clause.of_role(objects[0], "conj", "cc"):
        return False
    noun = words[objects[0]].key
    return noun not in OPEN and number_of(clause, objects[0]) == "one"


def _joined(clause: Clause, subject: int) -> Number | Literal["open"] | None:
    """What *and* or *or* makes of the subject."""
    links = [clause.words[each].key for each in clause.of_role(subject, "cc")]
    more = clause.of_role(subject, "conj")
    if not links and not more:
        return None
    whole = [clause.words[each].key for each in clause.below(subject)]
    if set(links) != {"and"} or not more or {"each", "every", "no", "as", "not"} & set(whole):
        return "open"
    one, other = clause.words[subject], clause.words[more[0]]
    between = clause.words[subject + 1 : more[0]]
    if any(each.text == "," or each.tag == "IN" for each in between) or clause.of_role(more[0], "conj"):
        return "open"
    own = [bool(clause.of_role(each, "det", "poss")) for each in (subject, more[0])]
    plain = one.tag in ("NN", "NNS", "PRP") and other.tag in ("NN", "NNS", "PRP")
    if plain and all(own) and not clause.hides((subject, more[0])):
        return "many"  # the mayor and the bishop; not: bread and butter, his wife and friend
    if one.tag == "NNS" and own[1] and other.tag in ("NN", "NNS") and not clause.hides((subject, more[0])):
        return "many"  # rising prices and the fear of war
    return "many" if one.tag == other.tag == "NNS" else "open"


def _of_noun(clause: Clause, subject: int) -> Number | None:
    word = clause.words[subject]
    if _is_compound_plural(word.key):
        return "many"
    if word.tag == "NNS":
        if word.key in MEASURES and clause.of_role(subject, "nummod"):
            return None
        singular = any(find_word(each) for each in singulars_of(word.key))
        return "many" if word.key in IRREGULAR.values() or singular else None
    if word.key.endswith("s") and not word.key.endswith(("ss", "us", "is")):
        return None
    if clause.of_role(subject, "nummod") and "one" not in {
        clause.words[n].key for n in clause.of_role(subject, "nummod")
    }:
        return None
    if word.key.endswith(("a", "i", "ae")) and word.key not in _ONE_IN_A:
        return None  # spectra, loci, data
    return "one" if find_word(word.key) else None


def _is_compound_plural(noun: str) -> bool:
    """Whether a noun ends in a plural that no ending makes: *aldermen*, *grandchildren*; not *specimen*."""
    wholes = (noun.removesuffix(IRREGULAR[one]) + one for one in ("man", "child") if noun.endswith(IRREGULAR[one]))
    return any(len(whole) > len("child") and find_word(whole) for whole in wholes)


def singulars_of(noun: str) -> tuple[str, ...]:
    """What a plural in *-s* may be the plural of.

    >>> singulars_of("studies")
    ('studie', 'studi', 'study')
    """
    if not noun.endswith("s") or noun.endswith("ss"):
        return ()
    return (
        noun[:-1],
        *((noun[:-2],) if noun.endswith("es") else ()),
        *((noun[:-3] + "y",) if noun.endswith("ies") else ()),
    )


_MEASURED = frozenset("amount lot rest bulk deal".split())
"""Heads that are one where what they measure is not counted."""
_MANY_IN_ICS = frozenset(
    "critics topics clinics fabrics relics medics comics skeptics sceptics fanatics romantics mystics cynics heretics"
    " clerics characteristics antibiotics republics catholics alcoholics epics domestics academics".split()
)
_ONE_WITH_THE = frozenset("number proportion percentage".split())
_ONE_IN_A = frozenset("idea area era drama formula camera opera agenda arena dilemma sofa stigma trauma schema".split())
IRREGULAR = {
    "man": "men", "woman": "women", "child": "children", "foot": "feet", "tooth": "teeth", "leaf": "leaves",
    "life": "lives", "wife": "wives", "knife": "knives", "half": "halves", "shelf": "shelves", "wolf": "wolves",
    "thief": "thieves", "loaf": "loaves", "analysis": "analyses", "crisis": "crises", "thesis": "theses",
    "hypothesis": "hypotheses", "criterion": "criteria", "phenomenon": "phenomena", "mouse": "mice",
    "hero": "heroes", "potato": "potatoes", "tomato": "tomatoes",
}  # fmt: skip
"""Plurals that no ending makes."""
