"""What the notes of the first machine say of checks, faults, complaints and repairs, against the exported data."""

from collections import Counter
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from expected import written
from test_notes import exported

NOTES = written("references/notes-bench-a.yml")
CHECKS, FAULTS = NOTES["checks"], NOTES["faults"]
MACHINE = "machines/ostervane-bureau-8"
STAGES = {"runs": "one-at-a-time", "screen-good": "picture"}

Facts = dict[str, Any]


@pytest.fixture(scope="module")
def documents(repository: Path) -> Facts:
    """The data files of the site by their names."""
    return exported(repository / "machines")


@pytest.fixture(scope="module")
def machine(documents: Facts) -> Facts:
    """The facts of the machine itself."""
    facts: Facts = documents[MACHINE]["facts"]
    return facts


def of_all(documents: Facts, section: str) -> dict[str, Facts]:
    """One section of the machine and of all shared things, by the names that the machine's own file would write."""
    found = {}
    for name, document in documents.items():
        slug = name.rpartition("/")[2]
        before = "" if name == MACHINE else f"{slug}/"
        for each in document.get("facts", {}).get(section, ()):
            found[before + each["id"]] = each
    return found


def full_name(names: dict[str, Facts], name: str, beside: str) -> str:
    """The name of a check as the machine writes it, where it stands in the file of `beside`."""
    slug = beside.rpartition("/")[0]
    return name if "/" in name or not slug or f"{slug}/{name}" not in names else f"{slug}/{name}"


def named(checks: list[str]) -> set[str]:
    """The names that our descriptions have for checks of the notes."""
    return {CHECKS[each]["name"] for each in checks}


def outcome_named(check: str, says: str) -> str:
    """The name that our descriptions have for an outcome in the notes' words."""
    (name,) = [each["name"] for each in CHECKS[check]["outcomes"] if each["says"] == says]
    return str(name)


def test_the_notes_are_whole() -> None:
    """22 checks, 40 faults whose weights make 180, 14 complaints, 8 removals, 5 records: the notes' own sums."""
    assert len(CHECKS) == 22
    assert len(FAULTS) == 40
    assert sum(int(each["weight"]) for each in FAULTS) == 180
    assert [len(NOTES[each]) for each in ("symptoms", "removals", "records")] == [14, 8, 5]


def test_no_more_is_described_than_noted(documents: Facts) -> None:
    """Checks, faults, complaints, removals and records are those of the notes, and the weights make 180."""
    assert set(of_all(documents, "checks")) == named(list(CHECKS))
    faults = of_all(documents, "faults")
    assert set(faults) == {each["name"] for each in FAULTS}
    assert sum(each["weight"] for each in faults.values()) == 180
    assert len(of_all(documents, "symptoms")) == len(NOTES["symptoms"])
    assert len(of_all(documents, "removals")) == len(NOTES["removals"])
    assert len(documents[MACHINE]["repairs"]) == len(NOTES["records"])


@pytest.mark.parametrize("label", CHECKS)
def test_a_check_is_that_of_the_notes(documents: Facts, label: str) -> None:
    """Minutes, power, removals, gates, outcomes in order, stops and shares of conditions."""
    noted, checks = CHECKS[label], of_all(documents, "checks")
    name = noted["name"]
    check = checks[name]
    assert (check["takes_minutes"], check.get("waits_minutes", 0)) == (
        int(noted["minutes"]),
        int(noted.get("waiting", 0)),
    )
    assert check["power"] == noted["power"]
    assert (check["by"] == "senses") == bool(noted.get("senses"))
    assert check.get("removed", []) == noted["removal_first"]
    for gate in ("after", "means_after"):
        stages = [STAGES[each] for each in check.get(f"{gate}_stage", ())]
        assert {full_name(checks, each, name) for each in [*check.get(gate, ()), *stages]} == named(noted[gate])
    assert [each["id"] for each in check["outcomes"]] == [each["name"] for each in noted["outcomes"]]
    assert [bool(each.get("stop")) for each in check["outcomes"]] == [bool(e.get("stop")) for e in noted["outcomes"]]
    unreached = outcome_named(label, noted["unreached"]) if "unreached" in noted else None
    assert check.get("unreached") == unreached


def test_conditions_have_the_shares_of_the_notes(documents: Facts) -> None:
    """The share of a condition stands at the weak part that the outcome points at."""
    checks, weak = of_all(documents, "checks"), of_all(documents, "weak_parts")
    shares = {}
    for name, check in checks.items():
        for each in check["outcomes"]:
            if "condition" in each:
                shares[name, each["id"]] = weak[each["condition"]]["prevalence_share"]
    assert shares == {
        (noted["name"], each["name"]): Decimal(str(each["prevalence"]))
        for noted in CHECKS.values()
        for each in noted["outcomes"]
        if "prevalence" in each
    }


