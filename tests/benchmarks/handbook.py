"""A handbook of 500 drills against reportlab alone: ``python -m tests.benchmarks.handbook`` prints the ratio.

Ours does the whole job: it reads each drill file, works out its words and pictures, sets cover, contents, drills,
glossary, indexes, balance and planner pages with links and outline, attaches every drill, and gives the bytes of the PDF.

The peer is raw reportlab platypus, ``multiBuild`` with a table of contents and an outline. It is given the words of the
same sheets as ready strings, a paragraph each, and the same diagrams, legends and small courts as ready calls of a canvas
and its paths with ready numbers; it works nothing out, and makes no index, no cross reference and no attachment.
``--operators`` gives it the pictures as the very operators of the page that ours has written, so that they cost it nothing.

Processor seconds are compared, not the clock's, so that other work on the machine counts less. ``--drills`` takes another
number of drills, ``--runs`` repeats both in turn and takes the medians.
"""

from __future__ import annotations

import argparse
import hashlib
import io
import json
import subprocess
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path as File
from statistics import median
from typing import Any
from unittest.mock import patch
from xml.sax.saxutils import escape

from designer.bundle import sample
from designer.cards.book.leaf import Leaf, leaf
from designer.cards.handbook import make_handbook
from designer.drawing.pdf import BOLD, REGULAR, register_fonts
from designer.drawing.primitives import Dots, Path, Strokes, Words
from designer.drawing.themes import Theme
from designer.drill.drill import Drill
from designer.drill.handbook import BookSection, Entry, Handbook
from designer.storage.reading import read_drill

PER_SECTION = 25
LIMIT = 2.0
MEMORY = 200.0


def sources(count: int) -> list[bytes]:
    """Return the bytes of ``count`` drill files, the twelve samples over and over, each with a name of its own."""
    book = Handbook.model_validate_json(sample("alder-quay.handbook.json").read_bytes())
    raws = [json.loads(sample(entry.file).read_text("utf-8")) for entry in book.entries()]
    found = []
    for number in range(count):
        raw = raws[number % len(raws)]
        own = {"id": f"d-{number:05d}", "code": f"code-{number}", "title": f"{raw['title']} {number + 1}"}
        found.append(json.dumps(raw | own).encode())
    return found


def handbook(count: int) -> Handbook:
    """Return a handbook of ``count`` entries."""
    numbers = [f"{place // PER_SECTION + 1}.{place % PER_SECTION + 1}" for place in range(count)]
    entries = [Entry(number=number, file=f"{number}.drill.json") for number in numbers]
    parts = [tuple(entries[start : start + PER_SECTION]) for start in range(0, count, PER_SECTION)]
    sections = tuple(BookSection(title=f"Section {place + 1}", drills=part) for place, part in enumerate(parts))
    return Handbook(title="Five hundred drills", sections=sections)


def ours(book: Handbook, files: list[bytes]) -> bytes:
    """Return the handbook of the drill files."""
    leaves = [_leaf(book, entry, data) for entry, data in zip(book.entries(), files, strict=True)]
    made = make_handbook(book, leaves)
    assert not made.left_out, made.left_out
    return made.pdf


def _leaf(book: Handbook, entry: Entry, data: bytes) -> Leaf:
    def read() -> Drill:
        return read_drill(data, entry.file).drill

    return leaf(book, entry, read(), data, hashlib.sha256(data).hexdigest(), read)


@dataclass
class Ready:
    """What the peer is given of one drill: its title, its paragraphs (words, whether a heading) and its pictures."""

    title: str = ""
    words: list[tuple[str, bool]] = field(default_factory=list)
    pictures: list[tuple[list[Any], float]] = field(default_factory=list)


class Recorder:
    """Stands for a canvas or a path: remembers every call with its numbers, and passes it on."""

    def __init__(self, real: Any, calls: list[Any]) -> None:
        self.real, self.calls = real, calls

    def __getattr__(self, name: str) -> Any:
        found = getattr(self.real, name)
        if not callable(found):
            return found

        def call(*args: Any, **values: Any) -> Any:
            if name == "beginPath":
                return Recorder(found(), [])
            if args and isinstance(args[0], Recorder):
                self.calls.append((name, tuple(args[0].calls), args[1:], values))
                return found(args[0].real, *args[1:], **values)
            self.calls.append((name, None, args, values))
            return found(*args, **values)

        return call


