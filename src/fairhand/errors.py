"""The exceptions of Fairhand, all of one tree.

A fault *in a document* is a finding or a problem: a value, with its place. An exception is for a request that cannot be
met; its message is one line that says what was wrong, where, and what to do.

::

    FairhandError
    ├── DeskError                  the folder on disk
    │   ├── NoPaperHere            no paper (or desk) at that place
    │   ├── PaperExistsAlready     a new paper's folder is taken
    │   ├── DraftChangedOnDisk     a file is not the one that was read
    │   ├── FolderNotWritable      read-only, full, or not ours
    │   ├── NoSuchState            the record holds no such saved state
    │   ├── NoSuchStep             the plan has no step of that name, or several
    │   └── RecordDamaged          the record cannot be opened at all
    ├── InputError                 a file that was handed to us
    │   ├── FileUnreadable         broken, empty, or not what its name says
    │   ├── FileEncrypted          asks for a password
    │   ├── FileTooLarge           larger, or expanding further, than we read
    │   └── UnknownFormat          a kind of file that nothing here reads
    ├── NotAllowedOutside          nothing leaves the machine until the writer allows it
    ├── NotReached                 a server elsewhere gave no answer that can be used
    ├── StyleUnknown               no citation style of that name, no CSL file there
    ├── MatterLeft                 asides or TKs stand in a paper that is to be printed
    ├── NameLeft                   the writer's name stands in a paper that is read without it
    ├── NothingToPrint             the draft is empty, or not there yet
    └── EngineFailed               pandoc or typst refused what we gave it
"""


class FairhandError(Exception):
    """A request could not be met; the message says what, where, and what to do."""


class DeskError(FairhandError):
    """The folder on disk is not as the request needs it."""


class NoPaperHere(DeskError):
    """No paper, or no desk, stands at the place named."""


class PaperExistsAlready(DeskError):
    """The folder of a new paper is taken."""


class DraftChangedOnDisk(DeskError):
    """A file was changed behind our back: it is not the one that was read."""


class FolderNotWritable(DeskError):
    """The folder is read-only, full, or not the writer's."""


class NoSuchState(DeskError):
    """The record holds no such saved state."""


class NoSuchStep(DeskError):
    """The plan has no step of that name, or several."""


class RecordDamaged(DeskError):
    """The record cannot be opened at all."""


class InputError(FairhandError):
    """A file that was handed in cannot be read."""


class FileUnreadable(InputError):
    """The file is broken, empty, or not what its name says."""


class FileEncrypted(InputError):
    """The file asks for a password."""


class FileTooLarge(InputError):
    """The file is larger, or expands further, than Fairhand reads."""


class UnknownFormat(InputError):
    """Nothing here reads that kind of file."""


class NotAllowedOutside(FairhandError):
    """Something would leave the machine, and the writer has not allowed it."""


class NotReached(FairhandError):
    """A server elsewhere gave no answer, or none that can be used."""


class StyleUnknown(FairhandError):
    """No citation style has that name, and no CSL file stands there."""


class MatterLeft(FairhandError):
    """Asides or TKs still stand in a paper that is to be printed."""


class NameLeft(FairhandError):
    """The writer's name stands in a paper that is to be read without it."""


class NothingToPrint(FairhandError):
    """The draft is empty, or not there yet."""


class EngineFailed(FairhandError):
    """Pandoc or typst refused what it was given."""
