"""What stands where on a card: the sections for each reader, beside and under the diagram and in the strip below."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from designer.cards.blocks import Balanced, Bar, Block, Columns, Group, Row, Rules, stacked
from designer.cards.layout import Contents
from designer.cards.papers import Type
from designer.cards.pictures import Pictures
from designer.cards.pieces import Pieces
from designer.cards.scores import score_blocks
from designer.cards.small import Aside, Behind, front_and_back
from designer.cards.square_code import SquareCode
from designer.cards.subject import Subject
from designer.drill.drill import Drill
from designer.drill.items import Basket
from designer.drill.setting import At, setting_at
from designer.play.rotation import full_turn
from designer.wording.card import CardWords, Section
from designer.wording.halves import halves
from designer.wording.kit import kit_of
from designer.wording.layout import layout_of
from designer.wording.sentence import Ref
from designer.wording.sentence import sentence as sentence_of
from designer.wording.turns import ROUNDS_KEY

_COLUMN_GAP: Final = 16.0
_PLAYED: Final = ("layout", "start", "steps", "rules", "points", "swap")
"""The sections that a coach plays a drill by, in the order in which they are read."""
_OF_PLAYER: Final = ("start", "steps", "bounds", "points", "swap", "rules")
"""Those of a player: what is asked on court stands before the fine print."""
_AHEAD: Final = ("bounds", "points", "swap", "rules")
"""Those that may stand under the diagram, before what they follow, so that they are on the first side."""
PLAYED: Final = ("First ball", "What happens", "Not allowed", "Points", "Swap")
"""Their headings, but for the fine print under "Rules", which goes overleaf before the legend and the objective do."""


def contents(subject: Subject, pieces: Pieces, *, front: float, back: float) -> Contents:
    """Return the blocks of a card.

    ``front`` is the height in points that a small card's front has for its diagram and legend, ``back`` what its back has.
    """
    paper, words = pieces.paper, subject.words
    if paper.layout == "front and back":
        return _small(subject, pieces, front, back)
    pictures = Pictures(subject, pieces)
    shown = pictures.first()
    under: list[Block] = [pieces.legend(shown, paper.legend_columns, paper.diagram)]
    large = paper.strip or paper.layout == "one column"
    is_player = subject.reader == "player"
    cues = words.section("cues")
    if cues is not None and (is_player or large):
        under.append(pieces.section(cues, body=paper.cue))
    if words.left_handed is not None and is_player:
        under.append(
            pieces.sentence(words.left_handed, Type(paper.legend.size, max(12.0, 1.3 * paper.legend.size)), before=4)
        )
    left_handed = words.section("left-handed")
    if left_handed is not None and not is_player and large:
        under.append(pieces.section(left_handed))
    if is_player:
        names: tuple[str, ...] = ("you", *_OF_PLAYER, "care")
        strip, after, spare = _player_strip(subject, pieces), _player_after(subject, pieces), _how_it_went(pieces)
    else:
        names, spare = _PLAYED, _how_it_went(pieces)
        strip = _strip(subject, pieces, wide=True) if paper.strip else ()
        after = _strip(subject, pieces, wide=False)
    return Contents(
        pieces.diagram(shown, paper.diagram, pictures.title),
        tuple(under),
        _sections(words, names, pieces),
        strip,
        after,
        adds_side=not is_player or bool(after),
        frames=pictures.more(paper.diagram),
        spare=spare,
        picture=shown,
    )


def resized(found: Contents, subject: Subject, pieces: Pieces, *, draft: bool) -> Contents:
    """Return ``found`` with the diagram for the paper of ``pieces``, its words as they are.

    A ``draft`` shows the picture there is at another size: what room it takes is right, its letters are not.
    """
    paper = pieces.paper
    pictures = Pictures(subject, pieces)
    shown = found.picture if draft and found.picture is not None else pictures.first()
    legend = pieces.legend(shown, paper.legend_columns, paper.diagram)
    return replace(
        found,
        diagram=pieces.diagram(shown, paper.diagram, pictures.title),
        below_diagram=(legend, *found.below_diagram[1:]) if found.below_diagram else (),
        frames=found.frames if draft else pictures.more(paper.diagram),
        picture=shown,
    )


def legend_later(found: Contents, pieces: Pieces) -> Contents:
    """Return ``found`` with nothing under the diagram: cues and what the signs mean come after how it is played."""
    assert found.picture is not None
    signs = pieces.heading("Signs"), pieces.legend(found.picture, 2, pieces.paper.half)
    group = Group((signs[0], replace(signs[1], before=2.0)), before=8.0, whole=True)
    return replace(found, below_diagram=(), beside=(*found.words_first.beside, group))


def objective_later(found: Contents, words: CardWords, pieces: Pieces) -> Contents:
    """Return ``found`` with the objective behind how it is played."""
    aim = Group(pieces.objective(words), before=8.0, whole=True)
    return replace(found, beside=(*found.beside, aim)) if aim.blocks else found


def _small(subject: Subject, pieces: Pieces, front: float, back: float) -> Contents:
    """Return a small card: who you are, when you swap and the cues beside the diagram, what else is said on the back."""
    words, is_player = subject.words, subject.reader == "player"
    you, cues, swap = (words.section(name) for name in ("you", "cues", "swap"))
    aside = []
    if is_player and you is not None:
        aside.append(Aside("over", (_you(you, pieces),)))
    if is_player and swap is not None:
        aside.append(Aside("under", (pieces.section(swap, narrow=True),), (pieces.section(swap),), ahead=True))
    if cues is not None:
        aside.append(Aside("under", (pieces.section(cues, narrow=True),), (pieces.section(cues),)))
    aim = pieces.objective(words)
    aside.append(Aside("top", aim, (Group(aim, before=5.0),) if aim else ()))
    if is_player and words.left_handed is not None:
        aside.append(Aside("under", (pieces.sentence(words.left_handed, pieces.paper.body, before=4),)))
    played = _OF_PLAYER if is_player else _PLAYED
    beside, fine = ("swap", "rules") if is_player else ("", "")
    after = _player_after(subject, pieces) if is_player else _strip(subject, pieces, wide=False)
    care = _sections(words, ("care",), pieces) if is_player else ()
    asked = _sections(words, tuple(name for name in played if name not in (beside, fine)), pieces)
    behind = Behind(asked, _sections(words, (fine,), pieces), care, after, _how_it_went(pieces))
    return front_and_back(subject, pieces, (front, back), aside, behind)


def _sections(words: CardWords, names: tuple[str, ...], pieces: Pieces) -> tuple[Block, ...]:
    def block(section: Section) -> Group:
        if section.key == "you":
            return _you(section, pieces)
        return replace(pieces.section(section), ahead=section.key in _AHEAD)

    return tuple(block(section) for name in names if (section := _printed(words, name)) is not None)


def _printed(words: CardWords, name: str) -> Section | None:
    """Return a section as it is printed: the table under "Score" says with whom one plays in which round."""
    section = words.section(name)
    if section is None:
        return None
    kept = tuple(sentence for sentence in section.sentences if not sentence.key.endswith(ROUNDS_KEY))
    return replace(section, sentences=kept) if kept else None


def _you(section: Section, pieces: Pieces) -> Group:
    """Return "You start as A." in larger letters beside the filled disc, and what comes after it."""
    paper = pieces.paper
    first, *rest = section.sentences
    lead = pieces.person_lead(first.lead.text if first.lead else "", alone=not rest)
    blocks: list[Block] = [
        Row(
            first.text,
            paper.you if rest else replace(paper.you, leading=max(paper.you.leading, lead.width + 1)),
            pieces.typesetter,
            lead=lead,
            hang=lead.width + 6,
            keep_with_next=bool(rest),
        ),
    ]
    blocks += [Row(sentence.text, paper.body, pieces.typesetter, hang=lead.width + 6) for sentence in rest]
    return Group(tuple(blocks), before=_ABOVE_YOU[paper.layout])


_ABOVE_YOU: Final = {"one column": 8.0, "front and back": 6.0, "beside": 0.0}


def _player_after(subject: Subject, pieces: Pieces) -> tuple[Block, ...]:
    """Return what players need to run it by themselves: how it is laid out, and boxes for the score."""
    scores = score_blocks(subject.drill, subject.at, pieces, player=subject.you, units=subject.units)
    laid = _laid_out(subject, pieces)
    code = _code(subject, pieces)
    if pieces.paper.columns > 1:
        return (
            *((Balanced(laid, pieces.paper.gutter, before=8.0),) if laid else ()),
            Group(scores, before=8.0, whole=True),
            *code,
        )
    return (*laid, Group(scores, before=8.0, whole=True), *code)


def _player_strip(subject: Subject, pieces: Pieces) -> tuple[Block, ...]:
    """Return the same across a large sheet, in the way that takes less room; () where the sheet is not that large."""
    if not pieces.paper.strip:
        return ()
    scores = score_blocks(subject.drill, subject.at, pieces, player=subject.you, units=subject.units)
    laid = _laid_out(subject, pieces)
    code = _code(subject, pieces)
    if not laid:
        return (*scores, *code)
    gutter = pieces.paper.gutter
    beside: tuple[Block, ...] = (Columns((laid, (*scores, *code)), gutter, before=8.0),)
    under: tuple[Block, ...] = (Balanced(laid, gutter, before=8.0), *scores, *code)
    return min(beside, under, key=lambda blocks: stacked(blocks, pieces.paper.inner))


def _laid_out(subject: Subject, pieces: Pieces) -> tuple[Block, ...]:
    """Return what is brought, where it lies and where the balls are, () where a coach does that."""
    if not subject.alone:
        return ()
    told = subject.told
    said = " ".join(sentence.text for section in subject.words.sections for sentence in section.sentences)
    places = [found for found in layout_of(told) if found.key != "layout:key"]
    key = [found for found in layout_of(told) if found.key == "layout:key"]
    balls = any(isinstance(item, Basket) for item in told.setting.items.values())
    things = kit_of(told)
    bring = [sentence_of("layout:kit", f"Bring {', '.join(things)}.")] if things else []
    where = [] if balls else [sentence_of("layout:balls", "Spare balls lie", missing=True)]
    section = Section("layout", "Lay out", (*bring, *places, *halves(told, said), *where, *key))
    return (replace(pieces.section(section), long=0.0),)


def _strip(subject: Subject, pieces: Pieces, *, wide: bool) -> tuple[Block, ...]:
    """Return the coach's lower strip, four columns ``wide``, or the same for a side of its own."""
    paper, words, at = pieces.paper, subject.words, subject.at
    blocks: list[Block] = []
    progressions = words.section("progressions")
    if progressions is not None:
        blocks += _ladder(progressions, pieces, at.progression, wide=wide)
    elsewhere = {
        *_PLAYED,
        "progressions",
        *(("cues", "left-handed") if paper.strip or paper.layout == "one column" else ()),
        *(("cues",) if paper.layout == "front and back" else ()),
    }
    sections = [pieces.section(section) for section in _in_order(words) if section.key not in elsewhere]
    if paper.layout != "front and back":
        sections += _rounds(subject.drill, at, pieces, wide=wide)
    if wide:
        for start in range(0, len(sections), 4):
            row = [(section,) for section in sections[start : start + 4]]
            blocks.append(Columns((*row, *((),) * (4 - len(row))), _COLUMN_GAP, before=8.0))
    elif paper.columns > 1:
        blocks.append(Balanced(tuple(sections), paper.gutter, before=8.0))
    else:
        blocks += sections
    # Elsewhere lines to write on have no side of their own: they stand where the last one has room.
    notes = _how_it_went(pieces) if wide else ()
    return (*blocks, *_code(subject, pieces), *notes)


