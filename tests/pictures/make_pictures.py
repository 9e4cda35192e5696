"""The README's pictures, made by the program itself: ``python tests/pictures/make_pictures.py`` (offscreen will do)."""

from __future__ import annotations

import os
import tempfile
import time
from pathlib import Path

from designer.bundle import resource, sample

FOLDER = resource("fonts").parent / "pictures"
DRILL = "wide-start"


def card_picture(to: Path) -> None:
    """Draw both sides of the player's A5 card side by side."""
    import pypdfium2
    from PIL import Image

    from designer.cards.card import make_card
    from designer.drill.brand import Brand
    from designer.drill.drill import Drill
    from designer.drill.setting import main_setting

    drill = Drill.model_validate_json(sample(f"{DRILL}.drill.json").read_bytes())
    card = make_card(
        drill,
        main_setting(drill),
        paper="a4",
        reader="coach",
        brand=Brand.model_validate_json(sample("brand.json").read_bytes()),
        logo=sample("alder-quay.svg").read_text(encoding="utf-8"),
    )
    document = pypdfium2.PdfDocument(card.pdf)
    sides = [document[number].render(scale=1.6).to_pil() for number in range(len(document))]
    gap = 16
    sheet = Image.new(
        "RGB", (sum(s.width for s in sides) + gap * (len(sides) + 1), sides[0].height + 2 * gap), "#C9CFCB"
    )
    x = gap
    for side in sides:
        sheet.paste(side, (x, gap))
        x += side.width + gap
    sheet.quantize(256, Image.Quantize.FASTOCTREE).save(to, optimize=True)


def window_picture(to: Path) -> None:
    """Open the drill in the window, pick its second ball, and take the window's picture."""
    from PySide6.QtCore import QCoreApplication, QEvent

    from designer.desktop.application import Windows, prepare
    from designer.desktop.prompts import Prompts
    from designer.desktop.style import style

    application = prepare()
    style().choose("light")
    windows = Windows(Prompts())
    windows.open([sample(f"{DRILL}.drill.json")])
    window = windows.all()[-1]
    window.resize(1366, 768)
    window.show()
    for _ in range(20):
        application.processEvents()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    window.bottom.review()
    window.view.select({"reply"})
    window.column.refresh()
    window.column.open("reply")
    until = time.monotonic() + 2  # the numbers come from a thread
    while time.monotonic() < until:
        application.processEvents()
    window.grab().save(str(to))
    window.document.stack.setClean()
    window.close()


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as home:
        for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
            os.environ[name] = home
        FOLDER.mkdir(exist_ok=True)
        card_picture(FOLDER / "card.png")
        window_picture(FOLDER / "window.png")
