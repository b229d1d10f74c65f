"""Every kind of mistake: exit 2, the right file, line and column, no traceback, the earlier manual whole.

In each case the sign ¦ stands where the message must point; it is taken out
before the record is written.
"""

from pathlib import Path

import pytest

from junctionary.cli import main

SOUND: dict[str, str | bytes] = {
    "house.yaml": "house: Broken Reed\nreference: nec-2023\n",
    "panels/main.yaml": (
        "panel: main\nspaces: 8\nbonded: true\nbreakers:\n"
        "  1: {rating: 20 A, guards: [afci], feeds: den, says: Den receptacles}\n"
        "  2+4: {rating: 30 A, feeds: tank, says: Water heater}\n"
    ),
    "circuits/den.yaml": (
        "circuit: den\nname: Den\nruns:\n"
        "  - {id: d1, cable: 12/2 NM-B, from: main, to: D1, length: 30 ft}\n"
        "  - {id: d2, cable: 12/2 NM-B, from: D1, to: D2, length: 9 ft}\n"
    ),
    "circuits/tank.yaml": "circuit: tank\nname: Water heater\n",
    "rooms/den.yaml": "room: den\nname: Den\nkind: den\n",
    "boxes/den.yaml": (
        "room: den\nboxes:\n"
        "  D1:\n    size: {volume: 18 in3, clamps: none}\n    devices: {r1: duplex}\n    makeup: pigtailed\n"
        "  D2:\n    size: {volume: 18 in3, clamps: none}\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
    ),
    "devices/all.yaml": (
        "devices:\n  duplex: {is: receptacle, face: 5-20R, rating: 20 A}\nconnectors:\n  l3: {is: lever, ports: 3}\n"
    ),
}

BROKEN: dict[str, tuple[dict[str, str | bytes], str, str]] = {
    # name: (files changed, the file at fault, words that must be said)
    "a key twice": (
        {"house.yaml": "house: Broken Reed\nreference: nec-2023\n¦house: Again\n"},
        "house.yaml",
        "house",
    ),
    "an unknown key": (
        {"rooms/den.yaml": "room: den\nname: Den\nkind: den\n¦cieling: 8 ft\n"},
        "rooms/den.yaml",
        "ceiling",
    ),
    "a missing key": ({"rooms/den.yaml": "¦room: den\nname: Den\n"}, "rooms/den.yaml", "kind"),
    "a word of no list": (
        {"rooms/den.yaml": "room: den\nname: Den\nkind: ¦kitchn\n"},
        "rooms/den.yaml",
        "kitchen",
    ),
    "a run to nowhere": (
        {
            "circuits/den.yaml": "circuit: den\nname: Den\nruns:\n  - {id: d1, cable: 12/2 NM-B, from: main, to: ¦D7}\n"
        },
        "circuits/den.yaml",
        "D7",
    ),
    "an id told twice": (
        {
            "circuits/tank.yaml": "circuit: tank\nname: Water heater\nruns:\n"
            "  - {id: ¦d1, cable: 10/2 NM-B, from: main, to: unknown}\n"
        },
        "circuits/tank.yaml",
        "d1",
    ),
    "a number without its unit": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n  1: {rating: ¦20, feeds: den, says: Den}\n"
        },
        "panels/main.yaml",
        "unit",
    ),
    "a voltage for a breaker": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n  1: {rating: ¦20 V, feeds: den, says: Den}\n"
        },
        "panels/main.yaml",
        "voltage",
    ),
    "a space taken twice": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n"
            "  1+3: {rating: 20 A, feeds: den, says: Den}\n  ¦3: {rating: 30 A, feeds: tank, says: Tank}\n"
        },
        "panels/main.yaml",
        "3",
    ),
    "a space the panel lacks": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n  ¦12: {rating: 20 A, feeds: den, says: Den}\n"
        },
        "panels/main.yaml",
        "12",
    ),
    "a breaker feeding nothing known": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n  1: {rating: 20 A, feeds: ¦denn, says: Den}\n"
        },
        "panels/main.yaml",
        "den",
    ),
    "not UTF-8": (
        {"rooms/den.yaml": "room: den\nname: Caf¦".encode() + b"\xe9\nkind: den\n"},
        "rooms/den.yaml",
        "UTF-8",
    ),
    "an empty file": ({"rooms/den.yaml": "¦"}, "rooms/den.yaml", "empty"),
    "an alias bomb": (
        {"rooms/den.yaml": "room: ¦&a [x, x]\nname: [*a, *a, *a]\nkind: [*a, *a]\n"},
        "rooms/den.yaml",
        "anchor",
    ),
    "a list where keys are due": (
        {"rooms/den.yaml": "¦- room: den\n- name: Den\n"},
        "rooms/den.yaml",
        "list",
    ),
    "a bracket left open": (
        {"rooms/den.yaml": "room: den\nname: Den\nkind: den\nwalls: ¦[north, east\n"},
        "rooms/den.yaml",
        "",
    ),
    "a tab for indentation": ({"boxes/den.yaml": "room: den\nboxes:\n¦\tD1: {}\n"}, "boxes/den.yaml", "tab"),
    "a tag": (
        {"rooms/den.yaml": "room: ¦!!python/name:os.system den\nname: Den\nkind: den\n"},
        "rooms/den.yaml",
        "tag",
    ),
    "a run and a device of one name": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n"
            "  D1:\n    size: {volume: 18 in3}\n    devices: {¦d2: duplex}\n    makeup: pigtailed\n"
            "  D2:\n    size: {volume: 18 in3}\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "d2",
    ),
    "a colour the run lacks": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n  D1:\n    devices: {r1: duplex}\n    joints:\n"
            "      - {join: [d1.black, ¦d2.red, r1.brass], by: l3}\n  D2:\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "red",
    ),
    "a terminal the device lacks": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n  D1:\n    devices: {r1: duplex}\n    terminals:\n"
            "      ¦r1.bras: {wire: d1.black}\n  D2:\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "brass",
    ),
    "a conductor in two joints": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n  D1:\n    devices: {r1: duplex}\n    joints:\n"
            "      - {join: [d1.black, d2.black], by: l3}\n      - {join: [¦d1.black, r1.brass], by: l3}\n"
            "  D2:\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "d1.black",
    ),
    "a kind of device not told": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n  D1:\n    devices: {r1: ¦duplx}\n    makeup: pigtailed\n"
            "  D2:\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "duplex",
    ),
    "a file among those of another kind": (
        {"rooms/lamp.yaml": "¦circuit: lamp\nname: Lamp\nruns: []\n"},
        "rooms/lamp.yaml",
        "move it to circuits/",
    ),
    "a file that an editor named": (
        {"rooms/hall.yaml.txt": "¦room: hall\n"},
        "rooms/hall.yaml.txt",
        "rename it",
    ),
    "more spaces than memory holds": (
        {
            "panels/main.yaml": "panel: main\nspaces: ¦999999999999\nbreakers:\n  1: {feeds: den}\n  2: {feeds: tank}\n"
        },
        "panels/main.yaml",
        "from 1 to 200",
    ),
    "a day there is not": (
        {
            "circuits/tank.yaml": "circuit: tank\nname: Water heater\nevidence: {how: seen, date: ¦2026-06-31}\n"
        },
        "circuits/tank.yaml",
        "2026-06-31",
    ),
    "a wall the room has not": (
        {
            "rooms/den.yaml": "room: den\nname: Den\nkind: den\nwalls: [north, east, south, west]\n"
            "things:\n  - {what: door, wall: ¦noth}\n"
        },
        "rooms/den.yaml",
        "north",
    ),
    "a quote left open between brackets": (
        {
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n"
            '  1: {rating: 20 A, feeds: den, says: ¦"Den}\n  2: {feeds: tank, says: "Tank"}\n'
        },
        "panels/main.yaml",
        "a quote is opened here",
    ),
    "a word of make-up misspelt": (
        {
            "boxes/den.yaml": "room: den\nboxes:\n  D1:\n    devices: {r1: duplex}\n    makeup: ¦pigtaled\n"
            "  D2:\n    devices: {r1: duplex}\n    makeup: end-of-run\n"
        },
        "boxes/den.yaml",
        "pigtailed",
    ),
}


