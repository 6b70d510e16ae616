"""An example or two of each command, shown at the end of its help; the paper is named first in all of them."""

from __future__ import annotations

EXAMPLES: dict[str, tuple[str, ...]] = {
    "open": ("fairhand open", "fairhand open ~/papers --no-browser"),
    "new": ('fairhand new "Harbour Seals" --brief sheet.pdf --course "Biology 2"',),
    "desk": ("fairhand desk", 'fairhand desk --begin ~/papers --name "Robin Aske" --zone Europe/London --spelling GB'),
    "plan": ("fairhand plan", "fairhand plan --now"),
    "done": ("fairhand done harbour-seals draft --minutes 90", "fairhand done harbour-seals reader-1 --leave-out"),
    "brief": ("fairhand brief sheet.pdf", "fairhand brief harbour-seals"),
    "answer": (
        'fairhand answer harbour-seals policy.ai --say "none was used"',
        'fairhand answer harbour-seals due.final --set on=2027-03-01 --by "Dr. Marrow"',
    ),
    "jot": ("fairhand jot harbour-seals --minutes 20", "fairhand jot harbour-seals --sort"),
    "focus": (
        'fairhand focus harbour-seals --set "Seals left the harbour because the dredging began."',
        'fairhand focus harbour-seals --ask "When did the dredging begin?"',
    ),
    "add": (
        "fairhand add harbour-seals ~/Downloads/lund.pdf list.bib",
        "fairhand add harbour-seals --remove lund-2019",
    ),
    "take": ("fairhand take harbour-seals draft.docx", "fairhand take harbour-seals from-tutor.docx --refuse"),
    "leads": ("fairhand leads harbour-seals", "fairhand leads harbour-seals --take marsh-1998-counting-seals"),
    "find": (
        "fairhand find harbour-seals dredging",
        'fairhand find harbour-seals --ask "When did the dredging begin?"',
    ),
    "note": (
        'fairhand note harbour-seals lund-2019 "no seal seen after June" --page 14',
        'fairhand note harbour-seals lund-2019 --quotation "an empty harbour" --page 15 --point p2',
    ),
    "notes": ("fairhand notes harbour-seals",),
    "support": ("fairhand support harbour-seals", "fairhand support harbour-seals --one lund-2019 marsh-2021"),
    "searched": ('fairhand searched harbour-seals --for "seals dredging" --in "library catalogue" --hits 12',),
    "rough": ("fairhand rough harbour-seals --points", "fairhand rough harbour-seals --begin"),
    "outline": (
        "fairhand outline harbour-seals",
        'fairhand outline harbour-seals --of 3 --says "the dredging came first" --point p2',
    ),
    "fit": ("fairhand fit harbour-seals",),
    "offcut": (
        'fairhand offcut harbour-seals --lines 12-14 --why "a digression"',
        "fairhand offcut harbour-seals --back 1",
    ),
    "citations": ("fairhand citations harbour-seals",),
    "copy-edit": (
        "fairhand copy-edit harbour-seals --kind spelling",
        "fairhand copy-edit harbour-seals --through",
        "fairhand copy-edit harbour-seals --later 2 --stet 3 --come-back 5",
        "fairhand copy-edit harbour-seals --mend-marked",
        "fairhand copy-edit harbour-seals --ease",
    ),
    "lapses": ("fairhand lapses harbour-seals --wrong alot --right 'a lot'",),
    "ready": ("fairhand ready harbour-seals", "fairhand ready harbour-seals --all"),
    "print": ("fairhand print harbour-seals --as docx", "fairhand print harbour-seals --proof"),
    "proof": (
        "fairhand proof harbour-seals --begin paper",
        "fairhand proof harbour-seals --mark '3.12 \"recieve\" / receive' --end",
    ),
    "aloud": ("fairhand aloud harbour-seals",),
    "final": ("fairhand final harbour-seals --fit", 'fairhand final harbour-seals --not-fit "the ending is weak"'),
    "readers": (
        "fairhand readers harbour-seals --ask Mina --due 2027-02-20",
        'fairhand readers harbour-seals --back "draft for Mina.docx" --from Mina',
    ),
    "revised": ("fairhand revised harbour-seals", "fairhand revised harbour-seals --since 12 --short"),
    "hand-in": (
        'fairhand hand-in harbour-seals --state tools "None but a dictionary."',
        "fairhand hand-in harbour-seals --make",
    ),
    "returned": ('fairhand returned harbour-seals --mark 68 --comment "Say sooner what you argue."',),
    "record": ("fairhand record harbour-seals", "fairhand record harbour-seals --back 12"),
}
"""By command, as they are typed on a desk that holds a paper called *Harbour Seals*."""

HERE = "Where you stand in a paper's folder, its name may be left out."
"""What is said below the examples that name a paper."""


def tell_examples(name: str) -> str:
    """What the help of a command says at its end, each example on a line of its own.

    >>> print(tell_examples("fit").replace(chr(8), "."))
    .
    For example
      fairhand fit harbour-seals
    <BLANKLINE>
    Where you stand in a paper's folder, its name may be left out.
    """
    shown = EXAMPLES[name]
    said = "\b\nFor example\n" + "\n".join(f"  {one}" for one in shown)
    return f"{said}\n\n{HERE}" if any(" harbour-seals" in one for one in shown) else said
