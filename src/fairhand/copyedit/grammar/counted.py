"""Words that only a plural follows, and nouns that have none or need it; all from memory."""

from __future__ import annotations

COUNTS = frozenset(
    "two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen"
    " eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety many several few both these those"
    " various numerous fewer countless hundred thousand million dozen".split()
)
"""Words that only a plural follows."""
LOOSE = frozenset("most all other such some different".split())
"""Words that a plural follows where the noun is one that is counted."""
BEFORE_OF_THE = frozenset(
    "one each many several few both two three four five six either neither dozens hundreds thousands".split()
)
"""Before *of the*, which only a plural follows then."""
MEASURES = frozenset(
    "year week month day hour minute mile page inch foot storey story man person point star part way door dollar pound"
    " metre meter degree percent side word line bed seat ton".split()
)
"""Nouns that measure the one after them: *a three year course*."""
SHARES = frozenset("some most all none any".split())
"""Before *of the*, which a plural follows then where the noun is a person's."""
SCORES = frozenset("dozens hundreds thousands millions scores".split())
"""Before *of*, which only a plural follows then."""
MANY_OF = frozenset("number variety pair series handful group crowd couple majority".split())
"""Before *of*, which a plural follows then where the noun is a person's."""
SAME = frozenset(
    "series species sheep deer fish aircraft means offspring people police cattle salmon trout dozen hundred"
    " thousand million billion score percent cent head staff data media craft spacecraft hovercraft shrimp cod squid"
    " bison moose swine headquarters gallows crossroads barracks works hertz siemens lux yen kin folk kind sort type"
    " p.m a.m bc ad ce bce odd more other less further million pm am percent round".split()
)
"""Nouns that are many without an ending, or stand before a figure."""
UNCOUNTED = frozenset(
    "evidence information advice knowledge equipment furniture homework progress luggage traffic scenery"
    " jewellery jewelry machinery legislation pollution poverty violence".split()
)
"""Nouns that have no plural in any country's English."""
WITH_ONE = {"these": "this", "those": "that", "many": "much", "several": "", "few": "little", "fewer": "less"}
"""Words that ask for the plural, each with the one that goes with a noun that has none."""
KINDS = frozenset("kind sort type".split())
NAMED_IN_ING = frozenset(
    "thing king ring wing string building painting meeting evening morning wedding finding setting rating drawing"
    " recording hearing offering saying".split()
)
"""Nouns in *-ing* that are counted, and seldom a verb's form."""
PERSONS = frozenset(
    "actor adult artist attendant author boy brother buyer captain carpenter child citizen clerk clinician coach"
    " colleague colonist composer consumer critic customer dancer daughter doctor driver economist editor employee"
    " employer engineer expert farmer father filmmaker fisherman founder friend gardener girl guest historian"
    " immigrant inhabitant inspector interviewee inventor investor journalist judge juror landlord lawyer leader"
    " learner linguist listener maker man manager mayor member merchant migrant miner minister mother musician"
    " neighbour neighbor novelist nurse observer officer official operator owner painter parent parishioner"
    " participant passenger patient philosopher physician pilot player poet politician practitioner priest prisoner"
    " producer professor programmer psychologist publisher pupil reader refugee relative reporter researcher"
    " resident reviewer ruler sailor scholar scientist seller settler shopkeeper singer sister slave sociologist"
    " soldier son speaker spectator student subject subscriber supervisor supporter survivor teacher tenant theorist"
    " tourist trader translator traveller traveler user victim viewer villager visitor volunteer voter weaver"
    " witness woman worker writer".split()
)
"""Nouns of persons, who are counted and not measured."""
