"""Where the files that come with the program are: `resources/` and `samples/`.

In a checkout they stand beside the package, in an installed program inside it. This module imports nothing of the project.
"""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


class MissingFile(FileNotFoundError):
    """A file that should have come with the program is not there."""


def resource(*parts: str) -> Path:
    """Path of a file or folder below `resources/`, e.g. `resource("fonts", "widths.json")`.

    Raises MissingFile, with a sentence for the user, where it is not there.
    """
    return _find("resources", parts)


def sample(*parts: str) -> Path:
    """Path of a file or folder below `samples/`; raises MissingFile as `resource` does."""
    return _find("samples", parts)


def _find(folder: str, parts: tuple[str, ...]) -> Path:
    path = _root(folder).joinpath(*parts)
    if not path.exists():
        name = "/".join((folder, *parts))
        raise MissingFile(f"{name} should have come with the program but is not at {path}; install the program again.")
    return path


def _root(folder: str) -> Path:
    # The checkout comes first only where it is one: beside an installed package lie the modules of others.
    checkout = PACKAGE.parent
    if (checkout / "pyproject.toml").is_file() and (checkout / folder).is_dir():
        return checkout / folder
    return PACKAGE / folder
