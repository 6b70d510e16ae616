"""Invented works, and the sentences of an invented paper that cites them rightly."""

from __future__ import annotations

import random
from dataclasses import replace

from fairhand.model.entry import Entry, Issued, Name

SURNAMES = (
    "Adeyemi, Almqvist, Aubert, Baptiste, Bello, Bergström, Brandt, Calloway, Castellanos, Chowdhury, Cobb, D'Angelo, "
    "De Luca, Dufresne, Eklund, Farouk, Fenwick, Fitzgerald, Fujimoto, Gallagher, Grant, Greene, Hadley, Hartmann, "
    "Hoàng, Hughes, Ibarra, Iqbal, Jansson, Kaur, Kearney, Khan, King, Kowalczyk, Lacroix, Lee, Li, Lindqvist, "
    "Long, Lovelace, MacDonald, Marsh, May, McKay, Mendoza, Moreau, Müller, Nakamura, Nguyen, Novák, O'Neill, "
    "Okafor, Oliveira, Park, Patel, Petrov, Quist, Rahman, Reid, Rivers, Romero, Sato, Schmidt, Singh, Small, "
    "Smith, Stone, Sørensen, Tan, Ueda, Vance, Villanueva, Ward, Weiss, Whitaker, Wood, Yilmaz, Young, Zhang, Źródło, "
    "Smith-Jones, Garcia Marquez, Ortiz Vega, Abu Bakr"
).split(", ")
PARTICLED = (("van der", "Meer"), ("de la", "Cruz"), ("von", "Arnim"), ("van", "Dijk"))
GIVEN = (
    "Ana Ben Chen Dina Elif Finn Grace Hugo Ines Jonas Kira Leo Mina Noor Olga Pia Rafael Sana Tomás Uma Vera Yusuf"
).split()
BODIES = (
    "Harbour Board",
    "World Salt Organization",
    "Ministry of Works",
    "Institute for River Studies",
    "Centre for Urban Records",
    "National Council of Teachers",
    "Velden Historical Society",
)
STRANGERS = "Ashdown Bramwell Cartwright Delacroix Eastwick Farnsworth Grimaldi Hollis Ivarsson Juarez".split()
"""Authors whom no invented list has."""
_HEADS = (
    "Salt Roads Rivers Tides Markets Letters Bridges Harvests Schools Harbours Gardens Machines Songs Debts".split()
)
_TOPICS = (
    "in the age of steam, and their keepers, of the northern towns, after the flood, without maps, and the common "
    "good, as a public question, in two provinces, between the wars, for beginners, at the margin, and what came of "
    "them"
).split(", ")
_TYPES = ("book", "article-journal", "article-journal", "chapter", "report", "webpage", "thesis")


def invent_list(rng: random.Random) -> list[Entry]:
    """A list of ten to sixteen works: several authors, bodies, titles alone, and names that need telling apart."""
    surnames = rng.sample(SURNAMES, 24)
    titles = iter(rng.sample([f"{head} {topic}" for head in _HEADS for topic in _TOPICS], 24))
    out: list[Entry] = []
    for number in range(rng.randrange(10, 17)):
        count = rng.choice((1, 1, 1, 1, 2, 2, 3, 4))
        names = tuple(_person(rng, surnames.pop()) for _ in range(min(count, len(surnames))))
        if rng.random() < 0.08 and not any(name.particle for one in out for name in one.authors):
            particle, family = rng.choice(PARTICLED)
            names = (Name(family, rng.choice(GIVEN), particle=particle), *names[1:])
        if number % 6 == 4:
            free = [body for body in BODIES if not any(body == name.literal for one in out for name in one.authors)]
            names = (Name(literal=rng.choice(free)),)
        if number % 9 == 5:
            names = ()
        kind = rng.choice(_TYPES)
        first = rng.randrange(2, 900)
        out.append(
            Entry(
                f"w{number}",
                kind,
                next(titles),
                authors=names,
                issued=None if kind == "webpage" and rng.random() < 0.4 else Issued(rng.randrange(1952, 2024)),
                page=f"{first}-{first + rng.randrange(8, 30)}" if kind in ("article-journal", "chapter") else "",
            )
        )
        if len(surnames) < 6:
            break
    return out


def add_namesake(entries: list[Entry], rng: random.Random) -> tuple[Entry, Entry] | None:
    """Two works of one year by two authors of one surname, whom only an initial tells apart."""
    alone = [one for one in entries if len(one.authors) == 1 and one.authors[0].family and one.issued]
    if not alone:
        return None
    first = rng.choice(alone)
    given = rng.choice([name for name in GIVEN if name[0] != first.authors[0].given[0]])
    second = replace(
        first,
        id=f"{first.id}-namesake",
        title=f"Another {first.title.casefold()}",
        authors=(replace(first.authors[0], given=given),),
        page="",
    )
    entries.append(second)
    return first, second


def add_twin(entries: list[Entry], rng: random.Random) -> tuple[Entry, Entry] | None:
    """Two works of one author and year, which a letter tells apart."""
    alone = [one for one in entries if len(one.authors) == 1 and one.issued and "namesake" not in one.id]
    alone = [one for one in alone if not any(o is not one and o.authors == one.authors for o in entries)]
    alone = [one for one in alone if not any(f"{one.id}-namesake" == o.id for o in entries)]
    if not alone:
        return None
    first = rng.choice(alone)
    second = replace(first, id=f"{first.id}-twin", title=f"Z{first.title.casefold()}", page="")
    entries.append(second)
    return first, second


def _person(rng: random.Random, surname: str) -> Name:
    given = rng.choice(GIVEN)
    return Name(surname, given if rng.random() < 0.7 else f"{given[0]}.")


SENTENCES = (
    # What a parenthesis may hold that cites nothing.
    "The sample was small (n = 34), and the second smaller still.",
    "The difference was slight (p < .05).",
    "Matters were otherwise in May (2020) and have been since.",
    "The figures are given below (Table 2).",
    "A sketch of the site (Figure 3) shows the two sluices.",
    "The war (1914–1918) put an end to it.",
    "In the Great Frost (1962) the harbour was closed for nine weeks.",
    "The Reform Act (1832) did not touch the port.",
    "Elizabeth II (1926–2022) opened the new hall.",
    "The town (population 40,000) has three bridges.",
    "At 2003 prices (about 30 million) it was dear.",
    "The census (2011) counts households, not people.",
    "It is the third case (see above) that matters.",
    "Chapter 3 (the longest) is about method.",
    "Each was asked the same four questions (see the appendix).",
    "The paper was sold (for 12 crowns) at every stop.",
    "The Olympic Games of that summer (2020) were put off by a year.",
    "The committee met twice (on 3 May and 9 June 1924).",
    "Three of the five (60 percent) agreed.",
    "The version of 2016 (10.2) is the one in use.",
    "An electric pump (Model 40) lifted the water.",
    "The first film (dir. Ana Torv, 1988) was a failure.",
    "His second term (2009–2013) was quieter.",
    "The treaty (Article 5) says nothing of fish.",
    "Trains ran every hour (9:15, 10:15, and so on).",
    "The scale runs from 1 (never) to 5 (always).",
    "The novel (1847) had been read by everyone there.",
    "They kept to the old rule (Section 12) for a decade.",
    "Mercury (80) is heavier than tin.",
    "The Harbour Act of 1899 (62 & 63 Vict. c. 14) is still in force.",
    "Nothing of the kind was seen before 1950.",
    "The argument is an old one, and a good one.",
    "So far the case is plain.",
    "Prices fell in every year but one.",
    "The opposite has also been held, though seldom in print.",
)
