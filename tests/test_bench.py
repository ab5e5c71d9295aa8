"""The sheets of the bench hold what the notes of the first machine say, in an order that is safe."""

import re
import shutil
from collections import Counter
from dataclasses import replace
from decimal import Decimal
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from benchsheaf.model.bench import Check, Outcome, Shows, ShowsHere
from benchsheaf.model.collection import Collection
from benchsheaf.model.inherited import Bench, machine_bench, part_bench
from benchsheaf.model.machine import Machine
from benchsheaf.pages.bench.check_views import how_surely
from benchsheaf.pages.bench.checks import ordered_checks
from benchsheaf.pages.bench.ways import Ways
from benchsheaf.pages.finding import found_entries
from benchsheaf.pages.printing import waiting
from benchsheaf.pages.shelf import Shelf
from benchsheaf.site import Edition, Judgement, edition, judgement
from expected import written as typed

NOTES = typed("references/notes-bench-a.yml")
CHECKS: dict[str, Any] = NOTES["checks"]
FAULTS: dict[str, Any] = {each["fault"]: each for each in NOTES["faults"]}
SLUG = "ostervane-bureau-8"
MACHINE = f"machines/{SLUG}"


@pytest.fixture(scope="module")
def judged(repository: Path) -> Judgement:
    """The machines of the checkout with their figures."""
    return judgement(repository / "machines")


@pytest.fixture(scope="module")
def collection(judged: Judgement) -> Collection:
    """All records of the checkout."""
    return judged.collection


@pytest.fixture(scope="module")
def machine(collection: Collection) -> Machine:
    """The machine of the notes."""
    return collection.machines[SLUG]


@pytest.fixture(scope="module")
def bench(machine: Machine, collection: Collection) -> Bench:
    """All that it has at the bench."""
    return machine_bench(machine, collection)


@pytest.fixture(scope="module")
def whole(judged: Judgement) -> Edition:
    """The pages."""
    return edition(judged)


def page(whole: Edition, address: str) -> str:
    """One page as it is written."""
    return whole.html(next(each for each in whole.pages if each.address == address))


def plain(markup: str) -> str:
    """The words of a stretch of a page, with plain spaces."""
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", markup))).strip()


def section(markup: str, ident: str) -> str:
    """From the element with an id to the next of its kind."""
    start = markup.index(f'id="{ident}"')
    family = ident.partition("-")[0]
    end = re.compile(rf'<section [^>]*id="(?!{re.escape(ident)}"){family}|<h3>In ').search(markup, start)
    return markup[start : end.start() if end else len(markup)]


def full(check: str) -> str:
    """A check of the notes by the name that the machine's own file has for it."""
    return str(CHECKS[check]["name"])


@pytest.mark.parametrize("noted", NOTES["symptoms"], ids=lambda each: each["says"])
def test_suspects_stand_with_their_share_of_the_notes_sum(whole: Edition, machine: Machine, noted: Any) -> None:
    """Each complaint lists the notes' suspects as weight of sum, the heaviest first, those without a way back last."""
    (symptom,) = [each for each in machine.symptoms if each.says == noted["says"]]
    told = section(page(whole, f"{MACHINE}/finding.html"), f"symptom-{symptom.id}")
    shares = re.findall(r"(\d+) of (\d+); fix", plain(told))
    suspects = [FAULTS[number] for number in noted["faults"]]
    can, cannot = ([int(each["weight"]) for each in suspects if each["undo"] == word] for word in ("yes", "no"))
    assert [int(weight) for weight, _ in shares] == sorted(can, reverse=True) + sorted(cannot, reverse=True)
    assert {int(weights) for _, weights in shares} == {int(noted["sum"])}
    assert plain(told).count("cannot be undone") == len(cannot)


