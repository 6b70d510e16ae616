"""The register of readers, and what speaks against asking one now."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.readers.asking import QUESTIONS, offer_questions, say_cautions
from fairhand.readers.register import STAGES, Reader, drop_reader, put_reader, read_register

THIRD, EIGHTH = dt.date(2027, 2, 3), dt.date(2027, 2, 8)
INES = Reader("Ines Mora", draft="a1", sent=THIRD, due=EIGHTH, asked=("Where did you want to skip?",))


def test_a_reader_is_kept_once_for_a_version() -> None:
    """Written again, the same reader of the same version gives way; of another version it stands beside it."""
    text = put_reader("# mine\n", INES)
    back = Reader("ines  mora", draft="a1", sent=THIRD, back=EIGHTH)
    text = put_reader(text, back)
    assert "# mine" in text
    assert read_register(text)[0] == (Reader("ines mora", draft="a1", sent=THIRD, back=EIGHTH),)
    assert len(read_register(put_reader(text, Reader("Ines Mora", draft="b2")))[0]) == 2
    assert read_register(drop_reader(text, INES)) == ((), ())


def test_what_cannot_be_read_is_told_and_the_rest_kept() -> None:
    """Each with its place and what to do."""
    readers, problems = read_register(
        '[[readers]]\nname = "A"\ndue = "soon"\nstage = "mood"\n[[readers]]\nexpert = true\n[[readers]]\nname = "B"\n'
    )
    assert [one.name for one in readers] == ["A", "B"]
    assert [one.where for one in problems] == [
        "readers.toml, reader 1, due",
        "readers.toml, reader 1, stage",
        "readers.toml, reader 2",
    ]
    assert read_register("name =")[1][0].where == "readers.toml"
    assert read_register("readers = 3")[1]
    with pytest.raises(FileUnreadable, match="nothing was written"):
        put_reader("readers = 3", INES)


def test_one_after_another() -> None:
    """Who is reading, whose remarks wait, and that nothing changed since, each speak against the next."""
    tom = "Tom Reed"
    assert say_cautions([], tom, "a1", "argument") == ()
    assert "is reading now, until 8 February" in say_cautions([INES], tom, "a1", "argument")[0]
    back = Reader("Ines Mora", draft="a1", sent=THIRD, back=EIGHTH)
    told = say_cautions([back], tom, "a1", "argument", unruled={"ines mora": 2})
    assert "2 remarks still wait" in told[0]
    assert "stands as the last reader had it" in told[1]
    assert say_cautions([back], tom, "b2", "argument") == ()
    assert "no longer reads it for the first time" in say_cautions([back], "INES MORA", "b2", "argument")[0]
    assert "costs a reader" in say_cautions([], tom, "a1", "argument", revised=False)[0]
    assert say_cautions([], tom, "a1", "language", revised=False, copy_edited=True) == ()
    assert "edited again" in say_cautions([], tom, "a1", "argument", copy_edited=True)[0]
    assert "“Seals”" in say_cautions([], tom, "a1", "argument", elsewhere={"tom reed": ["Seals"]})[0]


def test_questions_fit_the_stage_and_the_reader() -> None:
    """None asks for a verdict; an expert is asked of the matter, another of what was new."""
    for stage in STAGES:
        assert set(QUESTIONS[stage]) < set(offer_questions(stage, expert=True))
        assert offer_questions(stage, expert=True) != offer_questions(stage, expert=False)


NAMES = st.text("abé \"'\\\n#", min_size=1, max_size=9).filter(lambda name: bool(name.split()))
DAYS = st.none() | st.dates(dt.date(2020, 1, 1), dt.date(2030, 1, 1))


@given(st.lists(st.tuples(NAMES, st.text("abc", max_size=2), DAYS, st.lists(NAMES, max_size=2)), max_size=5))
def test_whatever_is_written_is_read_again(told: list[tuple[str, str, dt.date | None, list[str]]]) -> None:
    """The last word on each reader and version stands, and nothing is lost on the way."""
    text = ""
    wanted: dict[tuple[str, str], Reader] = {}
    for name, draft, day, asked in told:
        reader = Reader(" ".join(name.split()), draft=draft, sent=day, asked=tuple(asked))
        text = put_reader(text, reader)
        wanted[reader.key, draft] = reader
    assert read_register(text) == (tuple(wanted.values()), ())
