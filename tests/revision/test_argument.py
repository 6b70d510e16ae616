"""Paragraphs that stray or repeat, and points that are argued."""

from __future__ import annotations

from collections.abc import Callable

from fairhand.model.point import Point, Points, Support
from fairhand.readiness.analysis import Analysis

QUAY = (
    "The quay was sold because the harbour men were divided, and the town council knew that a divided quay could not"
    " defend its price when the sale came (Lind, 2019, p. 11)."
)
MEN = (
    "The permanent harbour men held badges, and the council treated the badge as a promise, so that the casual men"
    " without one had no claim on the town or its quay (Lind, 2019, p. 10)."
)
SALT = (
    "The price of salt fell in the same years, which made the quay worth less to the council, and the harbour men could"
    " no longer threaten the town with a lock-out (Reyes, 2018, p. 40)."
)
ROSES = (
    "Roses flower twice in sheltered gardens, once before midsummer and again when nights grow cool, and careful"
    " pruning"
    " in February gives longer stems, brighter petals and fewer greenfly for the gardener to wash away."
)
AGAIN = (
    "A divided quay could not defend its price, and so, since the harbour men were divided, the council sold the quay,"
    " as the town council had known it could when the sale came (Lind, 2019, p. 11)."
)


def draft(*paragraphs: str) -> str:
    """A paper that opens and closes."""
    opening = (
        "This paper argues that the town's quay was sold because its harbour men were divided by badges and prices,"
        " and by nothing else."
    )
    closing = (
        "The quay was sold, in short, because badges and the price of salt divided the harbour men whom the town"
        " council feared."
    )
    return "\n\n".join(("# The Quay", opening, *paragraphs, closing)) + "\n"


def test_a_paragraph_about_something_else_is_asked_about(analysis_of: Callable[..., Analysis]) -> None:
    """It cites nothing and shares few words with the rest."""
    analysis = analysis_of(draft(QUAY, MEN, ROSES, SALT))
    assert [one.span.of(analysis.paper.draft) for one in analysis.argument.strays] == [ROSES]
    assert analysis_of(draft(QUAY, MEN, SALT)).argument.strays == ()


def test_an_argument_made_twice_is_asked_about(analysis_of: Callable[..., Analysis]) -> None:
    """The later paragraph is named with the earlier one."""
    analysis = analysis_of(draft(QUAY, MEN, SALT, AGAIN))
    assert [(one.earlier, one.later, one.same_pages) for one in analysis.argument.repeats] == [(1, 4, True)]
    assert analysis_of(draft(QUAY, MEN, SALT)).argument.repeats == ()


def test_a_point_is_argued_where_its_source_is_cited_at_its_page(analysis_of: Callable[..., Analysis]) -> None:
    """Close in words, and cited at the page; the same page for another matter does not argue it."""
    points = Points(
        points=(
            Point("p1", "Badges promised the permanent men a place.", support=(Support("lind-2019", "10"),)),
            Point("p2", "Foreign grain ruined the millers upriver.", support=(Support("reyes-2018", "40"),)),
            Point("p3", "Nobody has looked this up yet."),
        )
    )
    told = analysis_of(draft(QUAY, MEN, SALT), points).argument.argued
    assert [(one.point.id, one.is_argued, one.paragraph) for one in told] == [("p1", True, 2), ("p2", False, 3)]


def test_what_argues_under_the_heading_of_the_opening_is_read_as_argument(analysis_of: Callable[..., Analysis]) -> None:
    """A heading that was left out does not hide the paragraphs that stood under it."""
    text = draft(QUAY, MEN, ROSES, SALT).replace("# The Quay\n", "# The Quay\n\n## Introduction\n")
    analysis = analysis_of(text)
    assert [one.role for one in analysis.argument.body] == ["opening", "opening", "body", "body", "body", "closing"]
    assert [one.span.of(analysis.paper.draft) for one in analysis.argument.strays] == [ROSES]


def with_point(text: str, support: Support, *others: Point) -> Points:
    """A main point, and others beside it."""
    return Points(points=(Point("p1", text, support=(support,)), *others))


def is_argued(analysis: Analysis, point: str = "p1") -> bool:
    """Whether a point is argued."""
    (found,) = (one.is_argued for one in analysis.argument.argued if one.point.id == point)
    return found


def test_a_point_is_argued_by_the_facts_that_its_page_gives(analysis_of: Callable[..., Analysis]) -> None:
    """The passage tells what the cited page tells of the matter, and hardly a word of the point."""
    facts = (
        "By the accounts, 38,600 pounds of revenue were lost to the harbour (Reyes, 2018, p. 40), and nobody asked why."
    )
    points = with_point("It was dear to lock the harbour men out.", Support("reyes-2018", "40"))
    assert is_argued(analysis_of(draft(QUAY, MEN, facts), points))
    assert not is_argued(analysis_of(draft(QUAY, MEN, facts.replace("38,600 pounds of revenue", "tempers")), points))