def test_every_fault_stands_once_in_full(whole: Edition, bench: Bench) -> None:
    """Forty faults on one sheet, each with its weight of 180 and its minutes; those of held parts on their page too."""
    sheet = page(whole, f"{MACHINE}/finding.html")
    assert len(re.findall(r' id="fault-', sheet)) == len(FAULTS) == 40
    for noted in FAULTS.values():
        ident = f"fault-{noted['name'].replace('/', '.')}"
        told = plain(section(sheet, ident))
        assert f"{noted['weight']} of 180 by judged weight" in told
        assert f"{noted['fix_minutes']} min by hand" in told
        assert ("Cannot be undone" in told) == (noted["undo"] == "no")
        owner = bench.faults[noted["name"]].owner
        if owner.kind != "machine":
            way = f"parts/{ {'supply': 'supplies'}.get(owner.kind, owner.kind + 's') }/{owner.slug}.html"
            assert page(whole, way).count(f'id="fault-{noted["name"].partition("/")[2]}"') == 1


def test_the_dangerous_thing_comes_first(whole: Edition) -> None:
    """What must be healthy before any power, and the wait of an open supply, stand above all else on both sheets."""
    for name in ("finding", "checks"):
        told = plain(page(whole, f"{MACHINE}/{name}.html"))
        order = [
            told.index(words)
            for words in ("Plug out until these have shown healthy", "No mains before that", "wait 4 min", "Begin with")
            if name == "finding" or words != "Begin with"
        ]
        assert order == sorted(order)
    assert plain(page(whole, f"{MACHINE}/apart.html")).index("wait 4 min") < 600


def test_no_check_stands_before_its_gates(whole: Edition) -> None:
    """Down the sheet each check of the notes comes after all that it is done after, or means something after."""
    places = re.findall(r' id="check-([a-z0-9.-]+)"', page(whole, f"{MACHINE}/checks.html"))
    order = [place.replace(".", "/") for place in places]
    assert sorted(order) == sorted(full(each) for each in CHECKS)
    for name, noted in CHECKS.items():
        for gate in [*noted["after"], *noted["means_after"]]:
            assert order.index(full(gate)) < order.index(full(name)), (name, gate)


def test_what_needs_nothing_before_it_comes_first(whole: Edition) -> None:
    """The two that guard the power, then all that is done with the plug out and after nothing, then the rest."""
    places = re.findall(r' id="check-([a-z0-9.-]+)"', page(whole, f"{MACHINE}/checks.html"))
    order = [place.replace(".", "/") for place in places]
    assert order[:2] == [full("K0"), full("K1")]  # the README of the notes names them as what guards the power
    free = [full(name) for name, each in CHECKS.items() if each["power"] == "off" and not each["after"]]
    assert set(order[: len(free)]) == set(free)


@pytest.mark.parametrize("number", CHECKS)
def test_a_check_says_its_outcomes_the_healthy_one_first(whole: Edition, bench: Bench, number: str) -> None:
    """Outcomes in the notes' order; Stop where they say so; a condition with the share of machines that show it."""
    noted = CHECKS[number]
    told = section(page(whole, f"{MACHINE}/checks.html"), f"check-{full(number).replace('/', '.')}")
    assert f"{noted['minutes']} min" in plain(told)
    pieces = re.split(r'<li class="(healthy|stops|told)">', told[: told.index("</ol>")])[1:]
    rows = list(zip(pieces[::2], pieces[1::2], strict=True))
    names = [each.id for each in bench.checks[full(number)].check.outcomes]
    assert names == [each["name"] for each in noted["outcomes"]]
    assert len(rows) == len(names)
    assert [kind == "healthy" for kind, _ in rows] == [True] + [False] * (len(names) - 1)
    for (kind, row), outcome in zip(rows, noted["outcomes"], strict=True):
        assert (kind == "stops") == (outcome.get("stop") == "yes") == ("stop-word" in row)
        if "prevalence" in outcome:
            share = f"{Decimal(outcome['prevalence']) * 100:.0f}"
            assert f"found bad in {share} % of such machines" in plain(row)


