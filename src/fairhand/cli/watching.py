"""Long work watched from the terminal."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, TypeVar

import click

if TYPE_CHECKING:
    from fairhand.session.job import Job

T = TypeVar("T")
_EVERY_SECONDS = 0.2


def watch(job: Job[T]) -> T:
    """The outcome of the job, its progress shown meanwhile; the first interruption stops it after what it is at.

    Raises:
        FairhandError: It could not go on.
    """
    shown = sys.stderr.isatty()
    job.begin()
    came = None
    while not job.ended:
        try:
            came = job.wait(_EVERY_SECONDS)
        except KeyboardInterrupt:
            job.cancel()
        if shown:
            click.echo(f"\r{job.told}{', stopping' if job.cancelled else ''}   ", nl=False, err=True)
    if shown:
        click.echo("\r", nl=False, err=True)
    if job.fault is not None:
        raise job.fault
    came = came if came is not None else job.wait(0)
    assert came is not None  # noqa: S101 - it is over, and without a fault
    return came
