"""Walking a folder of data: what becomes a thing, and what in a folder is met with words."""

import os
import socket
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from benchsheaf.documents import Reading, read_folder
from benchsheaf.mistakes import Place


@pytest.fixture
def machines(tmp_path: Path) -> Path:
    """A folder of data with one good machine and one good drive."""
    root = tmp_path / "machines"
    for name, text in {
        "sketch-1/identity.yml": "name: Sketch-1\nbus: l-bus\n",
        "sketch-1/boards.yml": "boards:\n  - id: main\n    parts: [{ref: C7, rated: 16 V}]\n",
        "_parts/drives/ov-hd14.yml": "name: OV-HD14\n",
        "_shared/cautions.yml": "cautions: [{id: earth, order: Check the earth.}]\n",
    }.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")
    return root


def told(reading: Reading) -> list[str]:
    """Mistakes as file, line and code."""
    return [f"{each.place.file}:{each.place.line} {each.code.id}" for each in reading.mistakes]


def test_things_are_found_by_kind_and_slug(machines: Path) -> None:
    """A machine has all its files, a part its one, and the two shared files are things too."""
    reading = read_folder(machines)
    assert reading.mistakes == []
    assert reading.broken == frozenset()
    assert list(reading.entries) == [
        ("drive", "ov-hd14"),
        ("cautions", "cautions"),
        ("machine", "sketch-1"),
    ]
    machine = reading.entries["machine", "sketch-1"]
    assert list(machine.values) == ["boards", "name", "bus"]
    assert [document.file for document in machine.documents] == [
        "machines/sketch-1/boards.yml",
        "machines/sketch-1/identity.yml",
    ]


def test_places_are_found_by_path(machines: Path) -> None:
    """A value, its key, what is around a missing one, and the file as a whole."""
    machine = read_folder(machines).entries["machine", "sketch-1"]
    boards = "machines/sketch-1/boards.yml"
    assert machine.place(("boards", 0, "parts", 0, "rated")) == Place(file=boards, line=3, column=30)
    assert machine.key_place(("boards", 0, "parts", 0, "rated")) == Place(file=boards, line=3, column=23)
    assert machine.place(("boards", 0, "parts", 0, "value")) == Place(file=boards, line=3, column=13)
    assert machine.place(("boards", 0, "parts", 7)) == Place(file=boards, line=3, column=12)
    assert machine.key_place(("boards", 0)) == Place(file=boards, line=2, column=5)
    assert machine.place(("rails", 0)) == machine.file_place()
    assert machine.file_place() == Place(file="machines/sketch-1/identity.yml")


def test_a_key_in_two_files_is_told_at_the_second(machines: Path) -> None:
    """Each top-level key of a machine stands in one file; the words name the first."""
    (machines / "sketch-1" / "more.yml").write_text("worth: 5\nname: Other\n")
    reading = read_folder(machines)
    assert told(reading) == ["machines/sketch-1/more.yml:2 FILE-16"]
    words = "`name` already stands in machines/sketch-1/identity.yml, line 1. Keep one of the two."
    assert reading.mistakes[0].sentence == words
    assert reading.entries["machine", "sketch-1"].values["name"] == "Sketch-1"


def test_what_could_not_be_read_whole_is_known(machines: Path) -> None:
    """Other rooms must not complain that something is missing which may stand in the unread file."""
    (machines / "sketch-1" / "power.yml").write_text("rails: @\n")
    (machines / "_parts" / "drives" / "ov-fd7.yml").write_text("")
    reading = read_folder(machines)
    assert told(reading) == ["machines/_parts/drives/ov-fd7.yml:0 FILE-09", "machines/sketch-1/power.yml:1 YAML-16"]
    assert reading.broken == {("machine", "sketch-1"), ("drive", "ov-fd7")}
    assert ("machine", "sketch-1") in reading.entries
    assert ("drive", "ov-fd7") not in reading.entries


