"""What a conductor lands on, drawn by how it is held: screw, clamp plate, push-in hole, lug, lead."""

from junctionary.drawings.ink import Mark, Stroke, circle, line, rect


def terminal_mark(how: str, x: float, y: float, *, by_word: bool) -> tuple[Mark, ...]:
    """The mark about its middle, at most 18 px across; dashed where it follows from a word."""
    kind = "part dashed-fine" if by_word else "part"
    if how == "lead":
        # A device's own wire comes out of it: nothing is tightened there.
        return (circle(x, y, 4, kind),)
    if how == "push-in":
        return (rect(x - 5, y - 5, 10, 10, kind),)
    slot = line(x - 4, y + 4, x + 4, y - 4, "hair")
    if how == "clamp-plate":
        return (rect(x - 8, y - 7, 16, 14, kind), slot)
    if how == "lug":
        return (circle(x, y, 7, kind), circle(x, y, 2.2, "solid"))
    if how in ("nothing landed", "how not recorded"):
        return (circle(x, y, 7, kind),)
    return (circle(x, y, 7, kind), slot)


def connector_mark(name: str, x: float, ys: tuple[float, ...], *, by_word: bool) -> tuple[Mark, ...]:
    """A connector that is entered from the left, 22 px wide, a port at each height.

    Dashed where its kind is not known, or where the joint follows from a word.
    """
    top, bottom = ys[0] - 10, ys[-1] + 10
    known = any(word in name for word in ("twist", "lever", "push", "crimp", "screw"))
    kind = "part dashed-fine" if by_word or not known else "part"
    if "twist" in name:
        body = Stroke(f"M{x:.1f} {top:.1f}l22 6v{bottom - top - 12:.1f}l-22 6Z", kind)
        return (body, *(line(x + 5, y, x + 16, y, "hair") for y in ys))
    body = rect(x, top, 22, bottom - top, kind)
    return (body, *(rect(x + 6, y - 4, 10, 8, "hair") for y in ys))
