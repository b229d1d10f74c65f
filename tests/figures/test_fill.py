"""Box fill: what is counted in a box, by the record of its cables and devices."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.figures import Figures

FiguresOf = Callable[[str], Figures]


def record(box: str, runs: str = "{id: a1, cable: 14/2 NM-B, from: main, to: K1}", defaults: str = "") -> str:
    listed = "".join(f"  - {each}\n" for each in runs.split("; "))
    return (
        f"[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n{listed}"
        f"[boxes/den.yaml]\nroom: den\n{defaults}boxes:\n  K2: {{size: none}}\n  K1: {box}\n"
    )


def test_two_conductors_a_ground_and_a_yoke_are_five_allowances(figures_of: FiguresOf) -> None:
    fill = figures_of(
        record(
            "{size: {volume: 18 in3, of: plastic, clamps: none}, devices: {r1: duplex}, makeup: end-of-run}"
        )
    ).fill["K1"]
    assert (fill.filled.value, fill.left, fill.fits) == (Fraction(10), Fraction(8), True)


def test_inside_clamps_count_once(figures_of: FiguresOf) -> None:
    fill = figures_of(record("{size: {volume: 18 in3, of: plastic, clamps: inside}, capped: [a1]}")).fill[
        "K1"
    ]
    assert fill.filled.value == 3 * 2 + 2


@pytest.mark.parametrize("clamps", ["", ", clamps: unknown"])
def test_clamps_that_nobody_looked_at_leave_the_fill_open(clamps: str, figures_of: FiguresOf) -> None:
    fill = figures_of(record(f"{{size: {{volume: 7 in3, of: plastic{clamps}}}, capped: [a1]}}")).fill["K1"]
    assert fill.filled.value is None
    assert (fill.least, fill.most) == (6, 8)
    assert fill.fits is None
    assert fill.lacks == ("whether the box has clamps inside",)


def test_a_box_too_small_for_what_is_known_does_not_fit_whatever_is_missing(figures_of: FiguresOf) -> None:
    fill = figures_of(record("{size: {volume: 5 in3, of: plastic}, capped: [a1]}")).fill["K1"]
    assert fill.fits is False
    assert fill.filled.value is None


def test_a_passing_cable_counts_once_and_a_long_loop_twice(figures_of: FiguresOf) -> None:
    def filled(loop: str) -> Fraction | None:
        box = f"{{size: {{volume: 18 in3, of: plastic, clamps: none}}, passes: [{{run: a1{loop}}}]}}"
        return (
            figures_of(record(box, "{id: a1, cable: 14/2 NM-B, from: main, to: K2}")).fill["K1"].filled.value
        )

    assert filled(", loop: 11 in") == 3 * 2
    assert filled(", loop: 12 in") == 5 * 2
    assert filled("") is None


def test_a_domed_canopy_spares_the_luminaires_wires_and_no_canopy_counts_them(figures_of: FiguresOf) -> None:
    def filled(lamp: str) -> Fraction | None:
        box = (
            f"{{size: {{volume: 18 in3, of: plastic, clamps: none}}, devices: {{f1: {lamp}}}, "
            "makeup: end-of-run, splice: [lever-3]}"
        )
        return figures_of(record(box)).fill["K1"].filled.value

    assert filled("lamp") == 6
    # Two 18 AWG wires at 1.50; its ground is one of two in the one allowance of the larger.
    assert filled("pendant") == 9
    assert filled("bare-lamp") is None


def test_a_stud_is_asked_for_only_where_one_may_stand(figures_of: FiguresOf) -> None:
    def lacks(size: str) -> tuple[str, ...]:
        return figures_of(record(f"{{size: {size}, capped: [a1]}}")).fill["K1"].lacks

    assert lacks("{standard: 4 x 1-1/2 octagonal, of: steel, clamps: none}") == (
        "whether the box has a fixture stud or hickey",
    )
    assert lacks("{standard: 4 x 1-1/2 octagonal, of: steel, clamps: none, studs: none}") == ()
    assert lacks("{standard: 4 x 1-1/2 square, of: steel, clamps: none}") == ()


def test_two_devices_on_one_strap_are_one_yoke(figures_of: FiguresOf) -> None:
    def filled(yoke: str) -> Fraction | None:
        box = (
            "{size: {volume: 40 in3, of: plastic, clamps: none}, devices: {s1: switch, r1: duplex}, "
            f"terminals: {{s1.brass-1: a1.black, r1.silver: a1.white}}{yoke}}}"
        )
        return figures_of(record(box)).fill["K1"].filled.value

    assert filled("") == 3 * 2 + 2 * 4
    assert filled(", yoke: [s1, r1]") == 3 * 2 + 4


def test_a_device_two_gangs_wide_counts_four(figures_of: FiguresOf) -> None:
    box = (
        "{size: {volume: 60 in3, of: plastic, clamps: none}, devices: {r1: wide}, "
        "terminals: {r1.x: a1.black, r1.y: a1.red, r1.w: a1.white, r1.g: a1.bare}}"
    )
    fill = figures_of(record(box, "{id: a1, cable: 8/3 NM-B, from: main, to: K1}")).fill["K1"]
    assert fill.filled.value == 3 * 3 + Fraction(5, 2) + 4 * 3


def test_grounds_are_counted_by_the_boxs_own_edition(figures_of: FiguresOf) -> None:
    runs = "; ".join(f"{{id: a{number}, cable: 14/2 NM-B, from: main, to: K1}}" for number in range(1, 7))

    def filled(edition: str) -> Fraction | None:
        box = (
            f"{{size: {{volume: 60 in3, of: plastic, clamps: none}}, built_to: {edition}, "
            "capped: [a1, a2, a3, a4, a5, a6]}"
        )
        return figures_of(record(box, runs)).fill["K1"].filled.value

    assert filled("nec-2017") == 12 * 2 + 2
    assert filled("nec-2023") == 12 * 2 + 3


def test_armour_takes_no_room(figures_of: FiguresOf) -> None:
    box = "{size: {volume: 18 in3, of: plastic, clamps: none}, capped: [a1]}"
    assert (
        figures_of(record(box, "{id: a1, cable: 14/2 AC, from: main, to: K1}")).fill["K1"].filled.value == 4
    )


def test_a_joint_without_a_box_has_no_fill(figures_of: FiguresOf) -> None:
    assert "K2" not in figures_of(record("{capped: [a1]}")).fill


def test_a_box_nobody_looked_into_is_not_known_to_fit(figures_of: FiguresOf) -> None:
    box = "{size: {volume: 40 in3, of: plastic, clamps: none}, makeup: unknown}"
    assert figures_of(record(box)).fill["K1"].lacks == ("how box K1 is made up",)


def test_a_roughed_box_is_filled_by_its_cables_before_it_is_made_up(figures_of: FiguresOf) -> None:
    box = "{size: {volume: 18 in3, of: plastic, clamps: none}, devices: {r1: duplex}, stage: roughed}"
    assert figures_of(record(box)).fill["K1"].filled.value == 10


def test_a_box_without_a_mark_says_what_volume_it_needs(figures_of: FiguresOf) -> None:
    fill = figures_of(record("{size: {of: plastic, clamps: none}, capped: [a1]}")).fill["K1"]
    assert fill.lacks == ("the marked volume of box K1 (it needs 6.00 in3)",)


@pytest.mark.parametrize(("edition", "filled"), [("nec-2020", 6), ("nec-2023", 8)])
def test_a_terminal_block_takes_room_from_2023(edition: str, filled: int, figures_of: FiguresOf) -> None:
    box = (
        "{size: {volume: 18 in3, of: plastic, clamps: none}, capped: [a1], terminal_blocks: [14 AWG], "
        f"built_to: {edition}}}"
    )
    assert figures_of(record(box)).fill["K1"].filled.value == filled


@pytest.mark.parametrize(
    ("barriers", "volume"),
    [("[steel]", "17.5"), ("[plastic]", "17"), ("[{of: steel, volume: 0.7 in3}]", "17.3"), ("[{}]", None)],
)
def test_a_barrier_takes_its_mark_or_what_its_make_takes(
    barriers: str, volume: str | None, figures_of: FiguresOf
) -> None:
    box = f"{{size: {{volume: 18 in3, of: plastic, clamps: none, barriers: {barriers}}}, capped: [a1]}}"
    fill = figures_of(record(box)).fill["K1"]
    assert fill.volume.value == (None if volume is None else Fraction(volume))
    assert fill.fits is True


def test_the_ground_of_an_isolated_receptacle_is_a_set_of_its_own_until_2017(figures_of: FiguresOf) -> None:
    kinds = "[devices/more.yaml]\ndevices: {quiet: {is: receptacle, face: 5-15R, marks: [isolated-ground]}}\n"
    cable = "{id: a1, cable: 14/2 MC, from: main, to: K1}; {id: a2, cable: 14/2 MC, from: main, to: K1}"

    def filled(edition: str, ground: str) -> Fraction | None:
        box = (
            "{size: {volume: 40 in3, of: steel, clamps: none}, devices: {r1: quiet}, "
            "terminals: {r1.brass: a1.black, r1.silver: a1.white, r1.green: a1.green}, "
            f"capped: [a2.black, a2.white], joints: [{{join: [{ground}], by: lever-3}}], built_to: {edition}}}"
        )
        return figures_of(record(box, cable) + kinds).fill["K1"].filled.value

    assert filled("nec-2017", "a2.green, box.screw") == 4 * 2 + 2 * 2 + 2 + 2
    assert filled("nec-2020", "a2.green, box.screw") == 4 * 2 + 2 * 2 + 2


def test_an_unknown_cable_leaves_the_fill_open(figures_of: FiguresOf) -> None:
    box = "{size: {volume: 18 in3, of: plastic, clamps: none}, capped: [a1]}"
    fill = figures_of(record(box, "{id: a1, cable: unknown, from: main, to: K1}")).fill["K1"]
    assert "the cable of run a1" in fill.lacks
