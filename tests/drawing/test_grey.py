"""A page from a photocopier: every class of mark is still told apart, seen as an eye would, a little blurred."""

import io
import itertools

import numpy as np
import pypdfium2
from reportlab.pdfgen.canvas import Canvas
from scipy.ndimage import gaussian_filter

from designer.drawing.legend import WORDS, LegendEntry
from designer.drawing.pdf import draw_primitives
from designer.drawing.samples import legend_shapes
from designer.drawing.themes import theme

DOTS = 200 / 72
"""Pixels a point: a plain photocopier's 200 dots an inch. Common practice, no source."""
WIDE, PITCH = 30.0, 18.0
"""Points of one sample's cell: as on an A5 card, a mark of 1 pt."""
ALIKE = 0.95
"""1 is the same picture. Two marks this much alike would be taken for each other: a designer's floor."""


def samples():
    """Return {class: darkness} of every class in the legend, from a page rendered in grey."""
    look = theme("photocopy")
    entries = [LegendEntry(kind, "") for kind in WORDS]
    shapes, tall = legend_shapes(entries, look, 1.0, columns=1, column_width=WIDE, pitch=PITCH)
    made = io.BytesIO()
    canvas = Canvas(made, pagesize=(WIDE, tall), initialFontName="Helvetica")
    draw_primitives(canvas, shapes, look, (2.0, tall), 1.0)
    canvas.save()
    page = pypdfium2.PdfDocument(made.getvalue())[0].render(scale=DOTS, grayscale=True).to_numpy().squeeze()
    dark = gaussian_filter(255.0 - page, 0.35 * DOTS)
    rows = np.array_split(dark, len(entries), axis=0)
    least = min(len(row) for row in rows)
    return {entry.kind: row[:least] for entry, row in zip(entries, rows, strict=True)}


def likeness(one, other):
    """Return the best match of two pictures under small shifts, 1 where they are the same."""
    scale = np.linalg.norm(one) * np.linalg.norm(other)
    shifts = itertools.product(range(-4, 5, 2), range(-6, 7, 3))
    return max((one * np.roll(other, shift, axis=(0, 1))).sum() for shift in shifts) / scale


def test_no_two_classes_look_alike_on_a_grey_page():
    seen = samples()
    assert all(dark.max() > 80 for dark in seen.values()), "each is there to be seen"
    pairs = {(a, b): likeness(seen[a], seen[b]) for a, b in itertools.combinations(seen, 2)}
    assert {pair: round(value, 3) for pair, value in pairs.items() if value > ALIKE} == {}
    assert likeness(seen["cone"], seen["cone"]) > 0.999