def _code(subject: Subject, pieces: Pieces) -> tuple[Block, ...]:
    """Return the code of the address that the owner gives, () where none is given."""
    if not subject.address:
        return ()
    return (SquareCode(subject.address, pieces.paper.body, pieces.typesetter, before=4.0),)


def _rounds(drill: Drill, at: At, pieces: Pieces, *, wide: bool) -> tuple[Group, ...]:
    """Return who is where in each round of a group of three or more, as small courts; nothing for two.

    A small card has no room for them; the words under "Swap" say the same.
    """
    from designer.drawing.rotation import MOST, ends_after, rotation_strip

    paper = pieces.paper
    room = (paper.inner - 3 * _COLUMN_GAP) / 4 if wide else paper.half if paper.columns > 1 else paper.inner
    shown = rotation_strip(drill, at, width=room / paper.mark, theme=pieces.theme)
    if shown is None:
        return ()
    wide_as = (shown.extent[2] - shown.extent[0]) / shown.unit * paper.mark
    cut = len(shown.marks) == MOST and (full_turn(setting_at(drill, at), drill.jobs) or 0) > MOST
    over = ends_after(setting_at(drill, at), len(shown.marks))
    heading = pieces.heading(
        f"Round by round, the first {MOST}" if cut else "Round by round" if over else "Round by round, then 1 again"
    )
    return (Group((heading, pieces.diagram(shown, wide_as)), before=heading.before),)


_STRIP: Final = ("easier", "harder", "others", "cues", "watch", "left-handed", "care")


def _in_order(words: CardWords) -> list[Section]:
    """Return all sections, those of the strip in its order; one that this module has not heard of is not lost."""
    known = {name: number for number, name in enumerate(_STRIP)}
    return sorted(words.sections, key=lambda section: known.get(section.key, -1))


NOTES: Final = "How it went"
"""The heading over the lines to write on."""


def _how_it_went(pieces: Pieces) -> tuple[Block, ...]:
    """Return lines to write on after the session."""
    return (pieces.heading(NOTES, before=9.0), Rules(2, pieces.paper.note_lines, before=1.2))


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
