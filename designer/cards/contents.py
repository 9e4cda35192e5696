"""What stands where on a card: the sections for each reader, beside and under the diagram and in the strip below."""

from __future__ import annotations

from typing import Final

from designer.cards.blocks import Block, Columns, Row, Rules
from designer.cards.layout import Contents
from designer.cards.papers import Type
from designer.cards.pieces import Pieces
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import CardWords, Reader, Section

_PLAYED: Final = ("layout", "start", "steps", "rules", "points", "swap")
"""The sections that a drill is played by, in the order in which they are read."""

DOUBLES_WITH_RUN_OFF: Final = 17.0688
"""Width in metres of a doubles court with the club's side-run, 56 ft: what a diagram's column shows."""


def contents(drill: Drill, at: At, words: CardWords, reader: Reader, player: str | None, pieces: Pieces) -> Contents:
    """Return the blocks of the card in ``words``; ``player`` is the job whose end is at the foot of the diagram."""
    from designer.drawing.picture import picture

    paper = pieces.paper
    you = player if reader == "player" else None
    scale = paper.diagram / DOUBLES_WITH_RUN_OFF
    shown = picture(drill, at, unit=paper.unit / scale, theme=pieces.theme, you=you)
    under: list[Block] = [pieces.legend(shown, paper.legend_columns, paper.diagram)]
    cues = words.section("cues")
    large = paper.name != "a5"
    if cues is not None and (reader == "player" or large):
        under += pieces.section(cues, body=paper.cue)
    if words.left_handed is not None and reader == "player":
        under.append(pieces.sentence(words.left_handed, Type(paper.legend.size, 12), before=4))
    diagram = pieces.diagram(shown, paper.diagram)
    if reader == "player":
        return Contents(diagram, tuple(under), _sections(words, ("you", *_PLAYED, "care"), pieces))
    return Contents(diagram, tuple(under), _sections(words, _PLAYED, pieces), _strip(words, pieces, large=large))


def _sections(words: CardWords, names: tuple[str, ...], pieces: Pieces) -> tuple[Block, ...]:
    blocks: list[Block] = []
    for name in names:
        section = words.section(name)
        if section is not None:
            blocks += _you(section, pieces) if name == "you" else pieces.section(section)
    return tuple(blocks)


def _you(section: Section, pieces: Pieces) -> list[Block]:
    """Return "You start as A." in larger letters beside the filled disc, and what comes after it."""
    paper = pieces.paper
    first, *rest = section.sentences
    lead = pieces.person_lead(first.lead.text if first.lead else "")
    blocks: list[Block] = [
        Row(
            first.text,
            Type(11.4, 14.5, bold=True),
            pieces.typesetter,
            lead=lead,
            hang=lead.width + 6,
            keep_with_next=bool(rest),
        ),
    ]
    blocks += [
        Row(sentence.text, Type(9.5, paper.body.leading), pieces.typesetter, hang=lead.width + 6) for sentence in rest
    ]
    return blocks


def _strip(words: CardWords, pieces: Pieces, *, large: bool) -> tuple[Block, ...]:
    """Return the coach's lower strip (A4) or second side (A5)."""
    paper = pieces.paper
    blocks: list[Block] = []
    progressions = words.section("progressions")
    if progressions is not None:
        blocks += _ladder(progressions, pieces, large=large)
    shown = [words.section(name) for name in ("easier", "harder", "watch", "left-handed", "care")]
    if not large:
        shown.insert(2, words.section("cues"))
    columns = [tuple(pieces.section(section)) for section in shown if section is not None]
    across = 4 if large else 2
    for start in range(0, len(columns), across):
        row = columns[start : start + across]
        blocks.append(Columns((*row, *((),) * (across - len(row))), paper.gutter if not large else 16.0, before=9.0))
    blocks.append(pieces.heading("How it went", before=9.0))
    blocks.append(Rules(2, paper.note_lines, before=1.2))
    return tuple(blocks)


def _ladder(section: Section, pieces: Pieces, *, large: bool) -> list[Block]:
    """Return the progressions: a row each on A5, a column each on A4; the one in force says "This card."."""
    paper = pieces.paper
    number_type = Type(paper.body.size, paper.body.leading, bold=True)
    rungs: list[tuple[Block, ...]] = []
    for sentence in section.sentences:
        name, _, said = sentence.text.partition(": ")
        title = Row(
            name,
            number_type,
            pieces.typesetter,
            lead=pieces.lead(sentence.lead, paper.body),
            hang=14.0,
            keep_with_next=True,
        )
        rungs.append((title, Row(said or " ", paper.body, pieces.typesetter)))
    if large:
        columns: list[Block] = [pieces.heading(section.heading, before=9.0)]
        for start in range(0, len(rungs), 4):
            row = rungs[start : start + 4]
            columns.append(Columns((*row, *((),) * (4 - len(row))), 16.0, before=1.5))
        return columns
    rows: list[Block] = [pieces.heading(section.heading)]
    rows += [Columns(((title,), (said,)), paper.gutter, before=3.0, shares=(0.36, 0.64)) for title, said in rungs]
    return rows