def write(folder: Path, files: dict[str, str | bytes]) -> tuple[str, int, int]:
    """Write the files, and give the file, line and column where ¦ stood."""
    where = ("", 0, 0)
    for name, content in files.items():
        data = content if isinstance(content, bytes) else content.encode()
        mark = data.find("¦".encode())
        if mark >= 0:
            before = data[:mark].decode("utf-8", "replace")
            where = (name, before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1)
            data = data.replace("¦".encode(), b"")
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    return where


def test_the_sound_record_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(tmp_path, SOUND)
    code = main(["check", str(tmp_path), "--fail-on", "never"])
    said = capsys.readouterr()
    assert code == 0, said.out + said.err


@pytest.mark.parametrize("name", BROKEN)
def test_a_mistake_is_told_where_it_stands(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    changed, file, words = BROKEN[name]
    record = tmp_path / "record"
    where = write(record, SOUND | changed)
    assert where[0] == file
    code = main(["check", str(record)])
    said = capsys.readouterr()
    assert code == 2, said.out
    assert f"{record.as_posix()}/{where[0]}:{where[1]}:{where[2]}: problem: " in said.out
    assert words in said.out
    assert "Traceback" not in said.out + said.err


@pytest.mark.parametrize("name", BROKEN)
def test_a_mistake_leaves_the_earlier_manual_whole(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    record, out = tmp_path / "record", tmp_path / "manual"
    write(record, SOUND)
    assert main(["publish", str(record), "-o", str(out)]) == 0
    before = {path: path.read_bytes() for path in out.rglob("*") if path.is_file()}
    write(record, BROKEN[name][0])
    assert main(["publish", str(record), "-o", str(out)]) == 2
    assert {path: path.read_bytes() for path in out.rglob("*") if path.is_file()} == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["manual", "record"]
    assert "Nothing was written" in capsys.readouterr().err


def test_all_mistakes_of_a_record_are_told_at_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(
        tmp_path,
        SOUND
        | {
            "rooms/den.yaml": "room: den\nname: Den\nkind: denn\n",
            "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n  1: {rating: 20, feeds: den, says: Den}\n",
            "devices/all.yaml": "devices:\n  duplex: {is: receptacle, rating: 20 V}\n",
        },
    )
    assert main(["check", str(tmp_path)]) == 2
    out = capsys.readouterr().out
    assert "rooms/den.yaml:3:7" in out
    assert "panels/main.yaml:4:15" in out
    assert "devices/all.yaml:2:36" in out


def test_a_record_without_house_yaml_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "rooms").mkdir()
    (tmp_path / "rooms/den.yaml").write_text("room: den\nname: Den\nkind: den\n")
    assert main(["check", str(tmp_path)]) == 2
    assert "house.yaml" in capsys.readouterr().out


def test_a_folder_that_is_not_there_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(tmp_path / "nowhere")]) == 2
    assert "nowhere" in capsys.readouterr().out