@pytest.mark.parametrize(
    "name,shown,code,nearest",
    [
        ("sketch-1/power.yaml", "sketch-1/power.yaml", "FILE-11", "power.yml"),
        ("sketch-1/power.YML", "sketch-1/power.YML", "FILE-11", "power.yml"),
        ("sketch-1/power.yml.txt", "sketch-1/power.yml.txt", "FILE-11", "power.yml"),
        ("sketch-1/power.json", "sketch-1/power.json", "FILE-11", None),
        ("sketch-1/boards.yml~", "sketch-1/boards.yml~", "FILE-11", None),
        ("sketch-1/.power.yml", "sketch-1/.power.yml", "FILE-14", None),
        ("sketch-1/Power.yml", "sketch-1/Power.yml", "FILE-14", "power.yml"),
        ("sketch-1/Boards.yml", "sketch-1/Boards.yml", "FILE-17", None),
        ("sketch-1/my power.yml", "sketch-1/my power.yml", "FILE-14", "my-power.yml"),
        ("sketch-1/.yml", "sketch-1/.yml", "FILE-11", None),
        ("sketch-1/con.yml", "sketch-1/con.yml", "FILE-15", None),
        ("sketch-1/new\nline.yml", "sketch-1/new\nline.yml", "FILE-14", "new-line.yml"),
        ("sketch-1/\x1b[31m.yml", "sketch-1/\x1b[31m.yml", "FILE-14", None),
        ("sketch-1/photo/a.yml", "sketch-1/photo", "FILE-13", "photos"),
        ("sketch-1/photos.yml/a.yml", "sketch-1/photos.yml", "FILE-02", None),
        ("Sketch-1/a.yml", "Sketch-1", "FILE-17", None),
        ("Sketch-2/a.yml", "Sketch-2", "FILE-14", "sketch-2"),
        ("aux/a.yml", "aux", "FILE-15", None),
        ("com1/a.yml", "com1", "FILE-15", None),
        ("-a/a.yml", "-a", "FILE-14", None),
        ("a.b/a.yml", "a.b", "FILE-14", None),
        ("a" * 49 + "/a.yml", "a" * 49, "FILE-14", None),
        ("sketché/a.yml", "sketché", "FILE-14", None),
        ("_part/drives/a.yml", "_part", "FILE-13", "_parts"),
        ("_parts/drive/a.yml", "_parts/drive", "FILE-13", "drives"),
        ("_parts/drives.yml", "_parts/drives.yml", "FILE-13", "drives"),
        ("_parts/drives/old/a.yml", "_parts/drives/old", "FILE-02", None),
        ("_parts/drives/nul.yml", "_parts/drives/nul.yml", "FILE-15", None),
        ("_shared/caution.yml", "_shared/caution.yml", "FILE-13", "cautions.yml"),
        ("sketch-2.yml", "sketch-2.yml", "FILE-12", None),
        ("README.md", "README.md", "FILE-12", None),
    ],
)
def test_what_lies_in_a_wrong_place(machines: Path, name: str, shown: str, code: str, nearest: str | None) -> None:
    """A file that would be passed over silently, and a name that some system cannot hold."""
    path = machines / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("a: b\n", encoding="utf-8")
    reading = read_folder(machines)
    assert told(reading) == [f"machines/{shown}:0 {code}"]
    assert reading.mistakes[0].nearest == nearest


def test_names_at_the_limit_are_taken(machines: Path) -> None:
    """Forty-eight signs are not too many, and a device's name inside a longer one is none."""
    for name in ("a" * 48, "0", "con-1", "com10", "lpt"):
        (machines / name).mkdir()
        (machines / name / "a.yml").write_text("name: b\n")
    reading = read_folder(machines)
    assert reading.mistakes == []
    assert ("machine", "a" * 48) in reading.entries


def test_repair_records_are_read_with_their_machine(machines: Path) -> None:
    """A record is a thing of its own, named after its machine; no other ending belongs there."""
    folder = machines / "sketch-1" / "repairs"
    folder.mkdir()
    (folder / "2019-ticks.yml").write_text("told: a\n", encoding="utf-8")
    (folder / "notes.txt").write_text("a", encoding="utf-8")
    reading = read_folder(machines)
    assert reading.entries["repair", "sketch-1/2019-ticks"].values == {"told": "a"}
    assert told(reading) == ["machines/sketch-1/repairs/notes.txt:0 FILE-11"]


def test_what_systems_and_later_work_put_there_is_passed_over(machines: Path) -> None:
    """Hidden files and photographs are no data files."""
    for name in (".keep", "sketch-1/.listing", "sketch-1/photos/front.jpg", "sketch-1/repairs/.keep"):
        (machines / name).parent.mkdir(exist_ok=True)
        (machines / name).write_bytes(b"\x00")
    assert read_folder(machines).mistakes == []


def test_a_machine_without_files_is_told(machines: Path) -> None:
    """An empty folder is a machine that somebody forgot."""
    (machines / "sketch-2").mkdir()
    reading = read_folder(machines)
    assert told(reading) == ["machines/sketch-2:0 FILE-18"]
    assert reading.broken == {("machine", "sketch-2")}


