"""Which passages are cut or brought back: exact, and nothing without its ground."""

from __future__ import annotations

from itertools import chain, combinations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.revision.fit import Passage, Way, cut_least, gain_fewest
from fairhand.revision.knapsack import Thing, choose_best, choose_most


@st.composite
def passages(draw: st.DrawFn) -> list[Passage]:
    """Up to eight passages, some of which need others, in circles too."""
    number = draw(st.integers(0, 8))
    needs = st.frozensets(st.integers(0, max(0, number - 1)), max_size=2)
    one = st.builds(Passage, st.integers(0, 9), st.integers(0, 5), needs, st.sampled_from([False, False, False, True]))
    return draw(st.lists(one, min_size=number, max_size=number))


def every_choice(own: list[Passage]) -> list[frozenset[int]]:
    """Every set of passages that stands with all it needs."""
    whole = range(len(own))
    sets = map(frozenset, chain.from_iterable(combinations(whole, size) for size in range(len(own) + 1)))
    return [one for one in sets if all(own[number].needs <= one for number in one)]


@given(passages(), st.integers(0, 40))
def test_the_best_choice_is_the_best_of_all(own: list[Passage], room: int) -> None:
    """As every choice, gone through one by one, shows."""
    chosen = choose_most([Thing(one.words, one.worth, one.needs) for one in own], room)
    fits = [one for one in every_choice(own) if sum(own[number].words for number in one) <= room]
    assert chosen in fits
    assert sum(own[n].worth for n in chosen or ()) == max(sum(own[n].worth for n in one) for one in fits)


@given(passages(), st.integers(1, 40))
def test_the_first_cut_loses_least(own: list[Passage], words: int) -> None:
    """It reaches the words, leaves what is to stay, and no other loses less, or as much with fewer words."""
    whole = frozenset(range(len(own)))
    cuts = [whole - kept for kept in every_choice(own)]
    told = [
        (sum(own[n].worth for n in cut), sum(own[n].words for n in cut))
        for cut in cuts
        if not any(own[n].stays for n in cut)
    ]
    reach = [one for one in told if one[1] >= words]
    ways = cut_least(own, words)
    assert [(way.worth, way.words) for way in ways[:1]] == ([min(reach)] if reach else [])
    assert all(set(way.passages) in [set(cut) for cut in cuts] for way in ways)
    assert list(ways) == sorted(ways, key=lambda way: (way.worth, way.words))
    assert len({way.passages for way in ways}) == len(ways)


@given(passages(), st.integers(1, 40))
def test_the_first_gain_has_the_fewest_words(own: list[Passage], words: int) -> None:
    """Nothing comes back without its ground; of as many words, what is worth more."""
    told = [(sum(own[n].words for n in one), -sum(own[n].worth for n in one)) for one in every_choice(own)]
    reach = [one for one in told if one[0] >= words]
    ways = gain_fewest(own, words)
    assert [way.words for way in ways[:1]] == ([min(reach)[0]] if reach else [])
    if reach and all(one.words for one in own):
        assert -ways[0].worth == min(reach)[1]


def test_what_depends_on_a_cut_passage_is_cut_with_it() -> None:
    """The cheapest passage is the ground of a dear one: another goes instead."""
    own = [Passage(100, 0), Passage(100, 9, frozenset({0})), Passage(100, 5)]
    assert cut_least(own, 80, 1) == (Way((2,), 100, 5),)
    assert cut_least(own, 150, 1) == (Way((0, 1), 200, 9),)


def test_alternatives_are_not_parts_of_one_another() -> None:
    """Three ways to cut a hundred words; none is another with more cut."""
    ways = cut_least([Passage(100, 3), Passage(110, 3), Passage(120, 4), Passage(130, 5)], 100)
    assert [way.passages for way in ways] == [(0,), (1,), (2,)]


def test_nothing_is_proposed_where_whole_passages_do_not_reach() -> None:
    """All together are too few; or only what is to stay would be enough."""
    assert gain_fewest([Passage(100, 1)], 150) == ()
    assert cut_least([Passage(100, 1), Passage(400, 9, stays=True)], 150) == ()
    assert cut_least([], 1) == gain_fewest([], 1) == ()
    assert choose_best([], -1) == ()


def test_decimal_numbers_are_summed_without_rounding() -> None:
    """A tenth and two tenths fit into three tenths."""
    assert choose_most([Thing(0.1, 1), Thing(0.2, 1)], 0.3) == frozenset({0, 1})
