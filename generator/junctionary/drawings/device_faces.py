"""The face of a device as one sees it in the wall, so that it is known by its look: slots, buttons, a toggle.

Slots as ANSI/NEMA WD 6 configures them; nothing is drawn for what has no usual face.
"""

from junctionary.drawings.ink import Mark, Stroke, rect
from junctionary.sheets.box import Device

WIDE_PART = 0.66
"""A face is so much as wide as it is high."""

_SLOTS = {
    "1-15R": "M-3 -3.4v6.8M3 -2.6v5.2",
    "5-15R": "M-3 -4.4v5.6M3 -3.8v4.4",
    "5-20R": "M-3 -4.4v5.6M-3 -1.6h-2.6M3 -3.8v4.4",
    "6-15R": "M-5 -2h4M1 -2h4",
    "6-20R": "M-5 -2h4M-3 -2v-2.6M1 -2h4",
    "6-50R": "M-3.6 -5v6M3.6 -5v6",
    "10-30R": "M-4.6 -5l2.4 5M4.6 -5l-2.4 5M-1.4 6h2.8v-3.4",
    "10-50R": "M-4.6 -5l2.4 5M4.6 -5l-2.4 5M0 2.4v4.6",
    "14-30R": "M-4.6 -3v5M4.6 -3v5M-1.4 6.6h2.8v-3",
    "14-50R": "M-4.6 -3v5M4.6 -3v5M0 3.4v4",
}
"""The current-carrying slots of each configuration about its middle; a single face is 26 units high."""

_GROUND = {
    "5-15R": (0.0, 4.4), "5-20R": (0.0, 4.4), "6-15R": (0.0, 3.4), "6-20R": (0.0, 3.4), "6-50R": (0.0, 4.6),
    "14-30R": (0.0, -6.0), "14-50R": (0.0, -6.0),
}  # fmt: skip


def has_face(device: Device) -> bool:
    """Whether a device is drawn by its face."""
    return device.face in _SLOTS or device.symbol in ("switch", "switch-3", "switch-4")


def device_face(device: Device, x: float, y: float, high_px: float) -> tuple[Mark, ...]:
    """The face with its upper left corner at a point; empty where it has no usual one."""
    wide = high_px * WIDE_PART
    cx, cy = x + wide / 2, y + high_px / 2
    plate = (rect(x, y, wide, high_px, "part"),)
    if device.symbol in ("switch", "switch-3", "switch-4"):
        slot_w, slot_h = wide * 0.3, high_px * 0.36
        toggle = rect(cx - slot_w * 0.3, cy - slot_h * 0.42, slot_w * 0.6, slot_h * 0.5, "solid")
        return (*plate, rect(cx - slot_w / 2, cy - slot_h / 2, slot_w, slot_h, "hair"), toggle)
    if device.face not in _SLOTS:
        return ()
    single = device.symbol in ("receptacle-single", "receptacle-240") or device.face[0] != "5"
    unit = high_px / (26 if single else 42)
    middles = (cy,) if single else (cy - high_px * 0.25, cy + high_px * 0.25)
    slots = [mark for middle in middles for mark in _slots(device.face, cx, middle, unit)]
    if device.symbol == "gfci":
        button = (wide * 0.22, high_px * 0.045)
        slots += [
            rect(cx + off - button[0] / 2, cy - button[1], button[0], 2 * button[1], "hair")
            for off in (-wide * 0.17, wide * 0.17)
        ]
    return (*plate, *slots)


def _slots(face: str, x: float, y: float, unit: float) -> list[Mark]:
    marks: list[Mark] = [Stroke(_scaled(_SLOTS[face], x, y, unit), "hair")]
    if face in _GROUND:
        dx, dy = _GROUND[face]
        r = 1.5 * unit
        marks.append(
            Stroke(
                f"M{x + dx * unit - r:.1f} {y + dy * unit:.1f}a{r:.1f} {r:.1f} 0 1 0 {2 * r:.1f} 0"
                f"a{r:.1f} {r:.1f} 0 1 0 {-2 * r:.1f} 0Z",
                "solid",
            )
        )
    return marks


def _scaled(d: str, x: float, y: float, unit: float) -> str:
    """A path of M, h, v and l about the origin, moved to a point and scaled."""
    said: list[str] = []
    for step in d.replace("M", "|M").replace("h", "|h").replace("v", "|v").replace("l", "|l").split("|")[1:]:
        numbers = [float(each) for each in step[1:].split()]
        if step[0] == "M":
            numbers = [x + numbers[0] * unit, y + numbers[1] * unit]
        else:
            numbers = [each * unit for each in numbers]
        said.append(step[0] + " ".join(f"{each:.1f}" for each in numbers))
    return "".join(said)
