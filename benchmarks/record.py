"""What it costs to keep every state of a draft, beside keeping a compressed copy of each.

Run as ``python benchmarks/record.py [STATES]``. Both are measured in one run, on a text made by a seeded generator: a
draft of about 100 KB in which each save adds a few words and now and then takes some away.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

import zstandard

from fairhand.desk.record import check_record, keep_state, list_states, state_bytes
from fairhand.session.record.printed_record import check_printed, print_record, tell_record


def make_states(count: int) -> list[bytes]:
    """The states of a draft as it is written."""
    chance = random.Random(14)  # noqa: S311 -- the same text in each run
    letters = "eeeeeetttttaaaaoooniiinssshhhrrrdddlllccuummwwffggyyppbbvk"
    lexicon = ["".join(chance.choices(letters, k=chance.randint(2, 11))) for _ in range(6000)]
    words = chance.choices(lexicon, k=14_000)
    states = []
    for number in range(count):
        at = chance.randrange(len(words))
        words[at:at] = chance.choices(lexicon, k=8)
        if number % 2:
            gone = chance.randrange(len(words))
            del words[gone : gone + 14]
        states.append(" ".join(words).encode())
    return states


def main(count: int) -> None:
    """Print time and room for each state, and their ratios to compressed copies in files."""
    states = make_states(count)
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        begun = time.perf_counter()
        for data in states:
            keep_state(folder, "draft.md", data, "written")
        keeping = time.perf_counter() - begun
        room = (folder / "record.sqlite").stat().st_size

        begun = time.perf_counter()
        copied = 0
        for number, data in enumerate(states):
            copy = zstandard.compress(data, 3)
            (folder / f"{number}.zst").write_bytes(copy)
            copied += len(copy)
        copying = time.perf_counter() - begun

        begun = time.perf_counter()
        whole = all(
            state_bytes(folder, state.seq) == data for state, data in zip(list_states(folder), states, strict=True)
        )
        bringing = time.perf_counter() - begun
        begun = time.perf_counter()
        problems = check_record(folder)
        checking = time.perf_counter() - begun
        begun = time.perf_counter()
        document = tell_record(folder)
        telling = time.perf_counter() - begun
        begun = time.perf_counter()
        page = print_record(folder, "html", to=folder / "record.html")
        printing = time.perf_counter() - begun
        begun = time.perf_counter()
        faults = check_printed(page.name, page.read_bytes()).faults
        looking = time.perf_counter() - begun
        printed = page.stat().st_size
    size = sum(map(len, states)) / count
    print(f"{count} states of {size / 1000:.0f} KB; all come back exactly: {whole}; problems: {len(problems)}")
    print(f"keep one    {keeping / count * 1e3:6.2f} ms   {keeping / copying:6.2f} x a compressed copy (not flushed)")
    print(f"bring back  {bringing / count * 1e3:6.2f} ms")
    print(f"check all   {checking * 1e3:6.0f} ms")
    told = f"{len(document.sittings)} sittings, {telling / checking:5.2f} x checking all"
    print(f"tell it     {telling * 1e3:6.0f} ms   {told}")
    print(f"print it    {printing * 1e3:6.0f} ms   {printed / 1e6:.2f} MB, {printed / size / count:.4f} x text")
    print(f"check that  {looking * 1e3:6.0f} ms   faults: {len(faults)}")
    print(
        f"room        {room / 1e6:6.2f} MB   {room / copied:6.3f} x compressed copies, {room / size / count:.4f} x text"
    )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 2000)
