"""Measures how far each check can be trusted, and prints the rows for ``measured.toml``.

Run it by hand, with the data sets where CONTRIBUTING.md says. Every figure is made from fixed seeds. --wrong shows the
wrong alarms and what was missed, --unread the alarms in found prose that are still to be read and judged in
measuring/alarms_read.toml.
"""

from __future__ import annotations

import click
from measuring.found_prose import unread
from measuring.table import measure_all, rows_of
from measuring.tally import MEASURED


@click.command(help=__doc__)
@click.option("--share", default=1.0, help="The share of the made papers that are made.")
@click.option("--wrong", is_flag=True, help="Show the wrong alarms, and what was missed.")
@click.option("--unread", "only_unread", is_flag=True, help="Show the alarms that nobody has read, and nothing else.")
def main(*, share: float, wrong: bool, only_unread: bool) -> None:
    """Prints the table."""
    if only_unread:
        for heard in unread():
            print(f"{heard.key}: {heard.around()!r}")
        return
    tallies = measure_all(share)
    for tally in tallies:
        print(f"# {tally.on}")
        for check in MEASURED:
            if tally.alarms[check] or tally.spoiled[check]:
                seen = f"; {tally.seen[check]} of {tally.spoiled[check]} faults seen" if tally.spoiled[check] else ""
                print(
                    f"#   {check}: {tally.right[check]} of {tally.alarms[check]} right, {tally.bound(check):.3f}{seen}"
                )
        if wrong:
            for told in tally.wrong:
                print("#   wrong:", *map(repr, told))
            for missed in tally.missed:
                print("#   missed:", *map(repr, missed))
    print()
    for row in rows_of(tallies):
        print(row.toml())


if __name__ == "__main__":
    main()