def test_readings_stand_with_the_limits_of_the_machine(whole: Edition) -> None:
    """Section 4 of the notes, at the check that measures them; below doubtful a reading is the low outcome."""
    told = plain(section(page(whole, f"{MACHINE}/checks.html"), "check-to-ground"))
    assert "usual 55–80 Ω; doubtful below 40 Ω; no power below 18 Ω; “+5 V low” from doubtful downwards" in told
    assert "usual 1.5–4 kΩ; doubtful below 600 Ω; no power below 140 Ω" in told


def test_it_comes_apart_in_the_order_of_the_notes(whole: Edition, judged: Judgement) -> None:
    """Removals 1 to 8 in their order, the minutes of each, and the way to the lid: 4 + 4 + 6 + 5 minutes."""
    sheet = page(whole, f"{MACHINE}/apart.html")
    rows = re.findall(r'<li id="removal-([a-z-]+)">(.*?)</dl>', sheet, re.S)
    assert [name for name, _ in rows] == [each["name"] for each in NOTES["removals"]]
    for (_, row), noted in zip(rows, NOTES["removals"], strict=True):
        assert f"{noted['minutes']} min off" in plain(row)
    assert "19 min" in plain(rows[-1][1])
    found = {each.id: each for each in judged.workup.machines[SLUG].bench.removals}
    assert found["supply-lid"].off_minutes == 19
    assert found["board"].off_minutes == 32  # 4 + 6 + 4 + 6 + 12


@pytest.mark.parametrize("noted", NOTES["records"], ids=lambda each: each["record"])
def test_a_record_has_its_page_and_is_led_to(whole: Edition, noted: Any) -> None:
    """The owner's words, every entry in its order, what was found; the fault leads back to the record."""
    address = f"{MACHINE}/repairs/{noted['record']}.html"
    told = page(whole, address)
    assert noted["owner"].lower() in plain(told).lower()
    assert f"{noted['minutes']} min" in plain(told)
    entries = re.findall(r'<a href="\.\./checks\.html#check-([a-z0-9.-]+)">', told)
    assert entries == [full(each["check"]).replace("/", ".") for each in noted["entries"]]
    finding = page(whole, f"{MACHINE}/finding.html")
    for number in noted["found"]:
        ident = f"fault-{FAULTS[number]['name'].replace('/', '.')}"
        assert f"../finding.html#{ident}" in told
        assert f'href="repairs/{noted["record"]}.html"' in section(finding, ident)
    assert f'href="repairs/{noted["record"]}.html"' in page(whole, f"{MACHINE}/repairs.html")


def test_procedures_of_what_is_held_say_whose_they_are(whole: Edition, bench: Bench) -> None:
    """Each stands on the sheet with its owner beside its name; what has no way back says so."""
    sheet = page(whole, f"{MACHINE}/service.html")
    for name, each in bench.procedures.items():
        told = section(sheet, f"procedure-{name.replace('/', '.')}")
        assert ("cannot be undone" in plain(told)) == (each.procedure.undo is False)
        head = plain(told[: told.index("</h2>")].partition(">")[2])
        assert head.endswith(f"of {each.owner.name}") == (each.owner.kind != "machine")
        assert told.count('class="sign') >= len(each.procedure.cautions)
    assert any(each.owner.kind == "drive" for each in bench.procedures.values())


@pytest.mark.parametrize(
    "held, danger",
    [
        ("SP-96", "Plug out, wait, then measure."),
        ("OV-HD14", "A fixed disk is never opened."),
        ("OV-FD7", "Alcohol burns."),
        ("OV-LN3", "Never charge a lithium primary cell."),
    ],
)
def test_what_waits_in_a_held_thing_stands_before_its_faults(whole: Edition, held: str, danger: str) -> None:
    """Rules 1, 4, 7 and 8 of the notes: the hand that reads a fix far down the sheet has just passed its danger."""
    group = plain(page(whole, f"{MACHINE}/finding.html")).partition(f"In {held} ")[2]
    assert danger in group[: group.index("by judged weight")]


