"""Notices that another program has changed the drill's file. Our own saves are known by their digest."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Final

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

DUST: Final = 200
"""Milliseconds to wait until a save of another program is likely to be whole."""


class Watch(QObject):
    """Watches one file. The folder is watched too: an atomic save replaces the file, and the watcher forgets it."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._path: Path | None = None
        self._digest = b""
        self._watcher = QFileSystemWatcher(self)
        self._dust = QTimer(self)
        self._dust.setSingleShot(True)
        self._dust.setInterval(DUST)
        self._dust.timeout.connect(self.look)
        self._watcher.fileChanged.connect(lambda _: self._dust.start())
        self._watcher.directoryChanged.connect(lambda _: self._dust.start())

    def follow(self, path: Path, digest: bytes) -> None:
        """Watch ``path``, which now holds what ``digest`` is of."""
        self.stop()
        self._path, self._digest = path, digest
        self._watcher.addPath(str(path.parent))
        self._watcher.addPath(str(path))

    def stop(self) -> None:
        """Watch nothing."""
        self._dust.stop()
        paths = [*self._watcher.files(), *self._watcher.directories()]
        if paths:
            self._watcher.removePaths(paths)
        self._path = None

    def look(self) -> None:
        """Compare the file with what it held; say so once where it differs. A file that is gone says nothing."""
        if self._path is None:
            return
        try:
            now = hashlib.sha256(self._path.read_bytes()).digest()
        except OSError:
            return
        if str(self._path) not in self._watcher.files():
            self._watcher.addPath(str(self._path))
        if now != self._digest:
            self._digest = now
            self.changed.emit()
