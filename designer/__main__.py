"""The program's one entrance: sends a call to the desktop or to the command line and imports only that one."""

import sys
from collections.abc import Sequence

from designer.screen import why_no_qt, why_no_window

FAILED = 1
OPENED_BARE = (".drill.json", ".handbook.json", ".pdf")


def main(argv: Sequence[str] | None = None) -> int:
    """Runs one call and returns its exit status; `argv` is what stands behind the program's name."""
    arguments = list(sys.argv[1:] if argv is None else argv)
    paths = opened(arguments)
    if paths is None:
        from designer import commands

        return commands.main(arguments)
    return desktop(paths)


def opened(arguments: list[str]) -> list[str] | None:
    """The files to open in a window, none for a blank court; None where the call belongs to the command line."""
    if not arguments:
        return []
    if arguments[0] == "open" and not any(word in ("-h", "--help") for word in arguments[1:]):
        files = arguments[1:]
        return files[1:] if files[:1] == ["--"] else files
    if all(word.lower().endswith(OPENED_BARE) and not word.startswith("-") for word in arguments):
        return arguments
    return None


def desktop(paths: list[str]) -> int:
    """Opens the window with these files; where this machine cannot show one, says so in one sentence and returns 1."""
    if reason := why_no_window():
        return refused(reason)
    try:
        from designer.desktop import application
    except ImportError as error:
        if reason := why_no_qt(error, "the window"):
            return refused(reason)
        raise
    return application.run(paths)


def refused(reason: str) -> int:
    """Says on standard error why there is no window; returns the exit status for it."""
    print(f"drill-designer: {reason}", file=sys.stderr)
    return FAILED


if __name__ == "__main__":
    sys.exit(main())
