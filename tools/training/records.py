"""Records of works that do not exist, of every kind that reference lists hold, from a seeded generator.

It is long because each kind of name that a work has (title, journal, meeting, house, school) is a list of its forms.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field

from training.vocabulary import (
    ABBREVIATED,
    ADJECTIVES,
    GIVEN,
    JOURNAL_FIELDS,
    MONTHS,
    NOUNS,
    PARTICLES,
    TOWNS,
    VERBS,
    make_surname,
    make_word,
)


@dataclass(frozen=True, slots=True)
class Person:
    """An author or editor."""

    given: tuple[str, ...]
    family: str
    particle: str = ""
    suffix: str = ""
    body: str = ""
    """The name of a body, where it is one."""


@dataclass(slots=True)
class Record:
    """One invented work."""

    kind: str
    """``article``, ``paper`` (of a conference), ``book``, ``chapter``, ``report``, ``thesis``, ``web`` or
    ``preprint``."""
    authors: list[Person]
    title: str
    year: int
    editors: list[Person] = field(default_factory=list)
    container: str = ""
    series: str = ""
    volume: str = ""
    issue: str = ""
    first: str = ""
    last: str = ""
    publisher: str = ""
    place: str = ""
    edition: int = 0
    report: str = ""
    number: str = ""
    doi: str = ""
    url: str = ""
    month: str = ""
    day: int = 0
    note: str = ""


def make_person(rng: random.Random) -> Person:
    """Someone with one or two given names; now and then with a particle or a suffix."""
    given = [rng.choice(GIVEN)]
    if rng.random() < 0.45:
        given.append(rng.choice(GIVEN))
    if rng.random() < 0.05:
        given.append(rng.choice(GIVEN))
    family = make_surname(rng)
    if rng.random() < 0.05:
        family = f"{family}{rng.choice(('-', ' ', '-'))}{make_surname(rng)}"
    particle = rng.choice(PARTICLES) if rng.random() < 0.05 else ""
    suffix = rng.choice(("Jr.", "III", "Jr", "II", "Sr.")) if rng.random() < 0.015 else ""
    return Person(tuple(given), family, particle, suffix)


def make_body(rng: random.Random) -> str:
    """The name of a body: a ministry, an institute, a group of researchers."""
    subject = rng.choice(JOURNAL_FIELDS)
    noun = rng.choice(NOUNS).capitalize()
    where = rng.choice(TOWNS).split(",")[0]
    return rng.choice(
        (
            f"Ministry of {subject}",
            f"Ministry of {noun} and {subject}",
            f"National Institute of {subject}",
            f"{where} Institute for {noun} Research",
            f"World {noun} Organization",
            f"International {noun} Council",
            f"The {noun} Study Group",
            f"{make_word(rng, titular=False).upper()[:5]} Collaboration",
            f"{noun} Collaboration",
            f"American {subject} Association",
            f"Society for {noun} Studies",
            f"Department of {noun} and {rng.choice(NOUNS).capitalize()}",
            f"Office of {subject}",
            f"Commission of the {noun} Union",
            f"{make_surname(rng)} Foundation",
            f"{where} City Council",
        )
    )


def make_people(rng: random.Random, most: int = 12) -> list[Person]:
    """The authors of a work: mostly few, now and then many, or a body."""
    if rng.random() < 0.06:
        return [Person((), "", body=make_body(rng))]
    count = min(rng.choice((1, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 5, 6, 7, 9, 12)), most)
    return [make_person(rng) for _ in range(count)]


def _noun(rng: random.Random) -> str:
    word = rng.choice(NOUNS) if rng.random() < 0.72 else make_word(rng, titular=True)
    return word + "s" if rng.random() < 0.3 and not word.endswith("s") else word


def _phrase(rng: random.Random) -> str:
    roll = rng.random()
    noun = _noun(rng)
    if roll < 0.4:
        adjective = rng.choice(ADJECTIVES) if rng.random() < 0.8 else make_word(rng, titular=True)
        return f"{adjective} {noun}"
    if roll < 0.55:
        return f"{rng.choice(NOUNS)} {noun}"
    if roll < 0.65:
        return f"{rng.choice(('the', 'a', 'the'))} {noun}"
    if roll < 0.72:
        return f"{rng.choice(ADJECTIVES)} {rng.choice(ADJECTIVES)} {noun}"
    if roll < 0.77:
        return f"{rng.choice(_SIGNS)} {noun}"
    if roll < 0.82:
        return rng.choice((rng.choice(TOWNS).split(",")[0], make_surname(rng), make_surname(rng) + "'s " + noun))
    return noun


_SIGNS = "LSTM DNA HIV XML NMR PDE VLSI TCP T-cell p53 SU(2) H2O N-body ATP fMRI CMOS".split()
_FRONTS = (
    "on the,toward a,the,an,on,some,a note on,a study of,the role of,effects of,an introduction to,how,what is,"
    "the case of"
).split(",")
_JOINS = (
    "of,of,of,of the,in,in,in the,for,for,and,and,with,on,from,to,by,under,between,through,as,of a,using,against,among,"
    "during,based on,via"
).split(",")


def _clause(rng: random.Random) -> str:
    parts = [_phrase(rng)]
    for _ in range(rng.choice((0, 1, 1, 1, 2, 2, 3))):
        parts += [rng.choice(_JOINS), _phrase(rng)]
    clause = " ".join(parts)
    roll = rng.random()
    if roll < 0.12:
        clause = f"{rng.choice(VERBS)} {clause}"
    elif roll < 0.22:
        clause = f"{rng.choice(_FRONTS)} {clause}"
    return clause


_FOREIGN = (
    "la {0} de la {1} et les {0}",
    "le {0} dans la {1} du {0}",
    "die {0} und das {1} der {0}",
    "Zur {0} des {1} im {0}",
    "el {0} de los {1} en la {0}",
    "il {0} della {1}",
    "de {0} van het {1}",
    "o {0} dos {1} no {0}",
)


def make_title(rng: random.Random, *, short: bool = False) -> str:
    """A title of the length and make of real ones, in sentence case."""
    if rng.random() < 0.05:
        words = (make_word(rng, titular=True).capitalize(), make_word(rng, titular=True))
        title = rng.choice(_FOREIGN).format(*words)
    elif short:
        title = " ".join(_phrase(rng) for _ in range(1)) if rng.random() < 0.6 else _clause(rng)
    else:
        title = _clause(rng)
        roll = rng.random()
        if roll < 0.18:
            title = f"{title}: {_clause(rng)}"
        elif roll < 0.22:
            title = f"{title}, {rng.randrange(1700, 1990)}{rng.choice('-–—')}{rng.randrange(1850, 2015)}"
        elif roll < 0.25:
            title = f"{title}. {rng.choice(('Part I', 'I', 'II', 'A review', 'Second report', 'An overview'))}"
        elif roll < 0.28:
            title = f"{title}, {_phrase(rng)}, and {_phrase(rng)}"
        elif roll < 0.31:
            title = f"{make_word(rng, titular=False).upper()}: {title}"
        elif roll < 0.36:
            title = _odd_title(rng, title)
        elif roll < 0.38:
            title = f"“{_phrase(rng)}”: {title}"
        elif roll < 0.40:
            title = f"{title} ({_phrase(rng)})"
        elif roll < 0.42:
            title = f"{title} in {make_word(rng, titular=False).capitalize()} {make_word(rng, titular=True)}"
    if rng.random() < 0.04:
        title = f"{rng.choice(('Why', 'What', 'How', 'Is', 'Who', 'Does'))} {title}?"
    return title[0].upper() + title[1:]


def _odd_title(rng: random.Random, title: str) -> str:
    """A title with signs, capitals or brackets where most have none."""
    tail = rng.choice((str(rng.randrange(1, 40)), "M", "A", "x", "II"))
    sign = f"{make_word(rng, titular=False).upper()[:4]}{rng.choice(('-', '', '-', ' '))}{tail}"
    names = ", ".join(make_word(rng, titular=True).capitalize() for _ in range(rng.choice((1, 2, 2, 3, 4))))
    front = rng.choice(("High", "Low", "Non", "Self", "Long", "Cross", "Post", "Anti", "Multi", "Wide"))
    return rng.choice(
        (
            f"{rng.choice(_SIGNS)} {title}",
            f"{sign} {rng.choice(('is', 'and', 'in', 'regulates', 'as', 'of'))} {title}",
            f"{front}-{_noun(rng)} {title}",
            f"{front}-{_noun(rng).capitalize()} {rng.choice(_SIGNS)} {title}",
            f"{title} ({names})",
            f"{title} in {make_word(rng, titular=True).capitalize()} ({names})",
            f"the “{_phrase(rng)}” {title}",
            f"{title} of {sign} and {rng.choice(_SIGNS)}",
            f"{_phrase(rng)}, {_phrase(rng)}, {_phrase(rng)}, and {_phrase(rng)}",
            f"{title}. {rng.randrange(1, 5)}. {_clause(rng)}",
            f"{title}, part {rng.choice(('I', 'II', 'III', '1', '2'))}",
            f"{title} at √s = {rng.randrange(2, 14)} TeV",
            f"{title} ({rng.randrange(1700, 1990)}–{rng.randrange(1700, 2000)})",
            f"{make_surname(rng)}’s {_noun(rng)} and {make_surname(rng)}’s {title}",
            f"{title}: {rng.choice(('a review', 'an overview', 'a case study', 'part two', 'a reply'))}",
        )
    )


def title_case(title: str) -> str:
    """The title with capitals as English titles have them."""
    small = frozenset("a an the of in on for to and or by as at from with".split())
    words = title.split(" ")
    return " ".join(w if (n and w in small) or not w else _capital(w) for n, w in enumerate(words))


def _capital(word: str) -> str:
    return "-".join(part[:1].upper() + part[1:] for part in word.split("-"))


def make_journal(rng: random.Random) -> str:
    """The name of a journal, in full."""
    one, other = rng.choice(JOURNAL_FIELDS), rng.choice(JOURNAL_FIELDS)
    noun = rng.choice(NOUNS).capitalize()
    adjective = rng.choice(("American", "European", "British", "International", "Canadian", "Applied", "Clinical"))
    return rng.choice(
        (
            f"Journal of {one}",
            f"Journal of {one}",
            f"Journal of {one} and {other}",
            f"Journal of {adjective} {one}",
            f"Journal of {one}: {adjective} {noun}",
            f"New {noun} {one}",
            f"{noun}, {rng.choice(NOUNS).capitalize()}, and {one}",
            f"Transactions on {noun}, {rng.choice(NOUNS).capitalize()} and {one}",
            f"{one} Communications",
            f"{make_word(rng, titular=False).upper()[: rng.choice((2, 3, 4, 5))]}",
            f"{make_word(rng, titular=False).upper()[: rng.choice((2, 3, 4, 5))]}",
            rng.choice((f"{rng.choice('ABCPJ')}&{rng.choice('ABSR')}", f"{one[0]}{other[0]}J", f"J{one[:2].upper()}")),
            f"{one[:4]}. {noun[:4]}. {rng.choice('ABCD')}",
            f"J. {one[:4]}. {noun[:3]}. {rng.choice('ABCD')}",
            f"{adjective} Journal of {one}",
            f"The {adjective} Journal of {one}",
            f"{one} Letters",
            f"{one} Review",
            f"{one} Reviews",
            f"{adjective} {one} Review",
            f"Physical Review {rng.choice(('A', 'B', 'D', 'E', 'Letters'))}",
            f"{one} Letters {rng.choice('AB')}",
            f"Annals of {one}",
            f"Archives of {one}",
            f"Advances in {one}",
            f"{one} Quarterly",
            f"{noun}",
            f"{one}",
            f"{noun} and {rng.choice(NOUNS).capitalize()}",
            f"{noun} & {one}",
            f"{noun} Research",
            f"{one} Today",
            f"{noun} Studies",
            f"Studies in {one}",
            f"Acta {make_word(rng, titular=True).capitalize()}",
            f"Revue de {make_word(rng, titular=False)}",
            f"Zeitschrift für {make_word(rng, titular=True).capitalize()}",
            f"Bulletin of the {adjective} {one} Society",
            f"Transactions of the {noun} Society",
            f"Transactions on {one}",
            f"{make_word(rng, titular=False).upper()[:4]} Transactions on {noun} Systems",
            f"Proceedings of the {adjective} Academy of Sciences",
            f"Communications of the {make_word(rng, titular=False).upper()[:4]}",
            f"Computer {noun}",
            f"{noun} Systems",
            f"Computing {rng.choice(('Surveys', 'Reviews', 'Letters', 'Practice'))}",
            f"{make_word(rng, titular=False).upper()[:4]} Journal",
            f"{make_word(rng, titular=False).upper()[:4]} {noun}",
            f"Nuclear {one} {rng.choice('AB')}",
            f"{make_word(rng, titular=True).capitalize()} {noun}",
            f"{make_word(rng, titular=True).capitalize()}",
            f"Theoretical {one}",
            f"Experimental {noun} Research",
            f"{rng.choice(TOWNS).split(',')[0]} Medical Journal",
            f"{rng.choice(TOWNS).split(',')[0]} {rng.choice(('Times', 'Herald', 'Review', 'Gazette', 'Post'))}",
        )
    )


def abbreviate(title: str, rng: random.Random) -> str:
    """A journal's name as its abbreviation has it."""
    words = []
    for word in title.split():
        if word in {"of", "the", "and", "The", "in", "on", "&", "de", "für", "for"}:
            if rng.random() < 0.12:
                words.append(word)
            continue
        short = ABBREVIATED.get(word, "")
        if not short and len(word) > 6 and rng.random() < 0.75:
            cut = rng.randrange(3, 6)
            short = word[:cut] + "."
        words.append(short or word)
    return " ".join(words) or title


