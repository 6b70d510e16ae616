"""The speech engine's own process: sentences come in by standard input, sound and times go out by standard output.

eSpeak NG is under the GPL: it is loaded here and nowhere else, in a process that is begun for one reading and ends with
it, and only where the extra for it is installed.
"""

from __future__ import annotations

import array
import ctypes
import json
import sys
from typing import Any

RATE_OF_SOUND = 22_050
"""Samples a second, as the engine gives them."""
BETWEEN, AT_PARAGRAPHS = 0.25, 0.7
"""Seconds of silence after a sentence, and after the last one of a paragraph."""
_SYNCHRONOUS, _RATE, _UTF_8, _BY_CHARACTER = 1, 1, 1, 1
"""The engine's numbers for what is asked of it. **Source**: eSpeak NG, speak_lib.h."""
_SLOWEST, _QUICKEST = 80, 449
_CALLBACK = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.c_void_p)


class Engine:
    """The engine, speaking into memory."""

    def __init__(self, voice: str) -> None:
        """The engine is loaded with one voice, as ``en-gb``."""
        import espeakng_loader

        self._sound = array.array("h")
        self._library: Any = ctypes.CDLL(espeakng_loader.get_library_path())
        data = espeakng_loader.get_data_path().encode()
        if self._library.espeak_Initialize(_SYNCHRONOUS, 0, data, 0) <= 0:
            sys.exit("the speech engine could not be begun")
        self._callback = _CALLBACK(self._keep)
        self._library.espeak_SetSynthCallback(self._callback)
        self._library.espeak_SetVoiceByName(voice.encode())

    def _keep(self, sound: Any, many: int, events: Any) -> int:  # noqa: ARG002 - the signature is the engine's
        if sound and many > 0:
            self._sound.frombytes(ctypes.string_at(sound, many * 2))
        return 0

    def say(self, sentence: str, rate: int) -> array.array[int]:
        """The sound of one sentence, without the silence at its ends."""
        self._sound = array.array("h")
        self._library.espeak_SetParameter(_RATE, min(_QUICKEST, max(_SLOWEST, rate)), 0)
        said = sentence.encode("utf-8", "replace")
        self._library.espeak_Synth(said, len(said) + 1, 0, _BY_CHARACTER, 0, _UTF_8, None, None)
        self._library.espeak_Synchronize()
        loud = [n for n, one in enumerate(self._sound) if abs(one) > 40]
        return self._sound[loud[0] : loud[-1] + 1] if loud else array.array("h")


def read(sentences: list[tuple[str, bool]], engine: Engine, rate: int) -> tuple[array.array[int], list[list[float]]]:
    """The sound of all sentences, and where each begins and ends in it, in seconds.

    Args:
        sentences: Each with whether a paragraph begins with it.
        engine: The engine.
        rate: The rate that it is asked for, in its own words a minute.
    """
    sound, times = array.array("h"), []
    for number, (sentence, _) in enumerate(sentences):
        begun = len(sound)
        sound.extend(engine.say(sentence, rate))
        times.append([begun / RATE_OF_SOUND, len(sound) / RATE_OF_SOUND])
        last = number + 1 == len(sentences)
        quiet = 0.0 if last else AT_PARAGRAPHS if sentences[number + 1][1] else BETWEEN
        sound.extend(array.array("h", bytes(2 * int(quiet * RATE_OF_SOUND))))
    return sound, times


def main() -> None:
    """Reads ``{"sentences", "words", "pace", "voice"}``; answers with a line of times, and the sound after it.

    The engine's rate is set until the whole, its silences included, keeps the pace: its own words a minute do not.
    """
    asked = json.loads(sys.stdin.buffer.readline())
    sentences = [(str(one), bool(opens)) for one, opens in asked["sentences"]]
    engine, pace, rate = Engine(asked["voice"]), asked["pace"], asked["pace"]
    wanted = asked["words"] * 60 / pace
    sound, times = read(sentences, engine, rate)
    for _ in range(3):
        quiet = sum(AT_PARAGRAPHS if opens else BETWEEN for _, opens in sentences[1:])
        spoken, room = len(sound) / RATE_OF_SOUND - quiet, wanted - quiet
        if abs(len(sound) / RATE_OF_SOUND - wanted) < 0.01 * wanted or room <= 0:
            break
        rate = round(rate * spoken / room)
        sound, times = read(sentences, engine, rate)
    sys.stdout.buffer.write(json.dumps({"times": times}).encode() + b"\n" + sound.tobytes())


if __name__ == "__main__":
    main()
