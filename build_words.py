"""The words of English as the build puts them together: which country spells them so, what they can be, how frequent.

The spelling dictionaries (made from SCOWL) say which words there are: each stem with letters for its endings, so that
an ending also tells what the stem can be. The counts of single words and of words in a row come from a library for
correcting spelling, which took them from the Google Books Ngrams.
"""

from __future__ import annotations

import math
import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

COUNTRIES = {"u": "dictionary-en", "g": "dictionary-en-gb"}
"""The letter of a country's spelling, and the npm package of its dictionary."""
FORMS = {"S": "s", "D": "d", "G": "g", "Y": "y", "R": "r", "T": "t", "P": "p"}
"""What a word is that has an ending: plural or third person, past, *-ing*, *-ly*, *-er*, *-est*, *-ness*."""
STEMS = {"n": "M", "v": "GD", "a": "YPRT"}
"""What a stem can be, noun, verb or adjective, by the endings that it takes."""
NO_WORD = "c"
"""The letter of what is no word by itself."""
NOT_OFFERED, UNSAID = "!", "x"
"""The letter of a word that is one, but must not be offered; and how we mark it."""
ABOUT_COUNTS = (
    "The counts in words.txt and all of pairs.txt are taken from the lists of symspellpy, which says of them that\n"
    "they were made from the Google Books Ngrams (https://books.google.com/ngrams), free to be used for any purpose,\n"
    "and, for the choice of words, SCOWL. Here each count stands as ten times its logarithm. Its licence:"
)


@dataclass
class Known:
    """One word."""

    countries: set[str] = field(default_factory=set)
    kinds: set[str] = field(default_factory=set)
    count: int = 0


@dataclass
class Affix:
    """One rule of an ending, or of a beginning."""

    is_prefix: bool
    strip: str
    add: str
    fits: re.Pattern[str]

    def form(self, word: str) -> str | None:
        """The word with it; None where the rule does not fit."""
        if not self.fits.search(word):
            return None
        if self.is_prefix:
            return self.add + word
        return word.removesuffix(self.strip) + self.add


def make_words(packages: Path, counts: Path, licence: str, sound: Callable[[str], str], target: Path) -> None:
    """``words.txt`` and ``pairs.txt`` stand in ``target``, sorted by their bytes, with the licences beside them.

    Args:
        packages: The folder of the npm packages.
        counts: The folder of the library that has the counts.
        licence: The text of its licence.
        sound: Tells how a word sounds.
        target: Where they shall stand.
    """
    words: dict[str, Known] = {}
    for letter, name in COUNTRIES.items():
        folder = packages / name
        affixes = read_affixes((folder / "index.aff").read_text("utf-8"))
        for line in (folder / "index.dic").read_text("utf-8").splitlines()[1:]:
            for word, kind in expand(line, affixes):
                known = words.setdefault(word, Known())
                known.countries.add(letter)
                known.kinds |= set(kind)
    for line in (counts / "frequency_dictionary_en_82_765.txt").read_text("utf-8-sig").splitlines():
        word, number = line.split()
        words.setdefault(word, Known()).count = int(number)
    target.mkdir(parents=True)
    rows = (
        "\t".join(
            (word, *("".join(sorted(each)) for each in (known.countries, known.kinds)), weigh(known.count), sound(word))
        )
        for word, known in words.items()
    )
    write_sorted(target / "words.txt", rows)
    lines = (counts / "frequency_bigramdictionary_en_243_342.txt").read_text("utf-8-sig").splitlines()
    pairs = (line.split() for line in lines)
    write_sorted(target / "pairs.txt", (f"{one} {two}\t{weigh(int(number))}" for one, two, number in pairs))
    for name in COUNTRIES.values():
        shutil.copyfile(packages / name / "license", target / f"{name}-LICENSE.txt")
    (target / "counts-LICENSE.txt").write_text(f"{ABOUT_COUNTS}\n\n{licence}", encoding="utf-8", newline="\n")


def read_affixes(text: str) -> dict[str, list[Affix]]:
    """The rules of endings and beginnings by their letter."""
    rules: dict[str, list[Affix]] = {}
    for line in text.splitlines():
        parts = line.split()
        if len(parts) >= 5 and parts[0] in ("PFX", "SFX"):
            kind, letter, strip, add, condition = parts[:5]
            pattern = re.compile(f"^{condition}" if kind == "PFX" else f"{condition}$")
            rule = Affix(kind == "PFX", strip.replace("0", ""), add.replace("0", ""), pattern)
            rules.setdefault(letter, []).append(rule)
    return rules


def expand(line: str, affixes: dict[str, list[Affix]]) -> Iterator[tuple[str, str]]:
    """Each word that a line of a dictionary makes, with the letters of what it can be; possessives are left out."""
    stem, _, letters = line.split("\t", maxsplit=1)[0].strip().partition("/")
    if not stem or any(sign.isdigit() for sign in stem) or NO_WORD in letters:
        return
    unsaid = UNSAID if NOT_OFFERED in letters else ""
    kinds = "".join(kind for kind, ends in STEMS.items() if set(ends) & set(letters)) + unsaid
    rules = [(letter, rule) for letter in letters for rule in affixes.get(letter, ())]
    begun = [stem, *(rule.form(stem) for _, rule in rules if rule.is_prefix)]
    for word in filter(None, begun):
        yield word, kinds
        for letter, rule in rules:
            form = None if rule.is_prefix or letter == "M" else rule.form(word)
            if form:
                yield form, FORMS.get(letter, "") + unsaid


def weigh(count: int) -> str:
    """A count as ten times its logarithm to the base ten; nought where there is none."""
    return str(round(10 * math.log10(count)) if count else 0)


def write_sorted(path: Path, rows: Iterator[str]) -> None:
    """The rows stand in the file in the order of their bytes, so that one is found by halving."""
    path.write_bytes(b"\n".join(sorted(row.encode() for row in rows)) + b"\n")