_ARCHIVES = "hep-th hep-ph astro-ph cond-mat gr-qc math cs".split()
_SERIES = ("Studies in", "Lecture Notes in", "Monographs on", "Topics in")
_ORDINALS = "First Second Third Fourth Fifth Sixth Seventh Eighth Ninth Tenth Eleventh Twelfth Thirteenth".split()


def make_meeting(rng: random.Random) -> str:
    """The name of a conference's proceedings."""
    subject = f"{rng.choice(NOUNS).capitalize()} {rng.choice(NOUNS).capitalize()}"
    if rng.random() < 0.4:
        subject = f"{rng.choice(JOURNAL_FIELDS)} and {rng.choice(NOUNS).capitalize()}"
    year = rng.randrange(1975, 2022)
    number = rng.choice(
        (
            rng.choice(_ORDINALS),
            f"{rng.randrange(4, 40)}th",
            "Twenty-Third",
            f"{year}",
            "Thirtieth",
            "2nd",
            "3rd",
            "1st",
        )
    )
    body = make_word(rng, titular=False).upper()[: rng.choice((3, 4))]
    sort = rng.choice(
        (
            "Conference",
            "International Conference",
            "Symposium",
            "Workshop",
            "Annual Meeting",
            "Joint Conference",
            "Colloquium",
            "International Symposium",
            "Congress",
        )
    )
    name = rng.choice(
        (
            f"{number} {sort} on {subject}",
            f"{number} Annual {body} {sort} on {subject}",
            f"{body} {sort} on {subject}",
            f"{number} {body} {sort}",
            f"{sort} on {subject} ({body})",
            f"{sort} on {subject} ({body}{rng.choice(('-', ' ', chr(39), ''))}{year % 100:02d})",
            f"{body} {year}",
            f"{body}-{year % 100:02d}",
            f"{body}'{year % 100:02d}",
            f"Advances in {subject} {rng.randrange(2, 30)}",
            f"{number} {sort} of the {subject} Society",
        )
    )
    front = rng.choice(
        (
            "Proceedings of the ",
            "Proceedings of the ",
            "Proceedings of ",
            "Proc. ",
            "Proc. of the ",
            "Proc. of ",
            "Proceedings, ",
            "",
            "",
            "",
        )
    )
    return front + name


