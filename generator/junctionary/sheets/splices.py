"""Builds the sheet of every joint in the house, box by box, those hardest to reach first."""

from collections.abc import Iterable

from junctionary.house.model import Box, House
from junctionary.records.boxes import Reach
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.boxes import reach_words
from junctionary.sheets.isolation import before_any
from junctionary.sheets.links import Link, Ref, listed
from junctionary.sheets.lists import SpliceBox, SpliceGroup, SpliceLine, SplicesSheet
from junctionary.sheets.makeup import connector_words
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, counted, room_link, where
from junctionary.sheets.survey import Survey, boxes_known, sentence, title
from junctionary.sheets.titleblock import GENERAL

HIDDEN = "Behind a surface, hidden, without a box, or nobody can tell."
UNSAID = "How a box is reached is not recorded, unless it is said."


def splices_sheet(survey: Survey) -> SplicesSheet:
    """Every joint of the house, those hardest to reach first."""
    house = survey.house
    joined = [each for each in house.boxes.values() if each.joints]
    hard = [each for each in joined if is_hard_to_reach(each)]
    alone = [each for each in joined if not each.devices and each not in hard]
    others = [each for each in joined if each.devices and each not in hard]
    count = sum(len(each.joints) for each in joined)
    return SplicesSheet(
        title=title(survey, "Splices and pigtails", GENERAL["splices"], boxes_known(house.boxes.values())),
        ref=Ref("sheet", "splices"),
        heading="Splices and pigtails",
        lead=(
            sentence(f"{counted(count, 'joint')} in {counted(len(joined), 'box', 'boxes')}"),
            " ",
            _blind(house),
        ),
        before=before_any(),
        groups=(
            SpliceGroup("Hard to reach", HIDDEN, _boxes(house, hard)),
            SpliceGroup("In boxes that only join", UNSAID if alone else "", _boxes(house, alone)),
            SpliceGroup("Behind devices", UNSAID if others else "", _boxes(house, others)),
        ),
    )


def _blind(house: House) -> str:
    blind = [each.id for each in house.boxes.values() if each.makeup_unknown or each.makeup_unrecorded]
    if not blind:
        return ""
    return sentence(
        f"{counted(len(blind), 'box', 'boxes')} more may hold joints not recorded: {', '.join(blind)}"
    )


def is_hard_to_reach(box: Box) -> bool:
    """Whether something told stands between a person and the joint, or there is no box around it."""
    reach = box.record.reach
    return box.record.size is NONE or reach is UNKNOWN or isinstance(reach, Reach)


def _boxes(house: House, boxes: Iterable[Box]) -> tuple[SpliceBox, ...]:
    return tuple(
        SpliceBox(
            box=Link(box.id, Ref("box", box.id)),
            where=(room_link(house, box.room), ", ", where(house, box.record.at)),
            reached=reach_words(box.record.reach) if box.record.reach is not None else "",
            circuits=listed(
                tuple(
                    circuit_link(house, each)
                    for each in dict.fromkeys(circuit for joint in box.joints for circuit in joint.circuits)
                )
            )
            or (NOT_RECORDED,),
            joints=tuple(
                SpliceLine(
                    Link(joint.id.removeprefix(f"{box.id}/"), Ref("joint", joint.id)),
                    ", ".join(
                        each.name.removeprefix(f"{box.id}/").removeprefix(f"{box.id}.")
                        for each in joint.members
                    ),
                    connector_words(joint),
                )
                for joint in box.joints
            ),
        )
        for box in boxes
    )
