"""Forms that no ending makes, and the words that they are forms of: *grew* of *grow*, *women* of *woman*.

**Source**: the irregular verbs and nouns that every grammar of English lists, from memory.
"""

from __future__ import annotations

VERBS = tuple(
    tuple(row.split())
    for row in (
        "arise arose arisen|be was been|bear bore borne|become became become|begin began begun|bite bit bitten"
        "|blow blew blown|break broke broken|bring brought brought|build built built|buy bought bought"
        "|catch caught caught|choose chose chosen|come came come|creep crept crept|deal dealt dealt|do did done"
        "|draw drew drawn|drink drank drunk|drive drove driven|eat ate eaten|fall fell fallen|feel felt felt"
        "|fight fought fought|find found found|fly flew flown|forbid forbade forbidden|forget forgot forgotten"
        "|forgive forgave forgiven|freeze froze frozen|get got got|give gave given|go went gone|grow grew grown"
        "|have had had|hear heard heard|hide hid hidden|hold held held|keep kept kept|know knew known|lead led led"
        "|leave left left|lend lent lent|lose lost lost|make made made|mean meant meant|meet met met|pay paid paid"
        "|ride rode ridden|ring rang rung|rise rose risen|run ran run|say said said|see saw seen|seek sought sought"
        "|sell sold sold|send sent sent|shake shook shaken|show showed shown|shrink shrank shrunk|sing sang sung"
        "|sink sank sunk|sit sat sat|sleep slept slept|speak spoke spoken|spend spent spent|spring sprang sprung"
        "|stand stood stood|steal stole stolen|strike struck struck|strive strove striven|swear swore sworn"
        "|swim swam swum|take took taken|teach taught taught|tear tore torn|tell told told|think thought thought"
        "|throw threw thrown|undergo underwent undergone|understand understood understood"
        "|undertake undertook undertaken|wake woke woken|wear wore worn|weave wove woven|win won won"
        "|withdraw withdrew withdrawn|write wrote written|overcome overcame overcome|foresee foresaw foreseen"
        "|rebuild rebuilt rebuilt|rewrite rewrote rewritten"
    ).split("|")
)
"""Verbs whose past or participle is made by no ending: the bare verb, its past, its participle."""
_MORE_VERBS = (
    "bind bound|bleed bled|breed bred|burn burnt|cling clung|dig dug|feed fed|flee fled|fling flung|grind ground"
    "|hang hung|kneel knelt|lay laid|learn learnt|lie lay lain lying|light lit|mow mown|sew sewn|shine shone|shoot shot"
    "|slide slid|sling slung|sow sown|speed sped|spell spelt|spill spilt|spin spun|spoil spoilt|stick stuck|sting stung"
    "|sweep swept|swell swollen|swing swung|weep wept|wind wound|wring wrung|die dying|tie tying"
)
_NOUNS = (
    "man men|woman women|child children|wife wives|life lives|knife knives|half halves|leaf leaves|loaf loaves"
    "|shelf shelves|thief thieves|wharf wharves|wolf wolves|calf calves|hoof hooves|foot feet|tooth teeth|goose geese"
    "|mouse mice|ox oxen|penny pence|analysis analyses|basis bases|crisis crises|thesis theses|hypothesis hypotheses"
    "|criterion criteria|phenomenon phenomena|medium media|bacterium bacteria|datum data|stimulus stimuli"
    "|workman workmen|seaman seamen|alderman aldermen|fisherman fishermen|boatman boatmen|gentleman gentlemen"
    "|chairman chairmen|countryman countrymen|tradesman tradesmen|craftsman craftsmen|policeman policemen"
)
_OTHERWISE = frozenset("found saw bore felt rose rung ground wound lives leaves lay bases media data".split())
"""Forms that are as often another word, or one with a life of its own."""
_BASES = {
    form: base
    for base, *forms in (*VERBS, *(row.split() for row in (*_MORE_VERBS.split("|"), *_NOUNS.split("|"))))
    for form in forms
    if form not in _OTHERWISE
}


def base_of(word: str) -> str:
    """The word of which this is a form that no ending makes; any other word itself.

    >>> [base_of(word) for word in ("grew", "women", "saw", "grows")]
    ['grow', 'woman', 'saw', 'grows']
    """
    return _BASES.get(word, word)
