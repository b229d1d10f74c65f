import hashlib
import os
from pathlib import Path
from typing import Any

import pytest

from junctionary.marks import MarkedMap, Place
from junctionary.read import RecordFiles, Source, caret, digest, folder, read_record, source_line


def written(root: Path, files: dict[str, str | bytes]) -> Path:
    for name, content in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return root


def said(root: Path) -> list[str]:
    """Each problem as place, found and what to do; the folder itself as "."."""
    return [f"{each.place} {each.found}; {each.do}".replace(str(root), ".") for each in read_record(root)[1]]


def read(root: Path) -> RecordFiles:
    record, problems = read_record(root)
    assert problems == []
    return record


HOUSE: dict[str, str | bytes] = {"house.yaml": "house: Heron Lodge\n"}


def test_every_file_of_a_record_is_read_by_name(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        "boxes/den.yaml": "room: den\n",
        "circuits/den.yaml": "circuit: den\n",
        "devices/kinds.yaml": "devices: {}\n",
        "house.yaml": "house: Heron Lodge\n",
        "log.yaml": "- {date: 2026-03-04}\n",
        "notes/outage.md": "# Outage\n",
        "panels/main.yaml": "panel: main\n",
        "photos/den-north.JPG": b"\xff\xd8\xff",
        "photos/photos.yaml": "- {file: den-north.JPG}\n",
        "rooms/den.yaml": "room: den\n",
    }
    record = read(written(tmp_path, files))
    assert [each.file for each in record.sources] == sorted(files)
    assert [each.source.file for each in record.trees] == sorted(
        name for name in files if name.endswith(".yaml")
    )
    assert [tree.root for tree in record.part("panels")] == [{"panel": "main"}]
    assert [tree.part for tree in record.trees] == [
        "boxes", "circuits", "devices", "house", "log", "panels", "photos", "rooms",
    ]  # fmt: skip
    picture = next(each for each in record.sources if each.file.endswith("JPG"))
    assert picture == Source("photos/den-north.JPG", "", hashlib.sha256(b"\xff\xd8\xff").hexdigest())


def test_places_name_the_file_within_the_record(tmp_path: Path) -> None:
    record = read(written(tmp_path, {**HOUSE, "panels/main.yaml": "panel: main\nrating: 200 A\n"}))
    root = record.part("panels")[0].root
    assert isinstance(root, MarkedMap)
    assert root.key_places["rating"] == Place("panels/main.yaml", 2, 1)


def test_a_byte_order_mark_and_foreign_line_ends_are_fine(tmp_path: Path) -> None:
    record = read(written(tmp_path, {"house.yaml": b"\xef\xbb\xbfhouse: a\r\nbuilt: 1961\r\n"}))
    assert record.part("house")[0].root == {"house": "a", "built": 1961}


def test_hidden_files_are_passed_over(tmp_path: Path) -> None:
    read(written(tmp_path, {**HOUSE, ".git/config": "x", ".notes": "x", "rooms/.draft.yaml": "x"}))


def test_a_missing_house_file_says_where_it_was_looked_for(tmp_path: Path) -> None:
    assert said(written(tmp_path, {"rooms/den.yaml": "room: den\n"})) == [
        "house.yaml:1:1 no house.yaml in .; write a house.yaml there"
    ]


def test_of_a_folder_that_is_no_record_only_the_record_near_it_is_told(tmp_path: Path) -> None:
    written(
        tmp_path,
        {"mine/house.yaml": "house: a\n", "mine/rooms/den.yaml": "room: den\n", "a.txt": "", "b.yaml": ""},
    )
    assert said(tmp_path) == ["house.yaml:1:1 no house.yaml in .; give ./mine"]
    (problem,) = read_record(tmp_path / "mine/rooms")[1]
    assert problem.do == f"give {tmp_path / 'mine'}"


def test_a_house_file_under_another_name_is_told_where_there_is_none(tmp_path: Path) -> None:
    assert said(written(tmp_path, {"house.yml": "house: a\n", "list.txt": ""})) == [
        "house.yaml:1:1 no house.yaml in .; write a house.yaml there",
        "house.yml:1:1 house.yml is no part of a record and was not read; rename it to house.yaml",
    ]


def test_a_missing_folder_is_a_problem(tmp_path: Path) -> None:
    root = tmp_path / "nowhere"
    assert said(root) == [":1:1 there is no .; check the name"]


