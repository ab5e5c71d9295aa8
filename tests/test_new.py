"""A description begun by the command: nothing in it passes for a fact, and filled in it is right."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchsheaf.cli import main
from benchsheaf.documents import PART_FOLDERS
from benchsheaf.fields import built_in_schemas, starting_text
from benchsheaf.site import judgement

FOLDERS = {kind: folder for folder, kind in PART_FOLDERS.items() if kind in built_in_schemas().kinds}


@pytest.fixture
def data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder of descriptions, beside which the command is run."""
    (tmp_path / "machines").mkdir()
    monkeypatch.chdir(tmp_path)
    return tmp_path / "machines"


def told(*words: str) -> Result:
    """What the command answers."""
    return CliRunner().invoke(main, list(words))


def begun(data: Path, kind: str) -> Path:
    """A file of one kind as the command begins it."""
    assert told("new", "sketch-1", "--kind", kind).exit_code == 0
    return data / "sketch-1" / "machine.yml" if kind == "machine" else data / "_parts" / FOLDERS[kind] / "sketch-1.yml"


def indent_of(line: str) -> int:
    """How far in the key of a line stands, behind the hyphen of an item; of an empty item, the hyphen itself."""
    return len(line) - len(line.lstrip(" ") if line.strip() == "-" else line.lstrip(" -"))


def blanks(text: str) -> list[int]:
    """The numbers of lines at which nothing is written, nor on deeper lines below; comments are passed over."""
    lines = [(number, line) for number, line in enumerate(text.splitlines(), 1) if line.strip(" ") and "#" not in line]
    following = [*(indent_of(line) for _, line in lines[1:]), 0]
    return [
        number
        for (number, line), after in zip(lines, following, strict=True)
        if line.strip() == "-" or (line.endswith(":") and after <= indent_of(line))
    ]


def filled(text: str) -> str:
    """The text with the example of the comment above written at each blank; a second one gets a name of its own."""
    empty = set(blanks(text))
    lines: list[str] = []
    known: dict[str, str] = {}
    example = ""
    for number, line in enumerate(text.splitlines(), 1):
        words = line.strip().removeprefix("#").strip()
        if line.strip().startswith("#"):
            example = (
                words.partition("For example: ")[2] if "For example: " in words else example and f"{example} {words}"
            )
        elif number in empty:
            key = line.strip(" -:")
            value = example or f"{known[key]}-2"
            known[key], example = value, ""
            line += f" {json.dumps(value if key else value.partition(', ')[0], ensure_ascii=False)}"
        lines.append(line)
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("kind", ["machine", *FOLDERS])
def test_every_blank_is_told_once_with_what_belongs_there(kind: str, data: Path) -> None:
    """A file just begun has a mistake for each empty line, at that line, in words, and no other mistake."""
    path = begun(data, kind)
    wanted = blanks(path.read_text(encoding="utf-8"))
    mistakes = judgement(data).mistakes
    assert len(wanted) >= 2
    assert [each.place.line for each in mistakes] == wanted
    assert {each.code.id for each in mistakes} == {"FIELD-06"}
    assert all("Write for example `" in each.sentence for each in mistakes)
    answer = told("check", str(path))
    assert answer.exit_code == 1
    assert "Nothing is written here yet: " in answer.output


@pytest.mark.parametrize("kind", ["machine", *FOLDERS])
def test_no_value_stands_in_it(kind: str) -> None:
    """Behind no colon is there anything but what was given to the command."""
    whole = built_in_schemas().kinds[kind]
    for given in ({}, {"name": "Sketch-1"}):
        lines = [line for line in starting_text(whole, given).splitlines() if line.strip() and "#" not in line]
        values = {line.partition(":")[2].strip() for line in lines}
        assert values == {"", *given.values()}


def test_filled_in_it_is_right(data: Path) -> None:
    """With the examples of its comments written at its blanks a machine and its supply have no mistake."""
    for kind, slug in (("machine", "sketch-1"), ("supply", "sp-96")):
        assert told("new", slug, "--kind", kind).exit_code == 0
    for path in (data / "sketch-1" / "machine.yml", data / "_parts" / "supplies" / "sp-96.yml"):
        # The rail of the example machine is +5 V, and a supply gives the rails of its machine.
        text = filled(path.read_text(encoding="utf-8")).replace('rail: "+12 V"', 'rail: "+5 V"')
        path.write_text(text, encoding="utf-8")
    answer = told("check")
    assert answer.output == "No mistakes.\n"
    assert answer.exit_code == 0


