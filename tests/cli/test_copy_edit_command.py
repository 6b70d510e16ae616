"""The copy-edit from the terminal: what is found, the writer's own words, the sheet's rule on tools, ease."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.session.assignment.answering import answer_requirement

DRAFT = "# Salt\n\nThe goverment taxed salt. It was larger then the state. The bioswail lay dry.\n"


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper on a desk."""
    (tmp_path / "desk.toml").write_text('spelling = "US"\n', "utf-8")
    folder = tmp_path / "salt"
    folder.mkdir()
    (folder / "draft.md").write_text(DRAFT, "utf-8")
    return folder


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs a command on the paper."""
    return lambda *options, name="copy-edit", typed=None: run(name, paper, *options, typed=typed)


def test_findings_stand_in_the_order_of_the_text(run: Callable[..., tuple[int, str]]) -> None:
    """Each with its line, its words and what was meant; one kind alone on request."""
    told = run()[1]
    assert told.index("“goverment”. Was “government”") < told.index("was “than” meant?")
    assert "confused-words" not in run("--kind", "spelling")[1]
    code, refused = run("--kind", "comma")
    assert (code, refused) == (
        2,
        "fairhand: comma: nothing of that kind was found; found were confused-words, spelling",
    )


def test_findings_are_gone_through_a_letter_for_each(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Marked, let stand with a reason, put in, learnt; what is no letter is asked again; q stops."""
    draft = paper / "draft.md"
    slips = "The goverment taxed salt. It was larger then the state. It lay dry and and dead. Nobody knew a answer."
    draft.write_text(f"# Salt\n\n{slips}\n", "utf-8")
    code, told = run("--through", typed="x\nw\nl\ns\nas she says it\no\n")
    assert code == 0
    assert "1. line 3, should: spelling The ⸢goverment⸣ taxed salt." in told
    assert "o put “government”, w add to your words, a add to your lapses, n go on, q stop" in told
    assert "There is no “x” here." in told
    assert told.endswith("That was the last.")
    assert (paper.parent / "words.txt").read_text("utf-8") == "goverment\n"
    assert draft.read_text("utf-8").endswith(
        "It was larger then the state. It lay dry and and dead. Nobody knew an answer.\n"
    )
    assert "“and and”: as she says it" in run("--left", "stet")[1]
    assert "confused-words" in run("--left", "later")[1]
    assert run("--through", typed="")[1].endswith("Nothing more is to be gone through.")