class Plain:
    """Draws primitives with reportlab's own calls, as anybody would."""

    def __init__(self, canvas: Any, colours: Theme, origin: tuple[float, float], scale: float) -> None:
        self.canvas, self.colours, self.origin, self.scale = canvas, colours, origin, scale

    def place(self, point: tuple[float, float]) -> tuple[float, float]:
        return (self.origin[0] + point[0] * self.scale, self.origin[1] + point[1] * self.scale)

    def draw(self, shape: Any) -> None:
        canvas = self.canvas
        if isinstance(shape, Words):
            colour = self.colours.colour(shape.colour)
            if colour is not None:
                canvas.setFillColorRGB(*colour.rgb)
                canvas.setFont(BOLD if shape.bold else REGULAR, shape.size * self.scale)
                write = {"left": "drawString", "middle": "drawCentredString", "right": "drawRightString"}[shape.align]
                getattr(canvas, write)(*self.place(shape.at), shape.text)
            return
        style = shape.style
        fill = self.colours.colour(style.fill) if style.fill else None
        stroke = self.colours.colour(style.stroke) if style.stroke and style.width > 0 else None
        if fill:
            canvas.setFillColorRGB(*fill.rgb)
            canvas.setFillAlpha(fill.opacity)
        if stroke:
            canvas.setStrokeColorRGB(*stroke.rgb)
            canvas.setLineWidth(style.width * self.scale)
            canvas.setLineCap(int(style.cap == "round"))
            canvas.setDash([length * self.scale for length in style.dash])
        if not fill and not stroke:
            return
        if isinstance(shape, Strokes):
            canvas.lines([(*self.place(start), *self.place(end)) for start, end in shape.lines])
            return
        path = canvas.beginPath()
        self.outline(path, shape)
        canvas.drawPath(path, stroke=int(stroke is not None), fill=int(fill is not None))

    def outline(self, path: Any, shape: Any) -> None:
        if isinstance(shape, Dots):
            for centre in shape.centres:
                path.circle(*self.place(centre), shape.radius * self.scale)
        elif isinstance(shape, Path):
            points = [self.place(point) for point in shape.points]
            path.moveTo(*points[0])
            if shape.curved:
                for one, two, end in zip(points[1::3], points[2::3], points[3::3], strict=True):
                    path.curveTo(*one, *two, *end)
            else:
                for point in points[1:]:
                    path.lineTo(*point)
            if shape.closed:
                path.close()
        else:
            (x, y), across, along = self.place(shape.centre), shape.radii[0] * self.scale, shape.radii[1] * self.scale
            path.ellipse(x - across, y - along, 2 * across, 2 * along)


def ready(*, operators: bool) -> list[Ready]:
    """Return the words and pictures of the twelve sample drills' sheets, by setting each once."""
    from reportlab.pdfgen.canvas import Canvas

    from designer.cards import blocks
    from designer.cards.book.sheets import Sheets
    from designer.drawing import pdf

    found: list[Ready] = []
    real_draw, real_primitives, real_cards = blocks.Drawn.draw, pdf.draw_primitives, Sheets.cards

    def cards(self: Any, leaf: Leaf) -> Any:
        found.append(Ready(leaf.title))
        for made in real_cards(self, leaf):
            words = made.maker.words
            found[-1].words += [(words.objective, False), (" ".join(fact.text for fact in words.facts), False)]
            for section in words.sections:
                found[-1].words.append((section.heading, True))
                found[-1].words += [(sentence.text, False) for sentence in section.sentences]
            yield made

    def draw(self: Any, page: Any, x: float, top: float, width: float) -> None:
        if not found:
            real_draw(self, page, x, top, width)
            return
        calls: list[Any] = []

        def primitives(canvas: Any, shapes: Any, theme: Any, origin: Any, scale: float) -> None:
            place, shapes = (origin[0] - x, origin[1] - top + self.tall), tuple(shapes)
            recorder = Recorder(Canvas(io.BytesIO(), initialFontName=REGULAR), calls)
            if operators:
                real_primitives(recorder, shapes, theme, place, scale)
            else:
                plain = Plain(recorder, theme, place, scale)
                for shape in shapes:
                    plain.draw(shape)
            real_primitives(canvas, shapes, theme, origin, scale)

        with patch.object(pdf, "draw_primitives", primitives):
            real_draw(self, page, x, top, width)
        if calls:
            found[-1].pictures.append((calls, self.tall))

    with patch.object(blocks.Drawn, "draw", draw), patch.object(Sheets, "cards", cards):
        book = handbook(12)
        ours(book, sources(12))
    return found


