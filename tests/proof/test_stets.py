"""What is let stand stands for as long as its words do."""

from __future__ import annotations

import json

from hypothesis import assume, given
from hypothesis import strategies as st

from fairhand.model.finding import Finding
from fairhand.model.span import Span
from fairhand.model.stet import Stet
from fairhand.proof.marks_file import add_mark, drop_mark, read_marks
from fairhand.proof.stets import AROUND, let_stand, make_stet, name_stet, recognise

WORDS = st.lists(st.sampled_from("the tide came in again at noon , and slowly . \n \n\n “ebb”".split(" ")), max_size=40)


def doubled(text: str, words: str = "had had") -> list[Finding]:
    """A finding at each place where the words stand."""
    at = [n for n in range(len(text)) if text.startswith(words, n)]
    return [Finding("doubled-word", "copy-edit", "should", Span(n, n + len(words)), "", "") for n in at]


@given(WORDS, WORDS, st.integers(0, 99), st.booleans(), st.text(max_size=40))
def test_an_edit_elsewhere_keeps_a_stet(before: list[str], after: list[str], off: int, later: bool, put: str) -> None:
    """Whatever is written further off than what is kept around it, the stet holds."""
    text = f"{' '.join(before)} {'.' * AROUND} had had {'.' * AROUND} {' '.join(after)}"
    (found,) = doubled(text)
    stet = make_stet(found, text)
    assert found.span is not None
    at = min(len(text), found.span.end + AROUND + off) if later else max(0, found.span.start - AROUND - off)
    assume("had had" not in put)
    edited = text[:at] + put + text[at:]
    findings = doubled(edited)
    open_, stetted = let_stand(findings, [stet], edited)
    assert (len(open_), len(stetted)) == (len(findings) - 1, 1)


@given(WORDS, WORDS, st.integers(1, 6), st.text("abc", min_size=1, max_size=5))
def test_an_edit_within_drops_a_stet(before: list[str], after: list[str], place: int, put: str) -> None:
    """Other words are another matter, whatever the same check says of them."""
    text = f"{' '.join(before)} had had {' '.join(after)}"
    stet = make_stet(doubled(text)[0], text)
    edited = "had had"[:place] + put + "had had"[place:]
    assume(edited.split() != ["had", "had"])
    now = text.replace("had had", edited)
    findings = doubled(now, edited)
    assert let_stand(findings, [stet], now) == (tuple(findings), ())


def test_the_same_two_words_elsewhere_are_not_let_stand() -> None:
    """A stet on a short phrase knows its surroundings."""
    text = "The harbour had had its day long before the railway came to the town."
    stet = make_stet(doubled(text)[0], text)
    other = "Nobody in the market hall had had a seat since the morning bell was rung."
    assert let_stand(doubled(other), [stet], other)[1] == ()


def test_a_long_passage_is_known_wherever_it_is_moved() -> None:
    """Words enough to be told from all others stand, whatever is around them."""
    words = "had had more than enough of the rain in that summer"
    text = f"She {words}, she wrote."
    stet = make_stet(doubled(text, words)[0], text)
    moved = f"In her letters: he {words}"
    assert len(let_stand(doubled(moved, words), [stet], moved)[1]) == 1


def test_of_two_like_places_the_nearer_is_let_stand() -> None:
    """One stet holds one finding: that whose surroundings it knows."""
    text = "At dawn they had had tea and bread. Much later in the evening they had had nothing at all."
    first, second = doubled(text)
    open_, stetted = let_stand([first, second], [make_stet(second, text, "meant")], text)
    assert open_ == (first,)
    assert (stetted[0].finding, stetted[0].stet.reason) == (second, "meant")


def test_blanks_between_the_words_are_all_one() -> None:
    """A draft that is wrapped anew keeps its stets."""
    text = "They had had tea and bread at dawn, with the lamps lit."
    wrapped = text.replace("had had", "had\nhad").replace("tea and", "tea\nand")
    findings = doubled(wrapped, "had\nhad")
    assert let_stand(findings, [make_stet(doubled(text)[0], text)], wrapped)[0] == ()


def test_a_finding_on_the_whole_paper_is_known_by_what_it_concerns() -> None:
    """A point that is let stand as thin says nothing of the next one."""
    thin = Finding("point-thin", "revision", "should", None, "", "", concerns=("p1", "lind"))
    other = Finding("point-thin", "revision", "should", None, "", "", concerns=("p2", "lind"))
    open_, stetted = let_stand([thin, other], [make_stet(thin, "")], "")
    assert open_ == (other,)
    assert stetted[0].finding == thin


SAID = st.text(min_size=1)
STETS = st.builds(Stet, SAID, st.text(), st.text(), st.text(), st.lists(SAID).map(tuple), st.text(), st.text())


@given(st.lists(STETS, max_size=4))
def test_what_is_written_is_read_again(stets: list[Stet]) -> None:
    """Each stet is one line, an annotation, and comes back as it was; one taken back takes no other with it."""
    text = ""
    for stet in stets:
        text = add_mark(text, stet)
    read, problems = read_marks(text)
    assert problems == ()
    last = {name_stet(_kept(stet)): _kept(stet) for stet in stets}
    assert {name_stet(stet): stet for stet in read} == last
    for name in last:
        assert {name_stet(stet) for stet in read_marks(drop_mark(text, name))[0]} == set(last) - {name}


def _kept(stet: Stet) -> Stet:
    """What a file keeps of a stet: nothing around words that there are none of."""
    return stet if stet.exact else Stet(stet.check, "", "", "", stet.concerns, stet.reason, stet.when)


def test_another_line_is_kept_as_it_is() -> None:
    """What other programs annotate stays, and what cannot be read is told of and stays too."""
    other = json.dumps({"type": "Annotation", "motivation": "highlighting", "target": "draft.md"})
    text = add_mark(f"{other}\nnot json\n", Stet("doubled-word", "had had"))
    stets, problems = read_marks(text)
    assert len(stets) == 1
    assert [problem.where for problem in problems] == ["marks.jsonl, line 2"]
    assert drop_mark(text, name_stet(stets[0])) == f"{other}\nnot json\n"


@given(st.text())
def test_no_text_stops_the_reading(text: str) -> None:
    """Any file gives stets and problems."""
    read_marks(text)


def test_a_mark_for_later_holds_sooner_than_a_stet() -> None:
    """It silences nothing: the words next to it are enough, or most of the sentence that it is on."""
    text = "The chairman of the board had had enough of it."
    found = doubled(text)[0]
    marked, stet = make_stet(found, text, word="mend"), make_stet(found, text)
    now = "Whoever sat on a board had had enough by then."
    assert recognise(doubled(now), [marked], now) == {0: marked}
    assert recognise(doubled(now), [stet], now) == {}
    long = Stet("fragment", "Because the ebb had come too late for the boats of the quay.", word="later")
    later = "So it was. Because the ebb had come late for the boats of the quay."
    changed = Finding("fragment", "copy-edit", "should", Span(11, len(later)), "", "")
    assert recognise([changed], [long], later) == {0: long}
