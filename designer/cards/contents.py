"""What stands where on a card: the sections for each reader, beside and under the diagram and in the strip below."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from designer.cards.blocks import Balanced, Bar, Block, Columns, Group, Row, Rules
from designer.cards.layout import Contents
from designer.cards.papers import Type
from designer.cards.pieces import Pieces
from designer.court.standards import ground
from designer.drawing.picture import Picture
from designer.drill.drill import Drill
from designer.drill.setting import At, setting_at
from designer.wording.card import CardWords, Reader, Section
from designer.wording.sentence import Ref

_COLUMN_GAP: Final = 16.0
_PLAYED: Final = ("layout", "start", "steps", "rules", "points", "swap")
"""The sections that a drill is played by, in the order in which they are read."""


def contents(
    drill: Drill, at: At, words: CardWords, reader: Reader, player: str | None, pieces: Pieces, *, front: float
) -> Contents:
    """Return the blocks of the card in ``words``; ``player`` is the job whose end is at the foot of the diagram.

    ``front`` is the height in points that a small card's front has for its diagram and legend.
    """
    paper = pieces.paper
    you = _reader_letter(words, player) if reader == "player" else None
    court = ground(drill.court)
    spot = setting_at(drill, at).spot_of(you) if you else None
    turned = spot is not None and (spot.place.at[1] > 0)
    wide = 2 * (court.back_fence if paper.across else court.side_fence)
    if paper.layout == "front and back":
        tall = 2 * (court.side_fence if paper.across else court.back_fence)
        room = front - (3 * paper.legend.leading if paper.across else 0.0)
        narrowed = replace(paper, diagram=min(paper.inner, room * wide / tall))
        pieces = Pieces(narrowed, pieces.theme, pieces.typesetter)
        shown = _picture(drill, at, pieces, wide, you, turned=turned)
        return _front_and_back(words, at, reader, shown, pieces, room)
    shown = _picture(drill, at, pieces, wide, you, turned=turned)
    under: list[Block] = [pieces.legend(shown, paper.legend_columns, paper.diagram)]
    large = paper.strip or paper.layout == "one column"
    cues = words.section("cues")
    if cues is not None and (reader == "player" or large):
        under.append(pieces.section(cues, body=paper.cue))
    if words.left_handed is not None and reader == "player":
        under.append(pieces.sentence(words.left_handed, Type(paper.legend.size, 12), before=4))
    left_handed = words.section("left-handed")
    if left_handed is not None and reader != "player" and large:
        under.append(pieces.section(left_handed))
    diagram = pieces.diagram(shown, paper.diagram)
    if reader == "player":
        return Contents(
            diagram,
            tuple(under),
            _sections(words, ("you", *_PLAYED, "care"), pieces),
            after=_how_it_went(pieces),
            adds_side=False,
        )
    return Contents(
        diagram,
        tuple(under),
        _sections(words, _PLAYED, pieces),
        _strip(words, at, pieces, _rounds(drill, at, pieces, wide=True), wide=True) if paper.strip else (),
        _strip(words, at, pieces, _rounds(drill, at, pieces, wide=False), wide=False),
    )


LEGEND_WIDTH: Final = 80.0
"""Width in points of one column of the legend at a mark of 1 pt: the sample and the longest of its words."""


def _front_and_back(words: CardWords, at: At, reader: Reader, shown: Picture, pieces: Pieces, tall: float) -> Contents:
    """Return a small card: the diagram, at most ``tall`` points, with its legend in front, all the words behind."""
    paper = pieces.paper
    left, low, right, high = shown.extent
    diagram = pieces.diagram(shown, min(paper.diagram, tall * (right - left) / (high - low)))
    beside: tuple[Block, ...] = ()
    under: tuple[Block, ...] = ()
    free = paper.inner - paper.diagram - paper.gutter
    if paper.across:
        columns = max(1, int(paper.inner / LEGEND_WIDTH))
        under = (pieces.legend(shown, columns, paper.inner),)
    elif free >= LEGEND_WIDTH:
        beside = (pieces.legend(shown, 1, free),)
    names = ("you", *_PLAYED, "cues", "care") if reader == "player" else _PLAYED
    body = list(_sections(words, names, pieces))
    if reader == "player" and words.left_handed is not None:
        body.append(pieces.sentence(words.left_handed, paper.body, before=4))
    after = _how_it_went(pieces) if reader == "player" else _strip(words, at, pieces, (), wide=False)
    if not beside and not under:
        columns = max(1, int(paper.inner / LEGEND_WIDTH))
        body.append(pieces.legend(shown, columns, paper.inner))
    return Contents(
        diagram,
        pieces.head(words),
        tuple(body),
        after=after,
        adds_side=reader != "player",
        beside_diagram=beside,
        under_diagram=under,
    )


def _picture(drill: Drill, at: At, pieces: Pieces, width: float, you: str | None, *, turned: bool) -> Picture:
    """Return the picture for a diagram's column, at first taken to be ``width`` metres wide.

    Words at its edge may make it wider; its scale is then smaller, and its marks and letters are made for that scale.
    """
    from designer.drawing.picture import picture

    unit = pieces.paper.unit * width / pieces.paper.diagram
    across = pieces.paper.across
    shown = picture(drill, at, unit=unit, theme=pieces.theme, you=you, turned=turned, across=across)
    wide = shown.extent[2] - shown.extent[0]
    if wide > width:
        unit = pieces.paper.unit * wide / pieces.paper.diagram
        shown = picture(drill, at, unit=unit, theme=pieces.theme, you=you, turned=turned, across=across)
    return shown


def _sections(words: CardWords, names: tuple[str, ...], pieces: Pieces) -> tuple[Block, ...]:
    sections = (section for name in names if (section := words.section(name)) is not None)
    return tuple(_you(section, pieces) if section.key == "you" else pieces.section(section) for section in sections)


def _reader_letter(words: CardWords, player: str | None) -> str | None:
    """Return the job of a player's card: the one asked for, else the one its words speak to."""
    section = words.section("you")
    lead = section.sentences[0].lead if section and section.sentences else None
    return player or (lead.text if lead else None)