def test_words_that_other_points_have_too_argue_none_of_them(analysis_of: Callable[..., Analysis]) -> None:
    """What tells a point from the others must stand in the passage, where the text of its page is at hand."""
    badges = Point("p2", "The harbour men of the quay held badges.", support=(Support("lind-2019", "10"),))
    sold = Point("p3", "The quay was sold, since its harbour men were divided.", support=(Support("lind-2019", "11"),))
    points = with_point(
        "The harbour men of the quay drowned their mayor at dawn.", Support("reyes-2018", "40"), badges, sold
    )
    told = analysis_of(draft(QUAY, MEN, SALT), points)
    assert [is_argued(told, one) for one in ("p1", "p2", "p3")] == [False, True, True]


def test_a_point_is_argued_in_another_form_of_its_words(analysis_of: Callable[..., Analysis]) -> None:
    """*Women grew* is *the woman has grown*."""
    text = "No woman whose savings have grown has fallen into debt again, or so it is told (Lind, 2019, p. 12)."
    points = with_point("The savings of women grew, and none fell into debt.", Support("lind-2019", "12"))
    assert is_argued(analysis_of(draft(QUAY, text, SALT), points, with_texts=False))


HERONS = (
    "The quay is a pleasant place to walk in summer, where herons may be fed from the old steps, and a town band plays"
    " on Sundays for whoever has bought a cake and a cup of tea from the stall beside the flower beds."
)
PLAINER = (
    "The badge was thus very important. A permanent man wore a badge, and the council promised him a place; a casual"
    " man had no badge, and so he had no claim on the quay of the town (Lind, 2019, p. 10)."
)


def test_a_paragraph_that_only_shares_the_papers_nouns_is_asked_about(analysis_of: Callable[..., Analysis]) -> None:
    """A walk on the quay is not the sale of the quay, though quay and town are named in it."""
    analysis = analysis_of(draft(QUAY, MEN, HERONS, SALT, MEN.replace("badge", "card")))
    (found,) = analysis.argument.strays
    assert found.span.of(analysis.paper.draft) == HERONS


def test_an_argument_in_plainer_words_is_asked_about(analysis_of: Callable[..., Analysis]) -> None:
    """It rests on the same page, and most of its words stand in the earlier paragraph."""
    analysis = analysis_of(draft(QUAY, MEN, SALT, PLAINER))
    assert [(one.earlier, one.later) for one in analysis.argument.repeats] == [(2, 4)]


def test_a_paragraph_that_carries_the_one_before_it_on_is_left_alone(analysis_of: Callable[..., Analysis]) -> None:
    """It rests on the same page and has its nouns, and says something else of them."""
    on = (
        "Nor did a badge come free. The council asked every permanent man for a week's wages when he was given it, and"
        " whoever lost his badge had to buy another, at a price that doubled with each loss (Lind, 2019, p. 10)."
    )
    assert analysis_of(draft(QUAY, MEN, on, SALT)).argument.repeats == ()


def test_the_paragraph_that_states_the_thesis_argues_no_point(analysis_of: Callable[..., Analysis]) -> None:
    """An opening of two paragraphs ends with it, also where no heading says so and a source is cited in it."""
    thesis = "The quay was sold because badges divided the men, and because the price of salt fell."
    opens = (
        f"Lind (2019, p. 10) tells how the badges were pinned on in the rain, one by one. {thesis} All else is rumour."
    )
    points = (Point("p1", "Badges divided the harbour men.", support=(Support("lind-2019", "10"),)),)
    paragraphs = (opens, QUAY, SALT, SALT.replace("price", "weight"), QUAY.replace("price", "name"))
    told = analysis_of(draft(*paragraphs), Points(thesis, points))
    assert [one.role for one in told.argument.body][:3] == ["opening", "opening", "body"]
    assert not is_argued(told)
    assert is_argued(analysis_of(draft(*paragraphs), Points("", points)))


def test_a_paragraph_that_quotes_names_a_source_or_says_i_is_at_work(analysis_of: Callable[..., Analysis]) -> None:
    """It may resemble no other, as the writer's own asking does, and serves the paper."""
    walk = (
        "The quay is a place of herons and of steps. Nobody who has walked there in summer will doubt that the town"
        " council and its harbour men stood on these very stones. {} asked the man at the stall what had been sold"
        " here, and he named the flower beds, the badges in the window and the price of a cup of salt water."
    )
    strays = [
        analysis_of(draft(QUAY, MEN, walk.format(who), SALT)).argument.strays for who in ("I", "Lind", "Somebody")
    ]
    assert [len(one) for one in strays] == [0, 0, 1]


def test_where_the_page_has_no_word_of_the_point_a_citation_of_it_will_do(analysis_of: Callable[..., Analysis]) -> None:
    """The point is put in words that neither its page nor the passage has, but one: words cannot tell."""
    points = with_point("It had become cheaper to season food in that town.", Support("reyes-2018", "40"))
    assert is_argued(analysis_of(draft(QUAY, MEN, SALT), points))