def test_links_are_not_followed(machines: Path, tmp_path: Path) -> None:
    """Not to a file, not to a folder, not to nothing; what they point to is never shown."""
    secret = tmp_path / "secret"
    secret.write_text("name: secret\n")
    (tmp_path / "elsewhere").mkdir()
    (machines / "sketch-1" / "linked.yml").symlink_to(secret)
    (machines / "sketch-1" / "lost.yml").symlink_to(tmp_path / "nowhere")
    (machines / "sketch-1" / "photos").symlink_to(tmp_path / "elsewhere")
    (machines / "sketch-1" / "notes.txt").symlink_to(secret)
    (machines / "sketch-2").symlink_to(tmp_path / "elsewhere")
    (machines / "_parts" / "cards").symlink_to(tmp_path / "elsewhere")
    reading = read_folder(machines)
    names = (
        "_parts/cards",
        "sketch-1/linked.yml",
        "sketch-1/lost.yml",
        "sketch-1/notes.txt",
        "sketch-1/photos",
        "sketch-2",
    )
    assert told(reading) == [f"machines/{name}:0 FILE-01" for name in names]
    assert not any("secret" in mistake.sentence for mistake in reading.mistakes)


def test_pipes_and_sockets_are_not_opened(machines: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A pipe that is named like a data file must not make the reader wait for ever."""
    folder = machines / "sketch-1"
    os.mkfifo(folder / "pipe.yml")
    monkeypatch.chdir(folder)  # the path of a socket may only be a hundred signs long
    with socket.socket(socket.AF_UNIX) as listening:
        listening.bind("socket.yml")
        reading = read_folder(machines)
    assert told(reading) == ["machines/sketch-1/pipe.yml:0 FILE-02", "machines/sketch-1/socket.yml:0 FILE-02"]
    assert [each.sentence.split(",")[0] for each in reading.mistakes] == ["This is a pipe", "This is a socket"]


@pytest.mark.skipif(os.geteuid() != 0, reason="only the superuser can make a device")
def test_devices_are_not_opened(machines: Path) -> None:
    """Reading a device can rewind a tape, or never end."""
    try:
        os.mknod(machines / "sketch-1" / "zero.yml", 0o020644, os.makedev(1, 5))
    except PermissionError:
        pytest.skip("devices cannot be made here")
    assert told(read_folder(machines)) == ["machines/sketch-1/zero.yml:0 FILE-02"]


@contextmanager
def nobody(folder: Path) -> Iterator[None]:
    """As a user without rights of their own; the superuser may read everything."""
    if os.geteuid() != 0:
        yield
        return
    for parent in (folder, *folder.parents):
        if parent.stat().st_uid == 0 and parent not in (Path("/"), Path("/tmp")):
            parent.chmod(parent.stat().st_mode | 0o055)
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


def test_what_may_not_be_read_is_told(machines: Path) -> None:
    """A file and a folder without rights; the rest is read all the same."""
    (machines / "sketch-1" / "power.yml").write_text("rails: [a]\n")
    (machines / "sketch-1" / "power.yml").chmod(0)
    (machines / "sketch-2").mkdir(mode=0)
    (machines / "sketch-2").chmod(0)
    with nobody(machines):
        reading = read_folder(machines)
    (machines / "sketch-2").chmod(0o755)
    assert told(reading) == ["machines/sketch-1/power.yml:0 FILE-03", "machines/sketch-2:0 FILE-03"]
    assert {each.sentence for each in reading.mistakes} == {"This cannot be read: its rights do not allow it."}
    assert reading.entries["machine", "sketch-1"].values["name"] == "Sketch-1"


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    """Nothing to read is said, not passed over."""
    reading = read_folder(tmp_path / "machines")
    assert told(reading) == ["machines:0 FILE-03"]
    assert reading.mistakes[0].sentence == "This cannot be read: it is not there."


def test_a_large_file_is_not_read_whole(machines: Path) -> None:
    """A file of 1 MB is refused by its size."""
    (machines / "sketch-1" / "big.yml").write_bytes(b"a: " + b"b" * 1_000_000)
    assert told(read_folder(machines)) == ["machines/sketch-1/big.yml:0 FILE-04"]


def test_the_order_is_that_of_names(machines: Path) -> None:
    """The same folder gives the same reading, whatever order the system lists it in."""
    for name in ("b", "a", "c"):
        (machines / name).mkdir()
        (machines / name / "x.yml").write_text("name: null\n")
    first = read_folder(machines)
    assert told(first) == [f"machines/{name}/x.yml:1 YAML-12" for name in "abc"]
