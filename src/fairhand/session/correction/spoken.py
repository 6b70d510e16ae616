"""The paper read aloud into a file, without a browser, with the times of its sentences beside it."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.disk import put_file, writable
from fairhand.errors import NothingToPrint
from fairhand.outside.speech import speak
from fairhand.proof.aloud import LeftOut, count_spoken
from fairhand.session.correction.aloud import read_aloud
from fairhand.session.opened import OpenPaper


@dataclass(frozen=True, slots=True)
class SpokenFile:
    """A reading that was written."""

    wav: Path
    times: Path
    seconds: float
    sentences: int


def speak_paper(paper: OpenPaper, left_out: Collection[LeftOut], pace: int, to: Path | None = None) -> SpokenFile:
    """The paper stands as sound in a file, and beside it, as WebVTT, when each sentence is read.

    Args:
        paper: The paper.
        left_out: What is not read.
        pace: Words a minute.
        to: The file; ``fair/`` in the paper's folder where it is None.

    Raises:
        EngineFailed: The extra for speech is not installed, or the engine gave up.
        NothingToPrint: There is nothing to read.
        FolderNotWritable: The place is closed or full.
    """
    spoken = [one for one in read_aloud(paper) if f"{one.kind}s" not in left_out]
    said = [one.bare if "citations" in left_out else one.says for one in spoken]
    if not said:
        message = f"{paper.folder / 'draft.md'}: the draft is empty or not there yet; there is nothing to read"
        raise NothingToPrint(message)
    voice = "en-gb" if paper.look().is_british else "en-us"
    sentences = [(words, one.opens) for words, one in zip(said, spoken, strict=True)]
    speech = speak(sentences, count_spoken(spoken, left_out), pace, voice)
    path = to or paper.folder / "fair" / f"{paper.folder.name} (aloud).wav"
    with writable(next(place for place in path.absolute().parents if place.exists())):
        path.parent.mkdir(parents=True, exist_ok=True)
    put_file(path, speech.wav)
    beside = put_file(path.with_suffix(".vtt"), write_times(said, speech.times).encode())
    return SpokenFile(path, beside, speech.times[-1][1], len(said))


def write_times(said: Sequence[str], times: Sequence[tuple[float, float]]) -> str:
    """When each sentence is read, as WebVTT, which players of sound show beside it.

    **Source**: W3C, WebVTT: The Web Video Text Tracks Format.

    >>> print(write_times(["It ebbs & flows."], [(0.0, 61.25)]))
    WEBVTT
    <BLANKLINE>
    1
    00:00:00.000 --> 00:01:01.250
    It ebbs &amp; flows.
    <BLANKLINE>
    """
    cues = ["WEBVTT\n"]
    for number, (sentence, (begin, end)) in enumerate(zip(said, times, strict=True), 1):
        text = sentence.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
        cues.append(f"{number}\n{_clock(begin)} --> {_clock(end)}\n{text}\n")
    return "\n".join(cues)


def _clock(seconds: float) -> str:
    minutes, rest = divmod(round(seconds * 1000), 60_000)
    return f"{minutes // 60:02}:{minutes % 60:02}:{rest // 1000:02}.{rest % 1000:03}"
