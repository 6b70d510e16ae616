"""The command ``fairhand``: each subcommand opens the thing, calls one function, and shows the answer."""

from __future__ import annotations

import atexit
import gc
import importlib
import sys
from collections.abc import Sequence

import click
from click.exceptions import NoArgsIsHelpError

from fairhand import __version__
from fairhand.cli.examples import tell_examples
from fairhand.cli.exit_codes import exit_code_of
from fairhand.errors import FairhandError

COMMANDS: dict[str, str] = {
    "open": "Show the desk and its papers in a browser.",
    "new": "Begin a paper from its assignment sheet.",
    "desk": "Show the work in hand, or begin a desk.",
    "plan": "Show what to do when, over all papers.",
    "done": "Say that a step of the plan is done, and how long it took.",
    "brief": "Show what an assignment sheet asks.",
    "answer": "Answer, correct or waive something that the sheet asks.",
    "jot": "Write down whatever comes to mind, and sort it afterwards.",
    "focus": "Show or set what the paper is about, and the questions to read for.",
    "add": "Add sources: files, lists, addresses, a DOI, ISBN or PMID.",
    "take": "Bring in a draft (DOCX, ODT) or a list of sources (BibTeX, RIS, nbib, CSL-JSON).",
    "leads": "Show what the sources' reference lists point to, the most needed first.",
    "find": "Find words, or what may answer a question, in the sources.",
    "note": "Note something from a source, with its page.",
    "notes": "Show the notes, by source, question or point.",
    "support": "Show what each point rests on, and whether to stop looking.",
    "searched": "Write down a search, or show those written down.",
    "rough": "Show how far the rough draft is, or begin the draft from it.",
    "outline": "Show what each paragraph says and does, and what to ask of the argument.",
    "fit": "Cast off the draft, and show which passages to cut or bring back.",
    "offcut": "Cut a passage and keep it, or bring one back.",
    "citations": "Show how each citation in the draft was understood.",
    "copy-edit": "Show what to correct in the language and the form, or how easily it reads.",
    "lapses": "Show your recurring errors, and where they stand in a draft.",
    "ready": "Judge whether the paper is ready to be handed in.",
    "print": "Make the fair copy.",
    "proof": "Mark the proof in passes, and go through the marks.",
    "aloud": "Tell how long the paper takes to be read aloud, or have it read into a file.",
    "final": "Say, after the final reading, whether the paper is fit to hand in.",
    "readers": "Ask first readers one after another, and take in what they wrote.",
    "revised": "Show what was revised between two states of the draft, in argument and in wording.",
    "hand-in": "Show what the sheet asks of the hand-in, and make what is handed in.",
    "returned": "Keep the marks and comments of a paper that came back, and put it away.",
    "record": "Tell how the paper came to be; list what was saved, and bring it back.",
}
"""The subcommands with their help; each stands in the module of its name and is loaded when it is called."""


SELDOM = 100_000
"""Objects made before cycles are looked for: a command on a paper of usual length makes fewer."""

TURN_SECONDS = 0.0005
"""How long one thread may keep the others waiting."""


class LazyCommands(click.Group):
    """A group that loads a subcommand's module only when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - the signature is click's
        """The names of the subcommands, in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - click's
        """The subcommand of that name, or None."""
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"fairhand.cli.{cmd_name.replace('-', '_')}")
        command: click.Command = module.command
        command.epilog = tell_examples(cmd_name)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002 - click's
        """The list of subcommands, told without loading any."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=LazyCommands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="fairhand", message="%(prog)s %(version)s")
def commands() -> None:
    """Researched papers, from the assignment sheet to the hand-in."""


def told_of(error: click.ClickException) -> str:
    """What was wrong with the words of a command, and where its words are told, in one line.

    >>> told_of(click.UsageError("No such option '--lsit'."))
    "fairhand: No such option '--lsit'. (fairhand --help)"
    """
    context = getattr(error, "ctx", None)
    where = context.command_path if context else "fairhand"
    said = " ".join(error.format_message().split())
    return f"{where}: {said} ({where} --help)"


def set_for_a_command() -> None:
    """Python is set for one short run.

    Cycles are looked for seldom, and at the end not at all: what a command makes lasts until it ends. A thread that has
    its engine's answer waits half a millisecond for its turn, not five.
    """
    gc.set_threshold(SELDOM)
    atexit.register(gc.freeze)
    sys.setswitchinterval(TURN_SECONDS)


def main(args: Sequence[str] | None = None) -> None:
    """Runs the command and ends the process with its exit code.

    0: done, or the paper is ready; 1: it is not, or something is to be asked; 2: the request could not be met.
    """
    set_for_a_command()
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        code = commands.main(args=args, prog_name="fairhand", standalone_mode=False)
    except FairhandError as error:
        click.echo(f"fairhand: {error}", err=True)
        sys.exit(exit_code_of(error))
    except NoArgsIsHelpError as error:
        error.show()
        sys.exit(2)
    except click.ClickException as error:
        click.echo(f"{told_of(error)}", err=True)
        sys.exit(2)
    except (click.Abort, KeyboardInterrupt):
        click.echo("fairhand: stopped; nothing more was done", err=True)
        sys.exit(2)
    except BrokenPipeError:
        sys.stderr.close()
        sys.exit(2)
    sys.exit(code if isinstance(code, int) else 0)
