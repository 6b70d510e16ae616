"""The paper read aloud into a file."""

from __future__ import annotations

import io
import wave
from itertools import pairwise
from pathlib import Path

import pytest

from fairhand.cli import main
from fairhand.errors import EngineFailed
from fairhand.outside import speech
from fairhand.outside.speech import Speech
from fairhand.session.correction import spoken
from fairhand.session.correction.spoken import speak_paper, write_times
from fairhand.session.opened import OpenPaper


def test_without_the_extra_it_is_said_what_to_install(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And nothing is written."""
    monkeypatch.setattr(speech, "has_speech", lambda: False)
    with pytest.raises(EngineFailed, match=r"pip install 'fairhand\[speech\]'"):
        speak_paper(OpenPaper(demo_paper), (), 183)
    assert not (demo_paper / "fair").exists()


def test_what_is_left_out_is_not_spoken(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The engine is given the sentences as they are read, the number of their words, and the pace."""
    given: list[tuple[list[tuple[str, bool]], int, int, str]] = []

    def speak(sentences: list[tuple[str, bool]], words: int, pace: int, voice: str) -> Speech:
        given.append((sentences, words, pace, voice))
        return Speech(b"RIFF", tuple((float(n), n + 0.5) for n in range(len(sentences))))

    monkeypatch.setattr(spoken, "speak", speak)
    made = speak_paper(OpenPaper(demo_paper), ("citations", "headings"), 150)
    ((sentences, words, pace, voice),) = given
    assert sentences[0][0].startswith("Between 1926 and 1931")
    assert ("It was a very cheap idea.", False) in sentences
    assert (pace, voice) == (150, "en-us")
    assert 800 < words < 858
    assert made.wav == demo_paper / "fair" / "tram-libraries (aloud).wav"
    assert made.times.read_text("utf-8").startswith("WEBVTT\n\n1\n00:00:00.000 --> 00:00:00.500\nBetween 1926")


def test_times_beyond_an_hour() -> None:
    """As WebVTT writes them. **Source**: W3C, WebVTT."""
    assert "01:02:03.005 --> 01:02:04.000" in write_times(["So."], [(3723.005, 3724.0)])


def test_the_engine_keeps_the_pace(demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Within 2 of 100 of the time told beforehand, each sentence within the sound and after the one before it."""
    pytest.importorskip("espeakng_loader", reason="the extra is not installed: pip install 'fairhand[speech]'")
    with pytest.raises(SystemExit) as ended:
        main(["aloud", str(demo_paper), "--wav", "--to", str(tmp_path / "read.wav")])
    assert not ended.value.code
    assert "It takes about 5 minutes: 858 words at 183 a minute." in capsys.readouterr().out
    with wave.open(io.BytesIO((tmp_path / "read.wav").read_bytes())) as sound:
        seconds = sound.getnframes() / sound.getframerate()
    wanted = 858 * 60 / 183
    print(f"\nread in {seconds:.1f} seconds, told {wanted:.1f}")
    assert abs(seconds - wanted) < 0.02 * wanted
    cues = [line.split(" --> ") for line in (tmp_path / "read.vtt").read_text("utf-8").splitlines() if "-->" in line]
    assert len(cues) == 53
    assert all(begin < end for begin, end in cues)
    assert all(one[1] <= other[0] for one, other in pairwise(cues))
