"""What the copy-edit of a draft costs: spelling, words confused and doubled; grammar; form: cold, warm, changed.

Run as ``python benchmarks/copy_edit.py``. The draft is the demo's own prose, each paragraph and sentence told from the
others by a number, with a slip in every twentieth; 2,000 and 20,000 words. Cold is a process that has read no word list
and loaded no parser yet; the splitting of the draft into parts is not counted. All is measured in one run.
"""

from __future__ import annotations

import subprocess
import sys
import time
from importlib.resources import files

from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import (
    agreement,
    article,
    comma_splice,
    confused_words,
    doubled_word,
    fragment,
    plural_missing,
    spelling,
    spelling_mixed,
    verb_form,
)
from fairhand.readiness.table import CHECKS

LENGTHS = (2_000, 20_000)
OF_FORM = frozenset(
    "mark_spacing dash range_hyphen numeral_opening heading_alone heading_form mark_unpaired quotation_stop"
    " citation_stop citation_names citation_form block_quotation exhibit_mention exhibit_order omission_points"
    " latin_abbreviation quotation_marks percent_sign contraction abbreviation".split()
)
OF_SIGNS = frozenset("apostrophe missing_word capital hyphen number_form".split())
WORDS = (spelling.find, spelling_mixed.find, confused_words.find, doubled_word.find)
GRAMMAR = (
    plural_missing.find,
    agreement.find,
    comma_splice.find,
    fragment.find,
    verb_form.find,
    article.find,
)
FORM = tuple(one.find for one in CHECKS if one.find.__module__.rpartition(".")[2] in OF_FORM)
SIGNS = tuple(one.find for one in CHECKS if one.find.__module__.rpartition(".")[2] in OF_SIGNS)
KINDS = {"words": WORDS, "grammar": GRAMMAR, "form": FORM, "signs": SIGNS}


def make_draft(words: int) -> str:
    """A draft of about so many words."""
    text = (files("fairhand") / "demo" / "desk" / "tram-libraries" / "draft.md").read_text("utf-8")
    prose = [block for block in text.split("\n\n") if block[:1].isalpha() and len(block) > 200]
    out, number = [], 0
    while sum(len(block.split()) for block in out) < words:
        slip = " The goverment agreed." if number % 20 == 0 else ""
        own = prose[number % len(prose)].replace(". ", f" of {number}. ")  # no two sentences are the same
        out.append(f"{own} So it stood in line {number}.{slip}")
        number += 1
    return "\n\n".join(out)


def time_checks(draft: str, kind: str) -> float:
    """Seconds of work for all of the checks, the draft's parts not counted."""
    known = Analysis(Paper("bench", draft), lambda _: None)
    _ = known.own_prose
    before = time.process_time()
    for find in KINDS[kind]:
        list(find(known))
    return time.process_time() - before


def main() -> int:
    """Prints each length: cold, warm, after one paragraph changed, and the last two as shares of the first."""
    if len(sys.argv) > 1:
        draft = make_draft(int(sys.argv[1]))
        changed = draft.replace("So it stood in line 3.", "So it lay in line 3, and nobody asked.", 1)
        print(*(time_checks(text, sys.argv[2]) for text in (draft, draft, changed)))
        return 0
    for kind in KINDS:
        for words in LENGTHS:
            command = [sys.executable, __file__, str(words), kind]
            ran = subprocess.run(command, check=True, capture_output=True, text=True)
            cold, warm, changed = map(float, ran.stdout.split())
            print(
                f"{kind}, {words:,} words: cold {cold * 1000:.0f} ms, warm {warm * 1000:.0f} ms ({warm / cold:.2f} of"
                f" it), one paragraph changed {changed * 1000:.0f} ms ({changed / cold:.2f})"
            )
    return 0


if __name__ == "__main__":
    sys.exit(main())
