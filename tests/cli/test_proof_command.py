"""The proof marked from the terminal."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

from fairhand.cli import main


@pytest.fixture
def paper(demo_desk: Path, tmp_path: Path) -> Path:
    """A copy of the demo's paper, on its desk."""
    return Path(shutil.copytree(demo_desk, tmp_path / "desk")) / "tram-libraries"


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    return partial(run, "proof", paper)


def test_a_pass_is_begun_marked_and_ended_before_anything_is_mended(
    run: Callable[..., tuple[int, str]], paper: Path
) -> None:
    """Marking leaves the draft byte for byte; afterwards one mark is mended, one stands, one is asked about."""
    draft = (paper / "draft.md").read_bytes()
    assert "Read the proof through in one pass" in run()[1]
    assert "no pass is under way" in run("--mark", '2.5 "and and" / and')[1]
    assert run("--begin", "paper")[0] == 0
    assert "a pass is under way since" in run("--begin", "page")[1]
    marks = ['2.5 "and and" / and', '14 "market women" query who says?', '5.4 "Lines and Leaves" italic']
    code, told = run(*(word for mark in marks for word in ("--mark", mark)))
    assert code == 0
    assert "Page 2, line 5, “and and”: substitute “and”" in told
    assert "(in print alone: not words of the draft)" in told
    assert "end it, and mend afterwards" in run("--mend", "1")[1]
    assert (paper / "draft.md").read_bytes() == draft
    assert "Not read: from page 4, line 3 on to page 5." in run("--end", "--read-to", "4.3")[1]
    assert (paper / "draft.md").read_bytes() == draft
    run("--mend", "1")
    assert (paper / "draft.md").read_text("utf-8") == draft.decode().replace("pages and and too", "pages and too")
    run("--stet", "2", "--why", "Brandvold says it.")
    told = run("--query", "3")[1]
    assert "1 query still to be asked" in told
    assert "3 marks (1 mended, 1 let stand, 1 to be asked)" in told


def test_a_mark_that_cannot_be_placed_is_said_and_the_others_are_kept(run: Callable[..., tuple[int, str]]) -> None:
    """With its line as it was printed, or how often its words stand there."""
    run("--begin", "screen", "--by", "Jonas", "--for", "commas")
    code, told = run("--mark", '2.5 "nobody" delete', "--mark", '2.5 "and" delete', "--mark", '2.5 "pages" delete')
    assert code == 2
    assert "1 marks kept, 2 not" in told or "1 mark kept, 2 not" in told
    assert "“nobody” does not stand in page 2, line 5" in told
    assert "stands 2 times in page 2, line 5" in told
    told = run("--mark", '2.5 "and" (2) delete', "--mark", '9.1 "it" delete')[1]
    assert "page 9 has no line 1" in told
    told = run("--take-back", "1")[1]
    assert "on the screen, by Jonas, for commas alone: 1 mark; under way" in told


def test_a_place_that_is_no_line_is_refused(run: Callable[..., tuple[int, str]]) -> None:
    """And the pass goes on."""
    run("--begin", "page")
    assert "write it as 3.12" in run("--end", "--read-to", "twelve")[1]
    assert "page 9 has no line 1" in run("--end", "--read-to", "9.1")[1]
    assert "is under way" in run()[1]
    assert "no mark has the number 7" in run("--stet", "7")[1]


def test_two_passes_tell_what_neither_may_have_seen(run: Callable[..., tuple[int, str]]) -> None:
    """Over one state of the draft, each on its own: the second reader is not shown the marks of the first."""
    both = ['2.5 "and and" delete', '2.3 "something" delete', '1.10 "taken" / carried', '1.8 "standing" italic']
    for by, more in (("", '1.12 "argues" / says'), ("Jonas", '1.16 "claimed" / asked for')):
        run("--begin", "page", "--by", by)
        told = run(*(word for mark in (*both, more) for word in ("--mark", mark)))[1]
        assert "5 marks so far" in told
        assert ("argues" in told) == (not by)
        assert "two passes that read the same draft" in run("--estimate")[1]
        run("--end")
    told = run("--estimate")[1]
    assert "marked 5 and 5 errors, 4 of them alike: 6 in all" in told
    assert "by Chapman, standard error" in told
    assert "nineteen times in twenty it is between 0 and" in told
    assert "This takes the two readings to be independent" in told
    run("--mend", "1")
    assert run("--estimate")[1] == told


def test_too_few_marks_in_common_tell_nothing(run: Callable[..., tuple[int, str]]) -> None:
    """Which is said."""
    for mark in ('2.5 "and and" delete', '1.10 "taken" / carried'):
        run("--begin", "page")
        run("--mark", mark)
        run("--end")
    assert "Too few were marked by both to tell how many are left." in run("--estimate")[1]


def test_the_answer_after_the_final_reading(
    run: Callable[..., tuple[int, str]], paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It is one or the other, kept with its reason; a draft with asides left is not read at all."""

    def final(*options: str) -> tuple[int, str]:
        with pytest.raises(SystemExit) as ended:
            main(["final", str(paper), *options])
        printed = capsys.readouterr()
        return int(ended.value.code or 0), " ".join((printed.out + printed.err).split())

    code, told = final()
    assert code == 1
    assert "asides or TKs are left" in told
    assert final("--fit", "--not-fit", "It drags.")[0] == 2
    assert "say why" in final("--not-fit", " ")[1]
    assert "you held it not fit to hand in: It drags." in final("--not-fit", "It drags.")[1]
    assert "you held it fit to hand in." in final("--fit")[1]
    assert run()[0] == 0


def test_lines_are_those_of_the_proof_that_was_printed(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Marks are placed by the lines that were printed, though the draft was changed since, and mended in the draft."""
    run("--begin", "paper")
    text = (paper / "draft.md").read_text("utf-8")
    changed = text.replace(
        "Then they were taken down.", "Then, one after another and over a single winter, all were gone."
    )
    changed = changed.replace("It was a very cheap idea.", "")
    (paper / "draft.md").write_text(changed, "utf-8")
    told = run("--mark", '2.5 "and and" / and', "--mark", '1.17 "very cheap" / cheap')[1]
    assert "Page 2, line 5, “and and”: substitute “and”" in told
    assert "“very cheap”: substitute “cheap” (its words stand in the draft no more)" in told
    run("--end", "--read-to", "4.6")
    run("--mend", "1")
    assert (paper / "draft.md").read_text("utf-8") == changed.replace("pages and and too", "pages and too")
    assert "mend it by hand" in run("--mend", "2")[1]


def test_a_slip_mended_on_the_proof_is_a_lapse(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """A word that is none, counted once however often it is said to be mended; a change of wording is no lapse."""
    draft = paper / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("several pages", "several paiges"), "utf-8")
    run("--begin", "screen")
    run("--mark", '2.5 "paiges" / pages', "--mark", '2.5 "short" / brief', "--end")
    before = (paper.parent / "lapses.toml").read_text("utf-8")
    run("--mend", "1")
    run("--mended", "2")
    run("--mended", "1")
    after = (paper.parent / "lapses.toml").read_text("utf-8")
    assert after.startswith(before.rstrip())
    assert after.count('wrong = "paiges"') == 1
    assert "count = 1" in after
    assert "brief" not in after