def make_publisher(rng: random.Random) -> str:
    """The name of a house that publishes."""
    town = rng.choice(TOWNS).split(",")[0]
    one, other = make_surname(rng), make_surname(rng)
    return rng.choice(
        (
            f"{town} University Press",
            f"{town} University Press",
            f"University of {town} Press",
            f"{one} University Press",
            f"Univ. of {town} Press",
            f"{one} Press",
            f"{one} and {other}",
            f"{one} & {other}",
            f"{one} {other}",
            f"{one} {other}",
            f"{one}",
            f"{one}",
            f"{one}-Verlag",
            f"{one} Verlag",
            f"{one} Publishers",
            f"{one} Publishing Company",
            f"{one} & Sons",
            f"{one} Academic Publishers",
            f"{one}-{other}",
            f"{one} Books",
            f"Éditions {one}",
            f"{make_word(rng, titular=True).capitalize()} Press",
            f"{make_word(rng, titular=False).upper()[:3]} Press",
            "Academic Press",
            f"{make_word(rng, titular=False).upper()[:4]} Publications",
            f"{one} Press, {one} University",
            f"The {one} Press",
            f"{one}, {other} and Company",
            f"{one}, Inc.",
            f"{one} Ltd",
            "National Academy Press",
            "Government Printing Office",
            f"{make_word(rng, titular=False).upper()[:4]}",
        )
    )


