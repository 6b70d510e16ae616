"""Sentences spoken by an engine in a process apart, where the extra for it is installed."""

from __future__ import annotations

import io
import json
import subprocess
import sys
import wave
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.util import find_spec

from fairhand.errors import EngineFailed
from fairhand.outside.speaker import RATE_OF_SOUND

_SECONDS = 600
"""Longest that is waited for a reading."""


@dataclass(frozen=True, slots=True)
class Speech:
    """What was spoken."""

    wav: bytes
    times: tuple[tuple[float, float], ...]
    """Where each sentence begins and ends, in seconds."""


def has_speech() -> bool:
    """Whether the extra for speech is installed."""
    return find_spec("espeakng_loader") is not None


def speak(sentences: Sequence[tuple[str, bool]], words: int, pace: int, voice: str) -> Speech:
    """The sentences as sound.

    Args:
        sentences: Each with whether a paragraph begins with it.
        words: How many words they have.
        pace: Words a minute.
        voice: The engine's name of the voice, as ``en-gb``.

    Raises:
        EngineFailed: The extra is not installed, or the engine gave up.
    """
    if not has_speech():
        message = "no speech engine is installed; install the extra for it: pip install 'fairhand[speech]'"
        raise EngineFailed(message)
    asked = {"sentences": list(sentences), "words": words, "pace": pace, "voice": voice}
    try:
        run = subprocess.run(
            [sys.executable, "-m", "fairhand.outside.speaker"],
            input=json.dumps(asked).encode() + b"\n",
            capture_output=True,
            timeout=_SECONDS,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired) as error:
        message = f"the speech engine gave up ({error}); read it in the page instead"
        raise EngineFailed(message) from error
    head, _, sound = run.stdout.partition(b"\n")
    if run.returncode or not sound:
        said = run.stderr.decode(errors="replace").strip().splitlines()
        message = f"the speech engine gave up ({said[-1] if said else 'without a word'}); read it in the page instead"
        raise EngineFailed(message)
    kept = io.BytesIO()
    with wave.open(kept, "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE_OF_SOUND)
        out.writeframes(sound)
    return Speech(kept.getvalue(), tuple((begin, end) for begin, end in json.loads(head)["times"]))
