"""The face of a panel: nothing on top of anything, whatever stands in it; every breaker leads to its circuit."""

from pathlib import Path
from random import Random

import pytest
from overlaps import lettering_overlaps, outside, strokes
from samples import FACE

from junctionary.cli.opening import open_record
from junctionary.drawings.callouts import spread
from junctionary.drawings.ink import SIZES_PX, Drawing, Linked, Mark, letterings
from junctionary.drawings.lettering import wrapped
from junctionary.drawings.panel_face import narrow_face, small_face, wide_face
from junctionary.drawings.panel_layout import NARROW, WIDE, laid_out, spots
from junctionary.sheets.face import Handle, LitFace, PanelFace, Slot
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.survey import Survey, survey

WORDS = (
    "kitchen", "counter", "left", "of", "the", "sink", "receptacles", "lights", "upstairs", "workshop",
    "water", "heater", "refrigerator", "smoke", "alarms", "dishwasher", "WM", "anti-condensation-heater",
)  # fmt: skip


def name(chance: Random) -> str:
    return " ".join(chance.choice(WORDS) for _ in range(chance.randint(1, 14)))


def random_face(seed: int) -> PanelFace:
    """12 to 42 spaces: two-pole and half-size breakers, fillers, openings, unknowns, names of any length."""
    chance = Random(seed)
    rows = chance.randint(6, 21)
    handles: list[Handle] = []
    for side in ("left", "right"):
        row = 0
        while row < rows:
            number = 2 * row + (1 if side == "left" else 2)
            kind = chance.choice(
                ("single", "single", "double", "halves", "blank", "open", "unrecorded", "unused")
            )
            leg = chance.choice(("AB"[row % 2], ""))
            if kind == "double" and row + 1 < rows:
                slots = (Slot(str(number), row, side, "", leg), Slot(str(number + 2), row + 1, side, "", leg))
                handles.append(breaker(slots, chance))
                row += 1
            elif kind == "halves":
                handles += [
                    breaker((Slot(f"{number}{half}", row, side, half, leg),), chance) for half in ("a", "b")
                ]
            elif kind in ("blank", "open", "unrecorded", "unused"):
                slot = Slot(str(number), row, side, "", leg)
                handles.append(Handle(Ref("space", f"p/{number}"), (slot,), kind))
            else:
                handles.append(breaker((Slot(str(number), row, side, "", leg),), chance))
            row += 1
    main = breaker((), chance, "main") if chance.random() < 0.7 else None
    return PanelFace(Ref("panel", "p"), "Face", "Any panel.", rows, main, tuple(handles))


def breaker(slots: tuple[Slot, ...], chance: Random, state: str = "feeds") -> Handle:
    id_ = "+".join(slot.number for slot in slots) or "main"
    return Handle(
        Ref("space", f"p/{id_}"),
        slots,
        chance.choice(("feeds", "unknown")) if state == "feeds" else state,  # type: ignore[arg-type]
        chance.choice(("15 A", "200 A", "")),
        (Link(name(chance), Ref("circuit", id_)),),
        guards=chance.choice(("", "GF", "GF+AF")),
        notes=tuple(name(chance) for _ in range(chance.randint(0, 2))),
        is_off=chance.random() < 0.1,
        severity=chance.choice((None, "hazard", "advice")),
    )


def demo_faces() -> list[PanelFace]:
    result = open_record(Path(__file__).parents[2] / "content").result
    assert result is not None
    surveyed = survey(result.house, result.network, result.figures, result.judgement, "0" * 64, {})
    return list(surveyed.faces.values())


FACES = {"sample": FACE, **{f"random {seed}": random_face(seed) for seed in range(40)}}
EVERY = pytest.mark.parametrize("face", FACES.values(), ids=FACES.keys())


def clear(drawing: Drawing) -> None:
    assert lettering_overlaps(drawing) == []
    assert outside(drawing) == []


@EVERY
def test_no_lettering_lies_on_other_lettering(face: PanelFace) -> None:
    clear(wide_face(face, "w"))
    clear(narrow_face(face, "n"))