def make_school(rng: random.Random) -> str:
    """The name of a university or laboratory, as reports and theses have it."""
    town = rng.choice(TOWNS).split(",")[0]
    field_ = rng.choice(JOURNAL_FIELDS)
    school = rng.choice(
        (
            f"University of {town}",
            f"{town} University",
            f"{make_surname(rng)} University",
            f"Technical University of {town}",
            f"{town} Institute of Technology",
            f"Univ. of {town}",
            f"Universität {town}",
            f"Université de {town}",
            f"{make_surname(rng)} College",
            f"University of California, {town}",
            f"{make_word(rng, titular=False).upper()[:3]}",
        )
    )
    return rng.choice(
        (
            school,
            school,
            school,
            f"Department of {field_}, {school}",
            f"Dept. of {field_}, {school}",
            f"{school}, Department of {field_} Science",
            f"{make_word(rng, titular=False).upper()[:3]} {rng.choice(('CS', 'EE', 'Math'))}",
            f"Center for {rng.choice(NOUNS).capitalize()} and {field_}",
            f"Dept. of {rng.choice(NOUNS).capitalize()} Systems, {school}, {town}",
            f"{make_surname(rng)} Research Center",
            f"{make_surname(rng)} Laboratory",
            f"Center for {field_}, {school}",
            f"{make_word(rng, titular=False).upper()[:4]} Laboratories",
            f"Institute for {field_}, {school}",
            f"School of {field_}, {school}",
        )
    )


