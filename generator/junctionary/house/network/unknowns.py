"""What nobody could tell or nobody wrote down, where it bears on what is connected to what."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.contacts import removed_tabs
from junctionary.house.model import Box, House, Run
from junctionary.marks import Place
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN

UNTRACED = "untraced"


@dataclass(frozen=True, slots=True)
class Unknown:
    """One fact that is missing: in words, about which id, and where the record would say it.

    ``points`` are those of the network that meet it, ``runs`` the runs whose
    circuits it puts in doubt. ``box`` is set where the make-up of a whole box
    is not known.
    """

    about: str
    reason: str
    place: Place
    points: tuple[str, ...] = ()
    runs: tuple[str, ...] = ()
    box: str | None = None


def unknowns_of(house: House, spoken: Mapping[str, tuple[str, ...]]) -> tuple[Unknown, ...]:
    """Every such fact of the boxes and the runs, in the order of the record.

    ``spoken`` are the colours that boxes name of runs whose cable is not known.
    """
    return (
        *(each for box in house.boxes.values() for each in _of_box(house, box)),
        *(each for run in house.runs.values() for each in _of_run(house, run, colours_of(run, spoken))),
    )


def is_untraced(house: House, circuit: str) -> bool:
    """Whether this is the place for runs nobody could trace, and no circuit at all."""
    record = house.circuits.get(circuit)
    return record is not None and record.record.purpose == UNTRACED


def end_name(run: Run, side: int, colour: str | None) -> str:
    """The name of a conductor's end: ``K1/a1.black`` in a box or panel.

    Of an end that is nowhere or not known ``unknown-0/a1.black``, with 0 for
    the supply side and 1 for the other. Without a colour, the whole run's end.
    """
    end = run.ends[side]
    stands = end.id if end.id is not None else f"{end.kind}-{side}"
    return f"{stands}/{run.id}" if colour is None else f"{stands}/{run.id}.{colour}"


def colours_of(run: Run, spoken: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The colours of a run's conductors: its cable's, or those that some box speaks of."""
    return tuple(each.colour for each in run.conductors) or spoken.get(run.id, ())


def _of_box(house: House, box: Box) -> Iterable[Unknown]:
    ends = tuple(
        dict.fromkeys(
            (
                *(
                    end_name(run, side, each.colour)
                    for run, side in _here(house, box)
                    for each in run.conductors
                ),
                *box.untold,
                *(member.name for joint in box.joints for member in joint.members),
            )
        )
    )
    if box.makeup_unknown or box.makeup_unrecorded:
        said = "is unknown" if box.makeup_unknown else "is not recorded"
        yield Unknown(box.id, f"how box {box.id} is made up {said}", box.place, ends, box.runs, box.id)
    else:
        for end in box.untold:
            run = end.partition("/")[2].partition(".")[0]
            reason = f"{end} is told nowhere: not joined, landed, capped or loose"
            yield Unknown(end, reason, box.place, (end,), (run,))
    for device in box.devices:
        if removed_tabs(device.split) is None:
            reason = f"which tab of {device.id} is removed cannot be told from {device.split!r}"
            screws = tuple(f"{device.id}.{each}" for each in ("brass-top", "brass-bottom"))
            yield Unknown(device.id, reason, device.place, screws)


def _here(house: House, box: Box) -> Iterable[tuple[Run, int]]:
    for each in box.runs:
        run = house.runs[each]
        yield from ((run, side) for side in (0, 1) if run.ends[side].id == box.id)


def _of_run(house: House, run: Run, colours: tuple[str, ...]) -> Iterable[Unknown]:
    if is_untraced(house, run.circuit):
        points = tuple(end_name(run, 0, each) for each in colours)
        reason = f"nobody could trace which circuit {run.id} is of"
        yield Unknown(run.id, reason, run.place, points, (run.id,))
    if not isinstance(run.cable, Cable):
        said = "unknown" if run.cable is UNKNOWN else "not recorded"
        points = tuple(end_name(run, 0, each) for each in (None, *colours))
        yield Unknown(run.id, f"what cable {run.id} is, is {said}", run.place, points, (run.id,))
    for side, end in enumerate(run.ends):
        if end.kind in ("unknown", "unrecorded"):
            said = "is unknown" if end.kind == "unknown" else "is not recorded"
            does = "comes from" if side == 0 else "goes to"
            points = tuple(end_name(run, side, each) for each in colours)
            yield Unknown(run.id, f"what {run.id} {does} {said}", run.place, points, (run.id,))
