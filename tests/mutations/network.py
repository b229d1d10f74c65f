"""Slips in how conductors are joined, most of them made in the linked house as tests/seeding.py makes them."""

from collections.abc import Callable, Iterator
from random import Random

import seeding

from junctionary.house.model import House
from mutations.demo import Demo, Seed, Slip
from mutations.kinds import Mutation

TRIES = 120

Maker = Callable[[House, Random], seeding.Seeded | None]


def as_seeded(make: Maker) -> Callable[[Demo], Iterator[Seed]]:
    """Every place at which a maker of tests/seeding.py puts its fault, as far as chance finds them."""

    def sites(demo: Demo) -> Iterator[Seed]:
        before: set[tuple[object, ...]] = set()
        for number in range(TRIES):
            made = make(demo.house, Random(number))
            if made is not None and made.places not in before:
                before.add(made.places)
                lines = tuple((each.file, each.line) for each in made.places)
                yield Seed(
                    lines[0][0] + f":{lines[0][1]}", lambda house=made.house: house, lines, any_of=True
                )

    return sites


def common_and_traveler(demo: Demo) -> Iterator[Seed]:
    """The dark screw of a 3-way taken for one of its travelers."""
    for box, was, is_ in (
        ("K14", "{common: kl3, travelers: kl2}", "{common: kl2.red, travelers: [kl2.black, kl3.black]}"),
        ("T1", "{common: st4, travelers: st3}", "{common: st3.red, travelers: [st3.black, st4.black]}"),
        ("C10", "{common: cl3, travelers: cl2}", "{common: cl2.red, travelers: [cl2.black, cl3.black]}"),
    ):
        slip = Slip(demo, box)
        file, _ = slip.line_of_box(box)
        slip.swap(file, was, is_)
        yield slip.seed(*((f, n) for f, n in _switch_lines(slip, box)), any_of=True)


def _switch_lines(slip: Slip, box: str) -> list[tuple[str, int]]:
    chains = {"K14": ("K13", "K14"), "T1": ("H1", "H2", "T1"), "C10": ("S1", "C10")}
    return [slip.line_of_box(each, "devices:") for each in chains[box]]


def stair_in_the_dark(demo: Demo) -> Iterator[Seed]:
    """The same slip at a stair, where the room's key is at fault as well."""
    for box, was, is_, room in (
        (
            "T1",
            "{common: st4, travelers: st3}",
            "{common: st3.red, travelers: [st3.black, st4.black]}",
            "hall",
        ),
        (
            "C10",
            "{common: cl3, travelers: cl2}",
            "{common: cl2.red, travelers: [cl2.black, cl3.black]}",
            "backstair",
        ),
    ):
        slip = Slip(demo, box)
        file, _ = slip.line_of_box(box)
        slip.swap(file, was, is_)
        yield slip.seed((f"rooms/{room}.yaml", 1))


def neutral_through_switch(demo: Demo) -> Iterator[Seed]:
    for box, feed, leg in (("C18", "cl6", "cl7"),):
        slip = Slip(demo, box).box(
            box,
            makeup=None,
            joints=f"\n      - {{join: [{feed}.black, {leg}.black], by: lever-2}}\n      - {{join: [{feed}.bare, {leg}.bare, s1.green], by: lever-3}}",
            terminals=f"{{s1.brass-1: {feed}.white, s1.brass-2: {leg}.white}}",
        )
        yield slip.seed(slip.line_of_box(box, "terminals:"))
    slip = Slip(demo, "N6").box(
        "N6",
        makeup=None,
        joints="\n      - {join: [nb1.black, nb2.black, nb6.black], by: lever-3}\n      - {join: [nb1.white, nb2.white, s1.brass-1], by: lever-3}"
        "\n      - {join: [nb1.bare, nb2.bare, nb6.bare, s1.green], by: lever-5}",
        terminals="{s1.brass-2: nb6.white}",
    )
    yield slip.seed(
        slip.line_of_box("N6", "terminals:"), slip.line_of_box("N6", "- {join: [nb1.white"), any_of=True
    )


def pair_in_a_raceway(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "cellar").swap(
        "circuits/cellar.yaml", "purpose: receptacles\n", "purpose: receptacles\ngrouped: false\n"
    )
    yield slip.seed(("circuits/cellar.yaml", 1))


def hots_of_two(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "K12").box(
        "K12", joints="\n      - {join: [dp1.black, kl8.black, s1.brass-1, s2.brass-1], by: lever-5}"
    )
    yield slip.seed(slip.line_of_box("K12", "- {join: [dp1.black"))


def neutral_of_another(demo: Demo) -> Iterator[Seed]:
    slip = Slip(demo, "K11").box(
        "K11", joints="\n      - {join: [dw1.white, r1.silver, r2.silver], by: lever-3}", capped="[dp2.white]"
    )
    yield slip.seed(slip.line_of_box("K11", "- {join: [dw1.white"))


MUTATIONS = (
    Mutation("polarity-reversed", as_seeded(seeding.polarity_reversed)),
    Mutation("gfci-line-load-swapped", as_seeded(seeding.gfci_line_load_swapped), {
        "gfci-missing": "what hung on the load side is guarded no longer",
        "three-hole-on-no-ground": "its own face is guarded no longer, and it has no ground behind it",
    }),
    Mutation("ground-borrowed-from-neutral", as_seeded(seeding.ground_borrowed_from_neutral)),
    Mutation("neutral-borrowed", neutral_of_another, {
        "fixed-load-over-half": "the disposer's receptacle comes to hang on the dishwasher's circuit too",
    }),
    Mutation("neutral-ground-joined", as_seeded(seeding.neutral_ground_joined), {
        "connector-overfilled": "all whites and grounds are in one connector",
    }),
    Mutation("circuits-joined", hots_of_two),
    Mutation("hot-open", as_seeded(seeding.open_terminal("brass-top", "hot-open"))),
    Mutation("neutral-open", as_seeded(seeding.open_terminal("silver-top", "neutral-open"))),
    Mutation("ground-missing", as_seeded(seeding.open_terminal("green", "ground-missing"))),
    Mutation("connector-overfilled", as_seeded(seeding.connector_overfilled)),
    Mutation("multiwire-untied", as_seeded(seeding.multiwire_untied)),
    Mutation("multiwire-same-leg", as_seeded(seeding.multiwire_same_leg)),
    Mutation("sources-without-interlock", as_seeded(seeding.sources_without_interlock)),
    Mutation("switch-without-effect", common_and_traveler, {"stair-switch-missing": "the stair's light is one of them"}),
    Mutation("stair-switch-missing", stair_in_the_dark, {"switch-without-effect": "the other switch does nothing in some state"}),
    Mutation("neutral-switched", neutral_through_switch),
    Mutation("multiwire-ungrouped", pair_in_a_raceway),
)  # fmt: skip
