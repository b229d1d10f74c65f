"""Whether each joint's connector holds what is in it."""

from dataclasses import replace

from junctionary.formulas.connector import JointWire, Listing, connector_fit
from junctionary.formulas.fit import Fit
from junctionary.house.makeup.connecting import listing_of
from junctionary.house.model import House, Joint
from junctionary.records.values import NONE, UNKNOWN

NO_CONNECTOR = ("none", "solder", "tape")


def joint_fit(house: House, joint: Joint) -> Fit | None:
    """The verdict on a joint's connector by its listing; None where the joint is made without one."""
    if joint.by is NONE or joint.by in NO_CONNECTOR:
        return None
    edition = house.boxes[joint.box].edition
    wires = [JointWire(each.size, each.metal) for each in joint.members]
    if joint.connector is None:
        untold = connector_fit(Listing(), wires, edition)
        looked = "nobody can tell" if joint.by is UNKNOWN else "not recorded"
        return replace(untold, allowed=looked, lacks=(f"which connector holds joint {joint.id}",))
    fit = connector_fit(listing_of(joint.connector), wires, edition)
    named = (
        lack.replace("the connector", str(joint.by)).replace("the joint", f"joint {joint.id}")
        for lack in fit.lacks
    )
    return replace(fit, lacks=tuple(named))
