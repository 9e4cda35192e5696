import io

from pypdf import PdfReader
from reportlab.pdfgen.canvas import Canvas

from designer.drawing import pdf
from designer.drawing.themes import theme


def page_of(picture, look="paper"):
    file = io.BytesIO()
    canvas = Canvas(file, pagesize=(200, 400), initialFontName=pdf.register_fonts()[0], invariant=1)
    left, _, right, _ = picture.extent
    pdf.draw(canvas, picture, theme(look), 20, 20, 160 / (right - left))
    canvas.save()
    return file.getvalue()


def test_words_can_be_read_out_of_the_page(drawing):
    text = PdfReader(io.BytesIO(page_of(drawing.of("wide-start")))).pages[0].extract_text()
    for word in ("YOU", "NET", "deuce", "waits", "open", "reply"):
        assert word in text


def test_only_the_bundled_font_is_used_and_it_is_inside(drawing):
    page = PdfReader(io.BytesIO(page_of(drawing.of("wide-start")))).pages[0]
    for reference in page["/Resources"]["/Font"].values():
        font = reference.get_object()
        assert "NotoSans" in font["/BaseFont"]
        assert "/FontFile2" in font["/FontDescriptor"]


def test_registering_twice_keeps_bold_bold():
    from reportlab.lib.fonts import tt2ps
    from reportlab.pdfbase import pdfmetrics

    regular, bold = pdf.register_fonts()
    assert pdf.register_fonts() == (regular, bold)
    assert tt2ps(regular, 1, 0) == bold
    assert pdfmetrics.getFont(bold).face.name != pdfmetrics.getFont(regular).face.name


def test_the_same_picture_gives_the_same_bytes(drawing):
    assert page_of(drawing.of("wide-start")) == page_of(drawing.of("wide-start"))


def test_drawing_leaves_the_canvas_as_it_was(drawing):
    canvas = Canvas(io.BytesIO(), initialFontName=pdf.register_fonts()[0])
    before = (canvas._fontname, canvas._fontsize, canvas._lineWidth, canvas._fillColorObj)
    pdf.draw(canvas, drawing.of("wide-start"), theme("paper"), 0, 0, 10)
    assert (canvas._fontname, canvas._fontsize, canvas._lineWidth, canvas._fillColorObj) == before