def test_going_through_stops_where_nothing_more_is_typed(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """What was said until then is kept; one kind alone on request."""
    code, told = run("--through", "--kind", "confused-words", typed="b\n")
    assert (code, "spelling" in told) == (0, False)
    assert "come back" in run("--left", "come-back")[1]
    assert run("--through", typed="")[0] == 0


def test_two_wordings_stand_below_each_other(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """What differs is in half brackets, where a check compared the draft with a source."""
    said = " ".join(told("copy-edit", demo_paper, "--kind", "quotation-differs")[1].split())
    assert "draft We put our ⸢faith⸣ in the public, because a lock would have … source We put our ⸢trust⸣" in said


def test_a_word_of_the_writers_is_known_from_then_on(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """It stands on the desk's list, and can be taken off it."""
    assert "goverment" not in run("--learn", "goverment")[1]
    assert (paper.parent / "words.txt").read_text("utf-8") == "goverment\n"
    assert run("--words") == (0, "goverment")
    assert "goverment" in run("--unlearn", "goverment")[1]
    assert run("--words")[1].startswith("No words of yours")
    assert run("--learn", "12")[1] == "fairhand: “12” is no word; write one with letters"


def test_findings_are_marked_first_and_mended_later(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Marking changes nothing in the draft; marks outlast an edit; what is offered is put in in one go, and learnt."""
    draft = paper / "draft.md"
    draft.write_text(
        "# Salt\n\nIt was larger then the state. It lay dry and and dead. Nobody knew a answer.\n", "utf-8"
    )
    before = draft.read_text("utf-8")
    told = run("--later", "1", "--later", "3", "--stet", "2", "--why", "as she says it")[1]
    assert draft.read_text("utf-8") == before
    assert "1. line 3, should, mend later: confused-words" in told
    assert "2. line 3, stet: doubled-word “and and”: as she says it" in told
    assert "agreement" not in run("--left", "later")[1]
    assert run("--left", "stet")[1].startswith("2. line 3, stet")
    assert run("--left", "open") == (0, "Everything was gone through.")
    assert run("--left", "come-back") == (0, "Nothing was marked so.")
    draft.write_text(before.replace("It was larger", "In 1790 the pan was larger").replace("Nobody", "No one"), "utf-8")
    told = run("--mend-marked")[1]
    assert told.startswith(
        "Mended: 2 places. The draft as it was is in the record. line 3: put “than” line 3: put “an”"
    )
    said = "In 1790 the pan was larger than the state. It lay dry and and dead. No one knew an answer."
    assert said in draft.read_text("utf-8")
    assert '"to mend"' not in (paper / "marks.jsonl").read_text("utf-8")
    assert "then for than not in this draft" in told
    assert "doubled-word" in run("--take-back", "1")[1]


def test_line_ends_and_marks_of_the_file_stay(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """A draft as another system writes it is mended in its words alone."""
    (paper / "draft.md").write_bytes(b"\xef\xbb\xbf# Salt\r\n\r\nIt was larger then\r\nthe state.\r\n")
    assert run("--mend", "1")[0] == 0
    assert (paper / "draft.md").read_bytes() == b"\xef\xbb\xbf# Salt\r\n\r\nIt was larger than\r\nthe state.\r\n"


def test_a_broken_list_of_lapses_hinders_no_mending(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """What is mended stands in the draft, and the list as it was."""
    (paper.parent / "lapses.toml").write_text("[[lapses]\n", "utf-8")
    assert run("--mend", "2")[1].startswith("Mended: 1 place.")
    assert "larger than the state" in (paper / "draft.md").read_text("utf-8")
    assert (paper.parent / "lapses.toml").read_text("utf-8") == "[[lapses]\n"


def test_a_mark_is_taken_back_or_gives_way(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """The last word on a finding holds; what offers nothing is left to be worded by hand."""
    assert "1. line 3, should, come back" in run("--come-back", "1")[1]
    assert "1. line 3, should, mend later" in run("--later", "1")[1]
    assert "1. line 3, should: spelling" in run("--take-back", "1")[1]
    assert (paper / "marks.jsonl").read_text("utf-8").strip() == ""
    code, told = run("--mend", "9")
    assert (code, told) == (
        2,
        "fairhand: 9: no finding has that number; the last is 2 (fairhand copy-edit lists them)",
    )
    (paper / "draft.md").write_text("Salt was dear. [NB: ask her]\n", "utf-8")
    assert "how it is mended is yours to word" in run("--mend", "1")[1]


def test_a_finding_is_added_to_the_lapses(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """By its number, without mending it."""
    assert run("--lapse", "2")[1].startswith("Your lapses then for than 1 in this draft")


def test_lapses_come_first(run: Callable[..., tuple[int, str]]) -> None:
    """The most frequent, with how often they stand in this draft."""
    run("--wrong", "then", "--right", "than", name="lapses")
    assert run()[1].startswith("Your lapses then for than 1 in this draft")


@pytest.mark.parametrize(
    "rule",
    [
        "You may not use grammar checkers or other language tools on this paper.",
        "If you use a spell-checker, say so in a note at the end.",
        "You may use AI tools to tidy your spelling only if you declare it.",
    ],
)
def test_a_rule_on_tools_shuts_it_until_answered(run: Callable[..., tuple[int, str]], paper: Path, rule: str) -> None:
    """The language is not looked at, here or in the verdict; afterwards it is, and what was used can be told."""
    (paper / "brief.txt").write_text(f"Essay on salt\n\nWrite an essay of 1,000 words. {rule}\n", "utf-8")
    told = run()[1]
    assert told.startswith("The sheet has a rule on this")
    assert "goverment" not in told
    assert "goverment" not in run("--json", name="ready")[1]
    named = told.partition("fairhand answer ")[2].partition(" --say")[0].split()[-1]
    answer_requirement(paper, named, words="No, she does not allow it.")
    told = run()[1]
    assert "You answered: No, she does not allow it. So they are not used on this paper" in told
    assert "goverment" not in told
    assert "not looked at" in run("--used")[1]
    answer_requirement(paper, named, words="The instructor allows it.")
    assert "goverment" in run()[1]
    used = run("--used")[1]
    assert "wrote and rewrote no sentence" in used
    for kind in ("Spelling:", "Words confused", "Grammar and marks", "Copying:"):
        assert kind in used


def test_ease_is_shown_on_request(run: Callable[..., tuple[int, str]]) -> None:
    """Lengths drawn, figures with their formulas."""
    told = run("--ease")[1]
    assert told.startswith("3 sentences of ")
    assert "Flesch reading ease" in told
    assert "206.835" in told