def test_a_fix_leads_to_where_it_is_told_step_by_step(whole: Edition) -> None:
    """On the machine's sheet and on the page of the part, each to its own place."""
    finding = section(page(whole, f"{MACHINE}/finding.html"), "fault-ov-fd7.heads-dirty")
    assert 'href="service.html#procedure-ov-fd7.clean-heads"' in finding
    own = section(page(whole, "parts/drives/ov-fd7.html"), "fault-heads-dirty")
    assert "#procedure-clean-heads" in own


def test_a_procedure_of_what_a_page_does_not_hold_is_only_words(collection: Collection) -> None:
    """A card's fault may name work on a drive: the card's own page has no such place."""
    card = part_bench("card", collection.cards["ov-dk1"])
    no_desk: Any = None
    (alone,) = Ways(desk=no_desk, bench=card).steps(card.owners[0], ["ov-hd14/park-heads"])
    assert (alone.words, alone.way) == ("ov-hd14/park-heads", None)


def test_a_bad_memory_chip_is_named_and_reached(whole: Edition) -> None:
    """STORE O1 84 is bits 2 and 7 (notes, section 6), each beside its chip where a phone has no columns.

    Removals 1, 2 and 4 of the notes lead there, which is 4 + 6 + 5 minutes.
    """
    memory = page(whole, f"{MACHINE}/memory.html")
    row = memory[memory.index('id="bank-o1"') :].partition("</tr>")[0]
    labels = {plain(cell): label for label, cell in re.findall(r'<td data-label="([^"]+)"[^>]*>(.*?)</td>', row)}
    assert (labels["N73"], labels["N78"]) == ("bit 2 (04)", "bit 7 (80)")
    assert 'href="apart.html#removal-chips"' in memory
    assert "15 min from a closed machine" in plain(memory)


def test_a_long_wait_is_told_in_hours(whole: Edition) -> None:
    """The notes wait 12 h for a new cell of the clock, 1 h for a warm disk, and 2 h in record A-3."""
    finding = page(whole, f"{MACHINE}/finding.html")
    assert "then 12 h of waiting" in plain(section(finding, "fault-ov-ln3.cell-flat"))
    assert "then 60 min of waiting" in plain(section(finding, "fault-ov-hd14.head-stuck"))
    assert "Waiting 2 h" in plain(page(whole, f"{MACHINE}/repairs/a-3.html"))
    waits = {119: "119 min", 120: "2 h", 150: "2.5 h", 600: "10 h", 601: "601 min"}
    assert {minutes: plain(waiting(Decimal(minutes))) for minutes in waits} == waits


def test_a_drive_that_does_not_turn_is_warned_of_where_its_fault_is_sought(whole: Edition) -> None:
    """Rule 4 of the notes stands before the checks that switch the disk on."""
    for name in ("finding", "checks"):
        told = plain(page(whole, f"{MACHINE}/{name}.html"))
        assert told.index("off at once and no second try") < told.index("Fixed disk: speed and reading")


def test_a_part_does_not_say_that_a_fault_shows_nowhere(whole: Edition) -> None:
    """A dried CS1 shows at a check of the machine (notes, fault 6); only the cold fan shows at none (fault 40)."""
    sheet = page(whole, f"{MACHINE}/finding.html")
    assert "all of them healthy" in plain(section(sheet, "fault-sp-96.fan-cold"))
    assert plain(sheet).count("all of them healthy") == 1
    assert "all of them healthy" not in plain(page(whole, "parts/supplies/sp-96.html"))


def test_each_rung_says_plug_out_then_mains_then_stop_then_go(whole: Edition) -> None:
    """Rungs 1 to 7 and 9 of the notes go up on this sheet: what stops the work is read before what lets it go on."""
    steps = page(whole, f"{MACHINE}/ladder.html").partition('id="rungs"')[2].partition("</ol>")[0]
    rungs = [plain(step) for step in steps.split('<li id="rung-')[1:]]
    assert len(rungs) == 8
    for rung in rungs:
        order = [rung.index(words) for words in ("Plug out first;", "Mains on:", " Stop ", "Go on when:")]
        assert order == sorted(order)


