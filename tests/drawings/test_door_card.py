"""The directory card: every space on it, nothing on top of anything, and one sheet of paper."""

import pytest
from overlaps import lettering_overlaps, outside
from samples import CARD
from test_panel_face import random_face

from junctionary.drawings.door_card import HEADING, NARROW_PX, TALL_PX, WIDE_PX, narrow_card, wide_card
from junctionary.drawings.ink import letterings
from junctionary.sheets.card import CardEntry, DoorCard
from junctionary.sheets.face import Slot


def random_card(seed: int) -> DoorCard:
    face = random_face(seed)
    entries = tuple(
        CardEntry(each.ref, each.slots, each.words, "; ".join(each.notes), each.rating)
        for each in face.handles
    )
    under = (
        "Any house. Rated 200 A, main 200 A, fed by the service and by whatever else feeds it in the barn."
    )
    return DoorCard(
        "Card", "Any panel.", "Main panel", under, face.rows, entries, (under, "From the record.")
    )


CARDS = {"sample": CARD.card, **{f"random {seed}": random_card(seed) for seed in range(40)}}
EVERY = pytest.mark.parametrize("card", CARDS.values(), ids=CARDS.keys())


@EVERY
def test_no_lettering_lies_on_other_lettering(card: DoorCard) -> None:
    for drawing in (wide_card(card, "w"), narrow_card(card, "n")):
        assert lettering_overlaps(drawing) == []
        assert outside(drawing) == []


@EVERY
def test_every_space_is_on_it_once(card: DoorCard) -> None:
    due = sorted(slot.number for each in card.entries for slot in each.slots)
    for drawing in (wide_card(card, "w"), narrow_card(card, "n")):
        shown = [
            each.text for each in letterings(drawing.marks) if each.kind == "tag" and each.text != HEADING
        ]
        assert sorted(each for each in shown if not each.endswith(" A")) == due


def test_a_breaker_of_spaces_that_do_not_touch_leaves_the_space_between_to_its_own() -> None:
    ref = CARD.card.entries[0].ref
    far = CardEntry(ref, (Slot("2", 0, "right"), Slot("6", 2, "right")), "Dryer of the upper landing")
    between = CardEntry(ref, (Slot("4", 1, "right"),), "Receptacles of the den, all of them")
    drawing = wide_card(DoorCard("Card", "Any.", "Panel", "", 3, (far, between), ()), "w")
    assert lettering_overlaps(drawing) == []
    assert [each.text for each in letterings(drawing.marks)].count("Dryer of the upper landing") == 2


def test_it_is_as_wide_as_the_paper_and_the_phone_allow() -> None:
    assert wide_card(CARD.card, "w").width_px == WIDE_PX
    assert narrow_card(CARD.card, "n").width_px == NARROW_PX


def test_rooms_give_way_before_the_letters_shrink_too_far() -> None:
    long = " and ".join(["the long room at the back of the house"] * 9)
    entries = tuple(
        CardEntry(each.ref, each.slots, "Lights", long, "15 A") for each in random_card(3).entries * 1
    )
    card = DoorCard("Card", "Any.", "Main panel", "", 21, entries, ())
    words = {each.text for each in letterings(wide_card(card, "w").marks)}
    assert wide_card(card, "w").height_px <= TALL_PX
    assert not any("room" in each for each in words)