def replay(calls: list[Any], canvas: Any) -> None:
    """Make the calls that were written down on ``canvas``."""
    for name, path_calls, args, values in calls:
        if path_calls is None:
            getattr(canvas, name)(*args, **values)
            continue
        path = canvas.beginPath()
        for method, _, numbers, named in path_calls:
            getattr(path, method)(*numbers, **named)
        getattr(canvas, name)(path, *args, **values)


def theirs(drills: list[Ready], count: int) -> bytes:
    """Return the peer's PDF of ``count`` drills."""
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.pdfgen.canvas import Canvas
    from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageBreak, PageTemplate, Paragraph  # noqa: TID251
    from reportlab.platypus.tableofcontents import TableOfContents

    class Picture(Flowable):
        def __init__(self, calls: list[Any], tall: float) -> None:
            super().__init__()
            self.calls, self.width, self.height = calls, 193.0, tall

        def draw(self) -> None:
            replay(self.calls, self.canv)

    class Document(BaseDocTemplate):
        def afterFlowable(self, flowable: Any) -> None:
            if getattr(flowable, "key", None):
                self.canv.bookmarkPage(flowable.key)
                self.canv.addOutlineEntry(flowable.getPlainText(), flowable.key, 0)
                self.notify("TOCEntry", (0, flowable.getPlainText(), self.page, flowable.key))

    styles = {
        size: ParagraphStyle(f"s{size}", fontName=face, fontSize=size, leading=1.3 * size)
        for size, face in ((9.6, REGULAR), (9.61, BOLD), (20.0, BOLD))
    }
    story: list[Any] = [TableOfContents(), PageBreak()]
    for number in range(count):
        drill = drills[number % len(drills)]
        title = Paragraph(escape(f"{drill.title} {number}"), styles[20.0])
        title.key = f"drill-{number}"
        story.append(title)
        story += [Picture(calls, tall) for calls, tall in drill.pictures]
        story += [Paragraph(escape(words), styles[9.61 if bold else 9.6]) for words, bold in drill.words]
        story.append(PageBreak())
    result = io.BytesIO()
    document = Document(result, pagesize=(595, 842))
    document.addPageTemplates(PageTemplate(frames=[Frame(62, 34, 502, 780)]))

    def canvas(*args: Any, **values: Any) -> Any:
        return Canvas(*args, **(values | {"initialFontName": REGULAR}))

    document.multiBuild(story, canvasmaker=canvas)
    return result.getvalue()


def timed(work: Any) -> tuple[float, bytes]:
    """Return the processor seconds that ``work`` takes, and what it returns."""
    begin = time.process_time()
    result = work()
    return time.process_time() - begin, result


def peak(count: int) -> float:
    """Return the most memory in MB that a process of its own takes to make our book of ``count`` drills."""
    command = [sys.executable, "-m", "tests.benchmarks.handbook", "--alone", "--drills", str(count)]
    return float(subprocess.run(command, check=True, capture_output=True, text=True).stdout.split()[-1])


def main() -> None:
    """Print both times, their ratio and our peak memory."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--drills", type=int, default=500)
    parser.add_argument("--runs", type=int, default=1)
    parser.add_argument("--alone", action="store_true")
    parser.add_argument("--operators", action="store_true")
    asked = parser.parse_args()
    register_fonts()
    book, files = handbook(asked.drills), sources(asked.drills)
    if asked.alone:
        ours(book, files)
        # The kernel's own high-water mark: getrusage would count what the process that started this one held.
        status = File("/proc/self/status").read_text("utf-8")
        print(int(status.partition("VmHWM:")[2].split()[0]) / 1024)
        return
    drills = ready(operators=asked.operators)
    ours(handbook(12), sources(12))
    theirs(drills, 12)
    rounds = []
    for _ in range(asked.runs):
        mine, pdf = timed(lambda: ours(book, files))
        other, raw = timed(lambda: theirs(drills, asked.drills))
        rounds.append((mine, other))
        print(
            f"{asked.drills} drills: {mine:.1f} s ({len(pdf) / 1e6:.1f} MB), platypus {other:.1f} s ({len(raw) / 1e6:.1f} MB)"
        )
    mine, other = (median(column) for column in zip(*rounds, strict=True))
    print(f"ratio {mine / other:.2f} (at most {LIMIT}), peak memory {peak(asked.drills):.0f} MB (under {MEMORY:.0f})")


if __name__ == "__main__":
    main()