def _you(section: Section, pieces: Pieces) -> Group:
    """Return "You start as A." in larger letters beside the filled disc, and what comes after it."""
    paper = pieces.paper
    first, *rest = section.sentences
    lead = pieces.person_lead(first.lead.text if first.lead else "")
    blocks: list[Block] = [
        Row(
            first.text,
            paper.you,
            pieces.typesetter,
            lead=lead,
            hang=lead.width + 6,
            keep_with_next=bool(rest),
        ),
    ]
    blocks += [Row(sentence.text, paper.body, pieces.typesetter, hang=lead.width + 6) for sentence in rest]
    return Group(tuple(blocks), before=8.0 if paper.layout != "beside" else 0.0)


def _strip(words: CardWords, at: At, pieces: Pieces, rounds: tuple[Group, ...], *, wide: bool) -> tuple[Block, ...]:
    """Return the coach's lower strip, four columns ``wide``, or the same for a side of its own."""
    paper = pieces.paper
    blocks: list[Block] = []
    progressions = words.section("progressions")
    if progressions is not None:
        blocks += _ladder(progressions, pieces, at.progression, wide=wide)
    elsewhere = {
        *_PLAYED,
        "progressions",
        *(("cues", "left-handed") if paper.strip or paper.layout == "one column" else ()),
    }
    sections = [pieces.section(section) for section in _in_order(words) if section.key not in elsewhere]
    sections += rounds
    if wide:
        for start in range(0, len(sections), 4):
            row = [(section,) for section in sections[start : start + 4]]
            blocks.append(Columns((*row, *((),) * (4 - len(row))), _COLUMN_GAP, before=8.0))
    elif paper.columns > 1:
        blocks.append(Balanced(tuple(sections), paper.gutter, before=8.0))
    else:
        blocks += sections
    return (*blocks, *_how_it_went(pieces))


def _rounds(drill: Drill, at: At, pieces: Pieces, *, wide: bool) -> tuple[Group, ...]:
    """Return who is where in each round of a group of three or more, as small courts; nothing for two.

    A small card has no room for them; the words under "Swap" say the same.
    """
    from designer.drawing.rotation import rotation_strip

    paper = pieces.paper
    room = (paper.inner - 3 * _COLUMN_GAP) / 4 if wide else paper.half if paper.columns > 1 else paper.inner
    shown = rotation_strip(drill, at, width=room / paper.mark, theme=pieces.theme)
    if shown is None:
        return ()
    wide_as = (shown.extent[2] - shown.extent[0]) / shown.unit * paper.mark
    heading = pieces.heading("Round by round")
    return (Group((heading, pieces.diagram(shown, wide_as)), before=heading.before),)


_STRIP: Final = ("easier", "harder", "others", "cues", "watch", "left-handed", "care")


def _in_order(words: CardWords) -> list[Section]:
    """Return all sections, those of the strip in its order; one that this module has not heard of is not lost."""
    known = {name: number for number, name in enumerate(_STRIP)}
    return sorted(words.sections, key=lambda section: known.get(section.key, -1))


def _how_it_went(pieces: Pieces) -> tuple[Block, ...]:
    """Return lines to write on after the session."""
    return (pieces.heading("How it went", before=9.0), Rules(2, pieces.paper.note_lines, before=1.2))


def _ladder(section: Section, pieces: Pieces, this_one: str, *, wide: bool) -> list[Block]:
    """Return the progressions: a column each where the strip is wide, else a row each; the one in force says "This card."."""
    paper = pieces.paper
    number_type = Type(paper.body.size, paper.body.leading, bold=True)
    rungs: list[tuple[Block, Block, bool]] = []
    for sentence in section.sentences:
        name = sentence.parts[0].text if sentence.parts and isinstance(sentence.parts[0], Ref) else ""
        said = sentence.text.removeprefix(name).lstrip(". ")
        title = Row(
            name or " ",
            number_type,
            pieces.typesetter,
            lead=pieces.lead(sentence.lead, paper.body),
            hang=14.0 * paper.scale,
            keep_with_next=True,
        )
        rungs.append((title, Row(said or " ", paper.body, pieces.typesetter), sentence.about[:1] == (this_one,)))
    heading = pieces.heading(section.heading, before=8.0)
    if not wide and paper.columns == 1:
        return [heading, *(_marked(Group((title, said)), this=this, before=3.0) for title, said, this in rungs)]
    if wide:
        cells = [(_marked(title, this=this), said) for title, said, this in rungs]
        rows = [cells[start : start + 4] for start in range(0, len(cells), 4)]
        return [heading, *(Columns((*row, *((),) * (4 - len(row))), _COLUMN_GAP, before=1.5) for row in rows)]
    return [
        heading,
        *(
            _marked(Columns(((title,), (said,)), paper.gutter, shares=(0.36, 0.64)), this=this, before=3.0)
            for title, said, this in rungs
        ),
    ]


def _marked(block: Block, *, this: bool, before: float = 0.0) -> Block:
    """Return ``block`` with the bar that says "this card", where it is the progression in force."""
    return Bar(block, before=before) if this else Group((block,), before=before)
