"""``fairhand hand-in``."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path


def test_the_hand_in_from_the_terminal(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """What is asked and what is left; made with its hashes; looked at again; its receipt kept."""
    paper = str(demo_paper)
    code, said = run("hand-in", paper)
    assert code == 1
    assert "named tram-libraries.pdf" in said
    assert "899 words to declare" in said
    assert "95 min copy-edit it: put in what is still to come (1 must); settle the remarks" in said
    code, said = run("hand-in", paper, "--make")
    assert code == 1
    assert "settle them" in said
    code, said = run("hand-in", paper, "--make", "--anyway", "--state", "help", "Nobody helped.")
    assert code == 0
    (made,) = (demo_paper / "fair").iterdir()
    assert {path.name for path in (made / "to hand in").iterdir()} == {"tram-libraries.pdf", "statements.txt"}
    code, said = run("hand-in", paper, "--check", str(made / "to hand in" / "tram-libraries.pdf"))
    assert code == 0
    assert "byte for byte" in said
    assert run("hand-in", paper, "--check", str(made / "hashes.txt"))[0] == 1
    assert run("hand-in", paper, "--receipt", "No. 7")[0] == 0
    assert "Receipt: No. 7" in run("hand-in", paper)[1]


def test_a_receipt_without_a_hand_in(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """One line, what is wrong and what to do."""
    code, said = run("hand-in", str(demo_paper), "--receipt", "No. 7")
    assert code == 2
    assert said == (
        "fairhand: hand-in.toml: nothing was handed in yet; make what is handed in first (fairhand hand-in --make)"
    )


def test_the_verdict_ends_with_what_is_left_and_how_long_it_takes(
    run: Callable[..., tuple[int, str]], demo_paper: Path
) -> None:
    """In order, over everything, against the hour."""
    said = run("ready", str(demo_paper), "--on", "2027-02-08")[1]
    assert "Nine things are left, in this order: 9 hours 25 minutes of work before Friday 19 February, 16:00" in said
    assert said.index("find 1 more source") < said.index("revise the argument:") < said.index("copy-edit it:")
