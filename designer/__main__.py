"""The program's one entrance: sends a call to the desktop or to the command line and imports only that one."""

import ctypes
import os
import sys
from collections.abc import Sequence

FAILED = 1

# The Debian packages a window needs, by the shared library each brings. Found by installing into a bare system one at a
# time: Qt's own message names libxcb-cursor0 whichever of the xcb libraries is missing.
LIBRARIES = {
    "libGL.so.1": "libgl1",
    "libEGL.so.1": "libegl1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
}
SCREEN_LIBRARIES = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}
OPENED_BARE = (".drill.json", ".pdf")


class NoWindow(Exception):
    """A window cannot be opened on this machine; the text says why and what to do."""


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
    try:
        if sys.platform == "linux":
            look_for_screen()
        try:
            from designer.desktop import application
        except ImportError as error:
            raise NoWindow(missing(error)) from error
    except NoWindow as reason:
        print(f"drill-designer: {reason}", file=sys.stderr)
        return FAILED
    return application.run(paths)


def look_for_screen() -> None:
    """Raises NoWindow where Qt would abort the process for want of a screen or of a library for it."""
    platform = os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0]
    if platform not in ("", "xcb"):
        return
    display = os.environ.get("DISPLAY")
    if not display and (platform == "xcb" or not os.environ.get("WAYLAND_DISPLAY")):
        raise NoWindow(
            "there is no screen here to open a window on; `drill-designer --help` shows what works without one."
        )
    if display and (packages := not_there(LIBRARIES | SCREEN_LIBRARIES)):
        raise NoWindow(to_install(packages))


def not_there(libraries: dict[str, str]) -> list[str]:
    """The packages of those shared libraries that this machine cannot load."""
    return [package for library, package in libraries.items() if not loads(library)]


def loads(library: str) -> bool:
    """Whether this machine can load a shared library by its name."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def missing(error: ImportError) -> str:
    """The sentence for a failed import of the desktop; raises the error again where no shared library is to blame."""
    if ".so" not in str(error) and "DLL load failed" not in str(error):
        raise error
    packages = not_there(LIBRARIES | SCREEN_LIBRARIES) if sys.platform == "linux" else []
    return to_install(packages) if packages else f"Qt could not be loaded ({error})."


def to_install(packages: list[str]) -> str:
    """The sentence that tells a user of Debian or Ubuntu which packages a window needs."""
    return (
        "the window needs system libraries that are not installed; on Debian or Ubuntu install them with: "
        f"sudo apt-get install {' '.join(packages)}"
    )


if __name__ == "__main__":
    sys.exit(main())