def _pages(rng: random.Random, record: Record, kind: str) -> None:
    first = rng.choice(
        (rng.randrange(1, 60), rng.randrange(60, 999), rng.randrange(60, 999), rng.randrange(1000, 9999))
    )
    last = first + rng.randrange(1, 40)
    record.first, record.last = str(first), str(last)
    if kind == "article":
        roll = rng.random()
        if roll < 0.1:
            record.first, record.last = (
                rng.choice(
                    (
                        f"e{rng.randrange(100, 99999)}",
                        f"{rng.randrange(0, 399999):06d}",
                        f"S{rng.randrange(1000, 9999):05d}",
                        f"L{rng.randrange(1, 99)}",
                        f"{rng.randrange(10**6, 10**7)}",
                        f"{rng.randrange(10**6, 10**7)}",
                    )
                ),
                "",
            )
        elif roll < 0.3:
            record.last = ""
            record.first = rng.choice((record.first, str(rng.randrange(1, 99))))
        elif roll < 0.33:
            record.first, record.last = f"S{first % 200}", f"S{first % 200 + 9}"


def _below(rng: random.Random, most: int) -> int:
    return rng.randrange(most // 10 + 1, most)


def _doi(rng: random.Random) -> str:
    tail = rng.choice(
        (
            f"j.{make_word(rng, titular=False)}.{rng.randrange(1990, 2022)}.{_below(rng, 99)}.{_below(rng, 999)}",
            f"s{_below(rng, 99999)}-{_below(rng, 999)}-{_below(rng, 9999)}-{_below(rng, 9)}",
            f"{rng.randrange(10**5, 10**8)}",
            f"{make_word(rng, titular=False)}/{rng.randrange(10**4, 10**6)}",
            f"journal.{make_word(rng, titular=False)}.{rng.randrange(10**6, 10**7)}",
        )
    )
    return f"10.{rng.randrange(1000, 9999)}/{tail}"


def _url(rng: random.Random) -> str:
    host = f"{make_word(rng, titular=False)}.{rng.choice(('example', 'example.org', 'example.com'))}"
    path = "/".join(make_word(rng, titular=False) for _ in range(rng.choice((0, 1, 2, 3))))
    tail = rng.choice(("", ".html", ".pdf", "/", f"?id={rng.randrange(1, 9999)}", f"{rng.randrange(1, 99999)}"))
    return (
        f"{rng.choice(('http://', 'https://', 'http://www.', 'https://www.', 'www.', 'ftp://ftp.'))}{host}/{path}{tail}"
    )


def make_record(rng: random.Random) -> Record:
    """One work, of a kind as frequent as in lists of many fields together."""
    kinds = ("article",) * 20 + ("paper",) * 9 + ("book",) * 7 + ("chapter",) * 5 + ("report",) * 3 + ("thesis",) * 2
    kind = rng.choice((*kinds, "web", "preprint", "book-edited"))
    record = Record(
        kind.split("-")[0],
        make_people(rng),
        make_title(rng, short=kind == "book" and rng.random() < 0.5),
        rng.randrange(1950, 2024),
    )
    if rng.random() < 0.06:
        record.year = rng.randrange(1600, 1950)
    if rng.random() < 0.25:
        record.month = rng.choice(MONTHS)
        record.day = rng.randrange(1, 29) if rng.random() < 0.25 else 0
    if kind in {"article", "paper", "chapter"}:
        _pages(rng, record, kind)
    if kind == "article":
        record.container = make_journal(rng)
        record.volume = str(rng.choice((rng.randrange(1, 60), rng.randrange(1, 200), rng.randrange(100, 999))))
        if rng.random() < 0.06:
            record.volume = rng.choice("ABCD") + record.volume
        elif rng.random() < 0.03:
            record.volume = rng.choice(
                (
                    f"{rng.randrange(0, 9):02d}",
                    "XII",
                    "IX",
                    "xiv",
                    f"{rng.randrange(1, 30)}A",
                    f"{rng.randrange(1, 9)}-{rng.randrange(10, 12)}",
                )
            )
        record.issue = (
            rng.choice(
                (
                    "",
                    str(rng.randrange(1, 13)),
                    str(rng.randrange(1, 13)),
                    f"{rng.randrange(1, 5)}-{rng.randrange(6, 9)}",
                    f"Suppl {rng.randrange(1, 4)}",
                    "Pt 2",
                )
            )
            if rng.random() < 0.8
            else ""
        )
    elif kind == "paper":
        record.container = make_meeting(rng)
        record.place = rng.choice(TOWNS) if rng.random() < 0.45 else ""
        record.publisher = make_publisher(rng) if rng.random() < 0.4 else ""
        record.volume = str(rng.randrange(1, 900)) if rng.random() < 0.2 else ""
        if rng.random() < 0.15:
            record.editors = make_people(rng, 3)
        if rng.random() < 0.2:
            record.series = rng.choice(
                (
                    f"Lecture Notes in {rng.choice(JOURNAL_FIELDS)}",
                    f"{rng.choice(NOUNS).capitalize()} Notes",
                    "LNCS",
                    "Lecture Notes in Computer Science",
                )
            )
            record.volume = record.volume or str(rng.randrange(1, 3000))
    elif kind == "chapter":
        record.container = make_title(rng, short=rng.random() < 0.7)
        record.editors = make_people(rng, 4) if rng.random() < 0.85 else []
        record.editors = [one for one in record.editors if not one.body]
        record.publisher, record.place = make_publisher(rng), rng.choice(TOWNS) if rng.random() < 0.75 else ""
        record.volume = str(rng.randrange(1, 12)) if rng.random() < 0.12 else ""
        record.series = (
            f"{rng.choice(ADJECTIVES).capitalize()} {rng.choice(NOUNS).capitalize()} Series"
            if rng.random() < 0.08
            else ""
        )
        record.edition = rng.randrange(2, 6) if rng.random() < 0.07 else 0
    elif kind.startswith("book"):
        record.publisher, record.place = make_publisher(rng), rng.choice(TOWNS) if rng.random() < 0.75 else ""
        record.edition = rng.randrange(2, 8) if rng.random() < 0.15 else 0
        record.volume = str(rng.randrange(1, 9)) if rng.random() < 0.07 else ""
        record.series = f"{rng.choice(_SERIES)} {rng.choice(JOURNAL_FIELDS)}" if rng.random() < 0.08 else ""
        if kind == "book-edited":
            record.editors, record.authors = [p for p in record.authors if not p.body] or [make_person(rng)], []
    elif kind == "report":
        record.report = rng.choice(
            (
                "Technical Report",
                "Technical Report",
                "Personal communication",
                "Internet-Draft",
                "Manuscript",
                "Patent",
                "Tech. Report",
                "Tech. Rep.",
                "Technical report",
                "Research Report",
                "Working Paper",
                "Discussion Paper",
                "Report",
                "Memo",
                "Technical Memo",
                "TR",
                "Report No.",
                "White paper",
                "A.I. Memo",
            )
        )
        code = "".join(rng.choice("ABCDEFGHIKLMNOPRSTUVW") for _ in range(rng.randrange(2, 5)))
        record.number = rng.choice(
            (
                f"{code}-{rng.randrange(1, 999)}",
                f"{code}-{rng.randrange(70, 99)}-{rng.randrange(1, 99):02d}",
                f"{rng.randrange(10, 4000)}",
                f"{rng.randrange(80, 99)}-{rng.randrange(1, 99)}",
                f"No. {rng.randrange(1, 900)}",
                f"{code}-TR-{rng.randrange(10, 99)}-{rng.randrange(1, 9)}",
                f"{code} {rng.randrange(80, 99)}/{rng.randrange(1, 20)}",
                "",
            )
        )
        record.publisher, record.place = make_school(rng), rng.choice(TOWNS) if rng.random() < 0.3 else ""
    elif kind == "thesis":
        record.report = rng.choice(
            (
                "PhD thesis",
                "Ph.D. thesis",
                "PhD dissertation",
                "Ph. D. Dissertation",
                "Doctoral dissertation",
                "Master's thesis",
                "Master’s thesis",
                "Unpublished doctoral dissertation",
                "M.Sc. thesis",
                "Ph.D. Thesis",
                "Doctoral thesis",
                "Diploma thesis",
                "Unpublished Ph.D. thesis",
            )
        )
        record.publisher, record.place = make_school(rng), rng.choice(TOWNS) if rng.random() < 0.2 else ""
        record.authors = [make_person(rng)]
    elif kind == "web":
        record.url = _url(rng)
        record.container = make_body(rng) if rng.random() < 0.4 else ""
    elif kind == "preprint":
        record.report = rng.choice(("arXiv preprint", "arXiv", "Preprint", "arXiv e-print", "bioRxiv"))
        record.number = rng.choice(
            (
                f"arXiv:{rng.randrange(1001, 2312)}.{rng.randrange(1000, 99999)}",
                f"arXiv:{rng.choice(_ARCHIVES)}/{rng.randrange(9101000, 9912999)}",
            )
        )
    if kind in {"article", "paper", "chapter", "book"}:
        if rng.random() < 0.2:
            record.doi = _doi(rng)
        elif rng.random() < 0.06:
            record.url = _url(rng)
        if kind == "article" and rng.random() < 0.05:
            record.number = rng.choice(
                (
                    f"arXiv:{rng.randrange(1001, 2312)}.{rng.randrange(1000, 99999)}",
                    f"{rng.choice(_ARCHIVES)}/{rng.randrange(9101000, 9912999)}",
                )
            )
    if rng.random() < 0.06:
        record.note = rng.choice(
            (
                "in Japanese",
                "In press",
                "in press",
                "Unpublished",
                "forthcoming",
                "To appear",
                "Submitted",
                "in French",
                "in Russian",
                "see also the references therein",
                "reprinted",
                "Preprint",
                "personal communication",
                "and references therein",
                "Special issue",
                "MR" + str(rng.randrange(10**5, 10**7)),
                f"PMID: {rng.randrange(10**6, 10**8)}",
                f"PMID {rng.randrange(10**6, 10**8)}",
                f"PMCID: PMC{rng.randrange(10**5, 10**7)}",
                f"To appear in {make_journal(rng)}",
                f"Reprinted in {make_journal(rng)}",
                f"Submitted to {make_journal(rng)}",
                "abstract",
                "Erratum",
                "mimeo",
                "Accessed 2 May 2014",
            )
        )
    return record