def test_a_file_in_place_of_the_folder_is_a_problem(tmp_path: Path) -> None:
    root = written(tmp_path, {"house.yaml": ""}) / "house.yaml"
    assert said(root) == [f":1:1 . is a file; give {tmp_path}"]


@pytest.mark.parametrize(
    ("name", "do"),
    [
        ("notes/outage.txt", "rename it to outage.md"),
        ("photos/den.heic", "save it as .jpg or .png if it is a picture, else move it elsewhere"),
        ("rooms/old/den.txt", "move its files up"),
        ("budget.xlsx", "move it elsewhere, or begin its name with a dot"),
        ("rom/plan.txt", "rename it to rooms"),
    ],
)
def test_a_stray_file_gets_a_warning_that_names_the_nearest(tmp_path: Path, name: str, do: str) -> None:
    record, problems = read_record(written(tmp_path, {**HOUSE, name: "x: 1\n"}))
    assert [(each.do, each.stops) for each in problems] == [(do, False)]
    assert record.unread == ()


@pytest.mark.parametrize(
    ("name", "do", "unread"),
    [
        ("box/den.yaml", "rename it to boxes", "boxes"),
        ("Rooms/den.yaml", "rename it to rooms", "rooms"),
        ("House.yml", "rename it to house.yaml", "circuits"),
        ("logs.yaml", "rename it to log.yaml", "circuits"),
        ("rooms/den.yml", "rename it to den.yaml", "rooms"),
        ("rooms/den.YAML", "rename it to den.yaml", "rooms"),
        ("rooms/den.yaml.txt", "rename it to den.yaml", "rooms"),
        ("photos/photo.yaml", "rename it to photos.yaml", "photos"),
        ("circuits/old/den.yaml", "move its files up", "circuits"),
        ("circuits/den.yaml/den.txt", "move its files up", "circuits"),
        (
            "main.yaml",
            "move it into panels, circuits, rooms, boxes or devices, or begin its name with a dot",
            "panels",
        ),
    ],
)
def test_what_looks_like_a_part_of_the_record_is_not_passed_over(
    tmp_path: Path, name: str, do: str, unread: str
) -> None:
    record, problems = read_record(written(tmp_path, {**HOUSE, name: "x: 1\n"}))
    assert [(each.do, each.stops) for each in problems] == [(do, True)]
    assert unread in [each.split("/")[0] for each in record.unread]


def test_a_file_that_is_not_utf_8_names_the_byte_and_its_place(tmp_path: Path) -> None:
    root = written(tmp_path, {**HOUSE, "rooms/den.yaml": "room: den\nname: é caf".encode() + b"\xe9\n"})
    assert said(root) == ["rooms/den.yaml:2:12 the byte 0xE9 is not UTF-8; save it again as UTF-8"]
    record, _ = read_record(root)
    assert record.line_at(Place("rooms/den.yaml", 2, 12)) == "name: é caf\ufffd"


def test_a_utf_16_file_is_known_as_one(tmp_path: Path) -> None:
    root = written(tmp_path, {"house.yaml": "house: a\n".encode("utf-16")})
    assert said(root) == ["house.yaml:1:1 this file is saved as UTF-16; save it again as UTF-8"]


@pytest.mark.parametrize(
    ("name", "text", "found"),
    [
        ("rooms/den.yaml", "", "the file is empty"),
        ("rooms/den.yaml", "- den\n", "rooms/den.yaml is a list"),
        ("rooms/den.yaml", "den\n", "rooms/den.yaml is a single value"),
        ("log.yaml", "date: 2026-03-04\n", "log.yaml is a mapping"),
        ("photos/photos.yaml", "5\n", "photos/photos.yaml is a single value"),
    ],
)
def test_a_file_of_the_wrong_shape_is_a_problem(tmp_path: Path, name: str, text: str, found: str) -> None:
    record, problems = read_record(written(tmp_path, {**HOUSE, name: text}))
    assert [(each.place, each.found, each.stops) for each in problems] == [(Place(name, 1, 1), found, True)]
    assert [tree.source.file for tree in record.trees] == ["house.yaml"]


def test_an_empty_log_is_a_list_with_nothing_in_it(tmp_path: Path) -> None:
    assert read(written(tmp_path, {**HOUSE, "log.yaml": "[]\n"})).part("log")[0].root == []