def test_the_name_is_written_as_it_was_given(data: Path) -> None:
    """A name with signs that mean something in a data file is put in quotes and read back."""
    answer = told("new", "sketch-1", "--name", "Sketch: 1")
    assert answer.exit_code == 0
    assert "machines/sketch-1/machine.yml" in answer.output.replace("\\", "/")
    assert 'name: "Sketch: 1"\n' in (data / "sketch-1" / "machine.yml").read_text(encoding="utf-8")
    assert "name" not in {each.path for each in judgement(data).mistakes}


def test_what_keeps_from_harm_is_asked_for_first(data: Path) -> None:
    """Of what may be told besides, that which keeps somebody from harm stands first."""
    rest = begun(data, "machine").read_text(encoding="utf-8").partition("What else can be told")[2]
    # Safety comes before all else: design, section 8.
    assert rest.index("# weak_parts:") < rest.index("# bus:")
    assert rest.index("# cautions:") < rest.index("# bus:")
    assert "keeps somebody from harm" in rest


@pytest.mark.parametrize("slug", ["Sketch", "sketch_1", "a b", "con", "../x", "", "x" * 49, "é"])
def test_a_bad_name_is_wrong_use(slug: str, data: Path) -> None:
    """A name that no address or file system can hold is refused in a sentence, and nothing is made."""
    answer = told("new", slug)
    assert answer.exit_code == 2
    assert "cannot be a name" in answer.output
    assert list(data.parent.rglob("*")) == [data]


@pytest.mark.parametrize("kind", ["machine", "supply"])
def test_what_is_there_is_left_alone(kind: str, data: Path) -> None:
    """A name that is taken is wrong use, and what stands there stays as it was."""
    path = begun(data, kind)
    path.write_text("name: Mine\n", encoding="utf-8")
    answer = told("new", "sketch-1", "--kind", kind)
    assert answer.exit_code == 2
    assert "already" in answer.output
    assert path.read_text(encoding="utf-8") == "name: Mine\n"


@pytest.mark.usefixtures("data")
def test_a_folder_that_is_not_there_is_wrong_use() -> None:
    """No folder of descriptions is made by a slip of the keyboard."""
    answer = told("new", "sketch-1", "--folder", "machinse")
    assert answer.exit_code == 2
    assert "machinse" in answer.output
    assert not Path("machinse").exists()


@pytest.mark.usefixtures("data")
def test_schemas_are_written_into_a_folder() -> None:
    """With --into each schema gets a file, the same as is printed; a folder that cannot be made is wrong use."""
    assert told("schema", "--into", "editor/schemas").exit_code == 0
    files = {path.name: json.loads(path.read_text(encoding="ascii")) for path in Path("editor/schemas").iterdir()}
    assert {"machine.schema.json", "machine-file.schema.json", "supply.schema.json"} <= set(files)
    assert files["bus.schema.json"] == json.loads(told("schema", "bus").output)
    Path("taken").write_text("", encoding="utf-8")
    assert told("schema", "--into", "taken/deeper").exit_code == 2


def test_a_repair_record_is_begun_beside_its_machine(data: Path) -> None:
    """It is called MACHINE/NAME and lies in the machine's folder of records; its blanks are told, nothing else."""
    assert told("new", "sketch-1", "--name", "Sketch-1").exit_code == 0
    answer = told("new", "sketch-1/2019-ticks", "--kind", "repair")
    assert answer.exit_code == 0, answer.output
    assert (data / "sketch-1" / "repairs" / "2019-ticks.yml").is_file()
    of_record = [each for each in judgement(data).mistakes if "repairs" in each.place.file]
    assert {each.code.id for each in of_record} == {"FIELD-06"}
    assert told("new", "sketch-1/2019-ticks", "--kind", "repair").exit_code == 2


@pytest.mark.parametrize(
    "slug", ["2019-ticks", "sketch-9/2019-ticks", "sketch-1/", "/2019", "sketch-1/a/b", "../sketch-1/x"]
)
def test_a_record_of_no_machine_is_refused(data: Path, slug: str) -> None:
    """A record without its machine, of one that is not there, or with a name that is none, is answered in words."""
    assert told("new", "sketch-1", "--name", "Sketch-1").exit_code == 0
    answer = told("new", slug, "--kind", "repair")
    assert answer.exit_code == 2
    assert "Traceback" not in answer.output
    assert not list(data.rglob("repairs"))