def test_no_lettering_lies_on_other_lettering_in_the_panels_of_the_demo_house() -> None:
    for face in demo_faces():
        clear(wide_face(face, "w"))
        clear(narrow_face(face, "n"))
        clear(small_face(LitFace(face, "", frozenset(each.ref for each in face.handles)), "s"))


@EVERY
def test_the_small_face_numbers_all_that_is_lit_and_nothing_else(face: PanelFace) -> None:
    lit = frozenset(each.ref for each in face.handles[::3])
    drawing = small_face(LitFace(face, "", lit), "s")
    clear(drawing)
    assert {each.text for each in letterings(drawing.marks)} == {ref.id.split("/")[1] for ref in lit}


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


@EVERY
def test_every_breaker_leads_to_what_it_feeds_in_both(face: PanelFace) -> None:
    due = {each.to for each in face.handles if each.to} | (
        {face.main.to} if face.main and face.main.to else set()
    )
    assert links(wide_face(face, "w").marks) == due
    assert links(narrow_face(face, "n").marks) == due


@EVERY
def test_there_is_a_place_to_land_on_for_every_space(face: PanelFace) -> None:
    due = {each.ref for each in face.handles} | ({face.main.ref} if face.main else set())
    for layout in (WIDE, NARROW):
        found = spots(face, layout)
        assert set(found) == due
        assert all(0 <= each <= 100 for keeps in found.values() for each in keeps)


@EVERY
def test_on_a_phone_words_stand_beside_what_they_name(face: PanelFace) -> None:
    for item in laid_out(face, NARROW).items:
        if item.lines and item.handle.state != "main":
            body = item.bodies[0]
            assert body.y - 6 <= item.words_y
            assert item.words_y + item.tall <= body.y + body.height + 6


@EVERY
def test_letters_are_never_below_nine_pixels(face: PanelFace) -> None:
    for drawing, room in ((narrow_face(face, "n"), 320 - 46), (wide_face(face, "w"), 761 - 100)):
        scale = min(1, room / drawing.width_px)
        assert min(each.size_px for each in letterings(drawing.marks)) * scale >= 9


def test_a_breaker_is_off_has_its_handle_the_other_way() -> None:
    def handle_x(is_off: bool) -> set[str]:
        slot = Slot("1", 0, "left", "", "A")
        one = Handle(Ref("space", "p/1"), (slot,), "feeds", "15 A", ("Den",), is_off=is_off)
        face = PanelFace(Ref("panel", "p"), "F", "S", 1, None, (one,))
        return {each.d for each in strokes(wide_face(face, "w").marks, "solid")}

    assert handle_x(True) != handle_x(False)


def test_a_space_with_no_known_leg_is_marked_with_a_question() -> None:
    one = Handle(Ref("space", "p/1"), (Slot("1", 0, "left"),), "feeds", "15 A", ("Den",))
    face = PanelFace(Ref("panel", "p"), "F", "S", 1, None, (one,))
    assert "?" in [each.text for each in letterings(wide_face(face, "w").marks)]


def test_blocks_stand_where_they_would_when_there_is_room() -> None:
    assert spread([20, 60], [10, 10], 0, 100) == [15, 55]


def test_blocks_that_would_overlap_move_apart_alike() -> None:
    assert spread([50, 50], [10, 10], 0, 100) == [40, 50]


def test_blocks_keep_within_the_field() -> None:
    assert spread([0, 100], [10, 10], 0, 100) == [0, 90]


def test_no_line_beside_the_narrow_face_begins_with_a_comma() -> None:
    assert wrapped("receptacles, east", NARROW.room, SIZES_PX["word"]) == ("receptacles,", "east")


def test_a_breaker_held_off_by_the_interlock_is_drawn_off_and_marks_come_from_the_circuit(
    demo_survey: Survey,
) -> None:
    handles = {each.ref.id: each for each in demo_survey.faces["main"].handles}
    assert [each for each, handle in handles.items() if handle.is_off] == ["main/1+3", "main/42"]
    assert handles["main/32"].severity == "hazard", "a connector in a box on it is overfilled"
    assert handles["main/33"].severity is None
