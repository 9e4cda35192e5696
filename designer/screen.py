"""What Qt needs of this machine, said before it aborts: a screen, and the shared libraries. Imports nothing of the project."""

import ctypes
import os
import sys

# The Debian packages Qt needs, by the shared library each brings. Found by installing into a bare system one at a time:
# Qt's own message names libxcb-cursor0 whichever of the xcb libraries is missing.
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
NOT_LOADED = ("cannot open shared object file", "DLL load failed", "dlopen(")


def why_no_window() -> str | None:
    """The sentence that says why no window can open here, or None. Where there is one, Qt would abort the process."""
    platform = os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0]
    if sys.platform != "linux" or platform not in ("", "xcb"):
        return None
    display = os.environ.get("DISPLAY")
    if not display and (platform == "xcb" or not os.environ.get("WAYLAND_DISPLAY")):
        return "there is no screen here to open a window on; `drill-designer --help` shows what works without one."
    packages = not_there(LIBRARIES | SCREEN_LIBRARIES) if display else []
    return to_install("the window", packages) if packages else None


def why_no_qt(error: ImportError, what: str) -> str | None:
    """The sentence for an import of Qt that failed for want of a shared library; None where it failed otherwise.

    `what` needs Qt, e.g. "a .png picture".
    """
    if not any(words in str(error) for words in NOT_LOADED):
        return None
    packages = not_there(LIBRARIES) if sys.platform == "linux" else []
    return to_install(what, packages) if packages else f"{what} needs Qt, which could not be loaded ({error})."


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


def to_install(what: str, packages: list[str]) -> str:
    """The sentence that tells a user of Debian or Ubuntu which packages `what` needs."""
    return (
        f"{what} needs system libraries that are not installed; on Debian or Ubuntu install them with: "
        f"sudo apt-get install {' '.join(packages)}"
    )
