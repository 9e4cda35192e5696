from __future__ import annotations

from designer.cards.blocks import Columns, Row, Rules, stacked, taken
from designer.cards.papers import A5, Type
from designer.cards.text import Typesetter

BODY = A5.body
LONG = " ".join(f"word{number}" for number in range(300))


def row(text: str, *, keep: bool = False) -> Row:
    return Row(text, BODY, Typesetter(), keep_with_next=keep)


def words_of(blocks: tuple, width: float) -> list[str]:
    return [word for block in blocks for line in block.lines(width) for word in line.split()]


def test_a_long_paragraph_flows_on_and_loses_no_word() -> None:
    rest: tuple = (row(LONG),)
    seen: list[str] = []
    while rest:
        fitting, rest = taken(rest, 180, 100)
        assert fitting, "every column takes something"
        assert stacked(fitting, 180) <= 100.01
        seen += words_of(fitting, 180)
    assert seen == LONG.split()


def test_no_single_line_is_left_alone_at_the_foot_or_the_head_of_a_column() -> None:
    paragraph = row(" ".join(LONG.split()[:40]))
    lines = len(paragraph.lines(180))
    for room in range(int(BODY.leading), int(lines * BODY.leading)):
        parts = paragraph.split(180, room)
        if parts is not None:
            head, tail = (len(part.lines(180)) for part in parts)
            assert head >= 2
            assert tail >= 2 or lines <= 3


def test_a_heading_goes_with_what_it_heads() -> None:
    heading = row("Rules", keep=True)
    fitting, rest = taken((row("one"), heading, row(LONG)), 180, 2.5 * BODY.leading)
    assert len(fitting) == 1
    assert rest[0] is heading


def test_columns_divide_each_at_its_own_place() -> None:
    block = Columns(((row(LONG),), (row("short"),)), 10)
    head, tail = block.split(370, 100)
    assert [len(column) for column in head.columns] == [1, 1]
    assert [len(column) for column in tail.columns] == [1, 0]


def test_a_question_leaves_room_for_a_pencil() -> None:
    plain = row("In doubt?")
    question = Row("In doubt?", BODY, Typesetter(), rule=True)
    assert question.height(180) == 16
    assert plain.height(180) == BODY.leading


def test_ruled_lines_divide_between_lines() -> None:
    first, second = Rules(5, 20).split(100, 65)
    assert (first.count, second.count) == (3, 2)


def test_type_is_never_below_the_floor() -> None:
    assert BODY.size >= 9.5
    assert A5.legend.size >= 8
    assert A5.footer.size >= 8
    assert isinstance(BODY, Type)