def test_the_stages_are_proven_where_the_notes_have_their_gates(machine: Facts) -> None:
    """What the drives wait for: it runs with all, and the letters are right. Source: gates of K12, K13 and K21."""
    proven = {each["proves"]: each["id"] for each in machine["checks"] if "proves" in each}
    assert {stage: proven[stage] for stage in STAGES} == STAGES


@pytest.mark.parametrize("noted", FAULTS, ids=lambda noted: f"fault {noted['fault']}")
def test_a_fault_is_that_of_the_notes(documents: Facts, machine: Facts, noted: Facts) -> None:
    """Weight, minutes, waiting, whether it can be undone, and every row of what it changes, own and here."""
    name = noted["name"]
    fault, checks = of_all(documents, "faults")[name], of_all(documents, "checks")
    here = [row for each in machine.get("shows_here", ()) if each["fault"] == name for row in each["shows"]]
    rows = [(full_name(checks, row["check"], name), row) for row in fault.get("shows", ())]
    rows += [(row["check"], row) for row in here]
    assert Counter((check, row["outcome"], row.get("likelihood_share")) for check, row in rows) == Counter(
        (
            CHECKS[each["check"]]["name"],
            outcome_named(each["check"], each["outcome"]),
            Decimal(str(each["likelihood"])) if "likelihood" in each else None,
        )
        for each in noted["changes"]
    )
    assert fault["weight"] == int(noted["weight"])
    assert fault["fix"]["takes_minutes"] == int(noted["fix_minutes"])
    assert fault["fix"].get("waits_minutes", 0) == 60 * int(noted["waiting_hours"])
    assert (fault["fix"].get("undo") is False) == (noted["undo"] == "no")


@pytest.mark.parametrize("noted", NOTES["symptoms"], ids=lambda noted: noted["says"])
def test_a_complaint_has_the_suspects_of_the_notes(documents: Facts, noted: Facts) -> None:
    """The same suspects in the same order, and weights that make the sum of the notes."""
    (symptom,) = [each for each in documents[MACHINE]["facts"]["symptoms"] if each["says"] == noted["says"]]
    faults = of_all(documents, "faults")
    names = {each["fault"]: each["name"] for each in FAULTS}
    assert symptom["suspects"] == [names[each] for each in noted["faults"]]
    assert sum(faults[each]["weight"] for each in symptom["suspects"]) == int(noted["sum"])


def test_removals_are_those_of_the_notes(machine: Facts) -> None:
    """Minutes, and what must be off first."""
    assert [(each["id"], each["off_minutes"], each.get("after", [])) for each in machine["removals"]] == [
        (each["name"], int(each["minutes"]), each["after"]) for each in NOTES["removals"]
    ]


@pytest.mark.parametrize("noted", NOTES["records"], ids=lambda noted: noted["record"])
def test_a_record_is_that_of_the_notes(documents: Facts, noted: Facts) -> None:
    """Complaint, checks with their outcomes, what it was, minutes, and the notes' sum of checks and fixes."""
    (record,) = [each for each in documents[MACHINE]["repairs"] if each["slug"].endswith(f"/{noted['record']}")]
    names = {each["fault"]: each["name"] for each in FAULTS}
    assert record["date"] == str(noted["year"])
    assert record["owner"].casefold() == noted["owner"].casefold()
    assert [(each["check"], each["outcome"]) for each in record["entries"]] == [
        (CHECKS[each["check"]]["name"], outcome_named(each["check"], each["outcome"])) for each in noted["entries"]
    ]
    assert record["found"] == [names[each] for each in noted["found"]]
    assert record.get("tried", []) == [names[each] for each in noted.get("in_vain", ())]
    assert (record["took_minutes"], record.get("waited_minutes", 0)) == (
        int(noted["minutes"]),
        60 * int(noted.get("waiting_hours", 0)),
    )
    (figures,) = [each for each in documents[MACHINE]["figures"]["bench"]["repairs"] if each["slug"] == record["slug"]]
    assert figures["checks_minutes"] + figures["fixes_minutes"] == int(noted["table_sum"])


def test_every_complaint_begins_with_what_it_proves(machine: Facts) -> None:
    """Each says what it proves, and none clears a check that stands before power: words prove no fuse and no earth."""
    assert [each["id"] for each in machine["symptoms"] if not each.get("known")] == []
    known = {row["check"] for each in machine["symptoms"] for row in each["known"]}
    assert known & set(machine["before_power"]) == set()


def test_wrong_letters_prove_what_the_notes_say(machine: Facts) -> None:
    """Letters want rails, clock and start sound: K2, K3, K4, K16, K8. Source: the notes beside the machine's own."""
    (symptom,) = [each for each in machine["symptoms"] if each["id"] == "wrong-letters"]
    healthy = {check["id"]: check["outcomes"][0]["id"] for check in machine["checks"]}
    known = {row["check"]: row["outcome"] for row in symptom["known"]}
    assert named(["K2", "K3", "K4", "K16", "K8"]) <= set(known)
    assert all(healthy[check] == outcome for check, outcome in known.items())