@pytest.mark.parametrize(
    "place, faults",
    [
        ("beep-rom-sum", [17, 16, 18]),  # 6 and 4 for certain, 8 at 0.1
        ("beep-picture-card", [18, 19]),  # 8 at 0.5 and 4 for certain: equal, as they come
        ("message-disk-flaws", [36, 35]),  # 5 for certain, 2 at 0.5
        ("message-clock-unset", [29]),
    ],
)
def test_a_sound_or_a_message_leads_to_its_faults(whole: Edition, place: str, faults: list[int]) -> None:
    """Sections 13 and 16 of the notes: weight times likelihood, the larger first."""
    row = page(whole, f"{MACHINE}/beeps.html").partition(f'<li id="{place}">')[2].partition("</li>")[0]
    names = [place.replace(".", "/") for place in re.findall(r'href="finding.html#fault-([^"]+)"', row)]
    assert names == [FAULTS[str(number)]["name"] for number in faults]


def test_home_leads_in_by_the_owners_words(whole: Edition) -> None:
    """Every complaint of the notes is on the first page and leads to its place."""
    home = page(whole, "index.html")
    for noted in NOTES["symptoms"]:
        assert f"“{noted['says']}”" in unescape(home)
    assert f'href="{MACHINE}/beeps.html"' in home
    assert home.count("finding.html#symptom-") == len(NOTES["symptoms"])


def test_all_of_it_can_be_found(judged: Judgement) -> None:
    """As many complaints, faults, checks, removals and records as the notes have, each once."""
    shelf = Shelf(collection=judged.collection, workup=judged.workup, links=judged.links, things=judged.things)
    entries = list(found_entries(shelf))
    counts = Counter(each.kind for each in entries)
    assert counts["Symptom"] == len(NOTES["symptoms"])
    assert (counts["Fault"], counts["Check"]) == (len(FAULTS), len(CHECKS))
    assert (counts["Removal"], counts["Repair record"]) == (len(NOTES["removals"]), len(NOTES["records"]))
    titles = {each.title for each in entries if each.kind == "Symptom"}
    assert titles == {each["says"] for each in NOTES["symptoms"]}
    ticks = next(each for each in entries if each.title.startswith("It clicks"))
    assert ticks.way == f"{MACHINE}/finding.html#symptom-ticks"


def test_without_records_the_sheet_is_wanted(repository: Path, tmp_path: Path) -> None:
    """It has no page then, stands in the list as wanted, and what is missing says which file it would be."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    shutil.rmtree(tmp_path / MACHINE / "repairs")
    bare = edition(judgement(tmp_path / "machines"), edit_base="https://forge.example/edit/")
    addresses = {each.address for each in bare.pages}
    assert f"{MACHINE}/finding.html" in addresses
    assert not any(each.startswith(f"{MACHINE}/repairs") for each in addresses)
    assert "Repair records : wanted" in plain(page(bare, f"{MACHINE}/finding.html"))
    assert f"{SLUG}/repairs/NAME.yml" in page(bare, f"{MACHINE}/missing.html")
    for each in bare.pages:
        bare.html(each)
    assert list(bare.astray()) == []


def test_without_the_sheets_nothing_leads_to_them(repository: Path, tmp_path: Path) -> None:
    """Without complaints there is no sheet of faults: those of parts are linked to on the parts' pages."""
    shutil.copytree(repository / "machines", tmp_path / "machines")
    shutil.rmtree(tmp_path / MACHINE / "repairs")
    (tmp_path / MACHINE / "symptoms.yml").unlink()
    judged = judgement(tmp_path / "machines")
    assert judged.mistakes == ()
    bare = edition(judged)
    checks = page(bare, f"{MACHINE}/checks.html")
    assert "finding.html" not in checks
    assert "supplies/sp-96.html#fault-cs1-dry" in checks
    for each in bare.pages:
        bare.html(each)
    assert list(bare.astray()) == []


# What is inherited, by hand.