def test_problems_of_all_files_come_together_in_order(tmp_path: Path) -> None:
    root = written(
        tmp_path, {**HOUSE, "rooms/b.yaml": "a: 1\na: 2\n", "rooms/a.yaml": "x: @y\n", "boxes/a.yaml": ""}
    )
    assert [str(each.place) for each in read_record(root)[1]] == [
        "boxes/a.yaml:1:1", "rooms/a.yaml:1:4", "rooms/b.yaml:2:1",
    ]  # fmt: skip


def test_links_that_lead_nowhere_or_round_are_problems(tmp_path: Path) -> None:
    root = written(tmp_path, {**HOUSE, "rooms/den.yaml": "room: den\n"})
    (root / "rooms" / "round.yaml").symlink_to("round.yaml")
    (root / "rooms" / "void.yaml").symlink_to("gone.yaml")
    (root / "panels").symlink_to("panels")
    _, problems = read_record(root)
    assert [(each.place.file, each.stops) for each in problems] == [
        ("panels", True), ("rooms/round.yaml", True), ("rooms/void.yaml", True),
    ]  # fmt: skip


def test_a_linked_file_is_read_like_any_other(tmp_path: Path) -> None:
    root = written(tmp_path, {"kept/elsewhere.yaml": "house: a\n", "record/notes/x.md": "x"}) / "record"
    (root / "house.yaml").symlink_to("../kept/elsewhere.yaml")
    assert read(root).part("house")[0].root == {"house": "a"}


def test_a_folder_where_a_file_is_due_is_a_problem(tmp_path: Path) -> None:
    (tmp_path / "house.yaml").mkdir()
    assert said(tmp_path) == ["house.yaml:1:1 house.yaml is no file; rename or mend it"]


def test_a_pipe_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(written(tmp_path, {**HOUSE, "rooms/den.yaml": "room: den\n"}) / "rooms" / "pipe.yaml")
    assert said(tmp_path)[0].startswith("rooms/pipe.yaml:1:1 rooms/pipe.yaml is no ordinary file")


def test_what_may_not_be_read_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = written(tmp_path, {**HOUSE, "rooms/den.yaml": "room: den\n"})
    opened = Path.open

    def refused(path: Path, *args: Any) -> Any:
        if path.name == "den.yaml":
            raise PermissionError(13, "Permission denied", str(path))
        return opened(path, *args)

    monkeypatch.setattr(Path, "open", refused)
    assert said(root) == [
        "rooms/den.yaml:1:1 rooms/den.yaml cannot be read: permission denied; check it and who may read it"
    ]


def test_a_file_beyond_the_cap_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folder, "MAX_TEXT_BYTES", 2_000_000)
    root = written(tmp_path, {**HOUSE, "log.yaml": "# " + "x" * 2_000_000})
    assert said(root) == ["log.yaml:1:1 log.yaml is larger than 2 MB; split it or scale it down"]


def test_a_file_name_that_is_not_utf_8_is_a_problem(tmp_path: Path) -> None:
    root = written(tmp_path, {**HOUSE, "rooms/den.yaml": "room: den\n"})
    try:
        (root / "rooms" / os.fsdecode(b"caf\xe9.yaml")).write_text("room: x\n")
    except OSError:
        pytest.skip("this file system takes no such name")
    assert said(root) == ["rooms/caf\\xe9.yaml:1:1 caf\\xe9.yaml has a name that is not UTF-8; rename it"]


def test_the_digest_is_that_of_the_sorted_list_of_sums() -> None:
    one, two = Source("b.yaml", "", "1" * 64), Source("a.yaml", "", "2" * 64)
    listed = f"{'2' * 64}  a.yaml\n{'1' * 64}  b.yaml\n"
    assert digest([two, one]) == digest([one, two]) == hashlib.sha256(listed.encode()).hexdigest()


def test_the_digest_changes_with_any_byte_of_any_file(tmp_path: Path) -> None:
    before = read(written(tmp_path, {**HOUSE, "photos/a.png": b"1"})).digest
    assert read(written(tmp_path, {"photos/a.png": b"2"})).digest != before


def test_a_place_leads_to_its_line_and_a_caret_under_it() -> None:
    sources = [Source("a.yaml", "one\r\n\ttwo: three\r\n", "")]
    line = source_line(Place("a.yaml", 2, 7), sources)
    assert line == "\ttwo: three"
    assert caret(Place("a.yaml", 2, 7), line) == "\t     ^"
    assert caret(Place("a.yaml", 1, 6), "one") == "     ^"
    assert source_line(Place("a.yaml", 9, 1), sources) is None
    assert source_line(Place("b.yaml", 1, 1), sources) is None