RIGHT, WRONG = Outcome(id="right", says="Right"), Outcome(id="wrong", says="Wrong")


def check(ident: str, **more: Any) -> Check:
    """A check with two outcomes."""
    return Check(id=ident, name=ident, ask="?", power="off", takes_minutes=Decimal(1), outcomes=(RIGHT, WRONG), **more)


def test_a_shared_check_waits_for_what_proves_its_stage_here(machine: Machine, collection: Collection) -> None:
    """`runs` is proven by one check on this machine; on another it would be another."""
    proving = replace(machine, checks=(check("mine", proves="runs"),), before_power=(), shows_here=(), symptoms=())
    supply = replace(
        collection.supplies[machine.supply], checks=(check("own", after_stage=("runs",), after=("other",)),)
    )
    with_check = replace(collection, supplies={machine.supply: supply})
    found = machine_bench(proving, with_check).checks[f"{machine.supply}/own"]
    assert found.after == (f"{machine.supply}/other", "mine")
    assert part_bench("supply", supply).checks["own"].after == ("other",)


def test_a_held_fault_shows_at_its_own_checks_and_at_the_machines(bench: Bench) -> None:
    """What the part's file says, named as the machine names it, then what the machine adds."""
    held = [each for each in bench.faults.values() if each.owner.slug == "ov-hd14"]
    assert held
    for each in held:
        mine = [shows.check for shows in each.fault.shows]
        assert [shows.check for shows in each.shows][: len(mine)] == [f"ov-hd14/{name}" for name in mine]
    # Notes, faults 30 to 37: what the disk does at K9 is the machine's own check, at K13 the drive's.
    stuck = {shows.check for each in held if each.fault.name == "Head stuck to the disk" for shows in each.shows}
    assert stuck == {full("K9"), full("K13"), full("K21"), full("K22")}


def test_a_weight_of_the_machine_goes_before_that_of_the_part(machine: Machine, collection: Collection) -> None:
    """Where the machine judges otherwise its own judgement stands; elsewhere the part's."""
    name = next(each.fault for each in machine.shows_here if each.fault.startswith("sp-96/"))
    shows = (Shows(check="look", outcome="whole"),)
    judged_here = replace(machine, shows_here=(ShowsHere(fault=name, shows=shows, weight=77),))
    assert machine_bench(judged_here, collection).faults[name].weight == 77
    plainly = replace(machine, shows_here=(ShowsHere(fault=name, shows=shows),))
    found = machine_bench(plainly, collection).faults[name]
    assert found.weight == found.fault.weight


def test_under_power_what_guards_it_gates_everything(bench: Bench) -> None:
    """A check with the plug out has only its own gates; the guards gate each other no more than they say."""
    guards = set(bench.before_power)
    assert guards == {full("K0"), full("K1")}
    for name, each in bench.checks.items():
        assert (guards <= set(bench.gates(name))) == (each.check.power == "on")


def test_the_order_follows_the_gates_whatever_the_file_says(bench: Bench) -> None:
    """The same checks in the opposite order of the file still stand after their gates."""
    turned = replace(bench, checks=dict(reversed(list(bench.checks.items()))))
    order = ordered_checks(turned)
    assert set(order) == set(bench.checks)
    for name in order:
        for gate in (*bench.gates(name), *bench.checks[name].means_after):
            assert order.index(gate) < order.index(name)


def test_how_surely_a_fault_shows_is_never_more_than_is_said() -> None:
    """A likelihood as given; senses are never certain; rows that share are no certainty each."""
    plainly = Shows(check="c", outcome="wrong")
    other = Shows(check="c", outcome="worse")
    likely = Shows(check="c", outcome="wrong", likelihood_share=Decimal("0.75"))
    assert how_surely(plainly, [plainly], "meter") == "always"
    assert how_surely(plainly, [plainly], "senses") == "nearly always"
    assert how_surely(likely, [likely], "senses").replace("\u00a0", " ") == "in 75 %"
    assert how_surely(plainly, [plainly, other], "meter") == "or another of its outcomes"
