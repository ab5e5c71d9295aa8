"""The same descriptions give the same bytes, whoever builds them, where and when."""

from pathlib import Path

from building import build, checkout, contents

# Two builders who have nothing in common: place, zone, language, order of sets, rights, clock.
ONE = {"TZ": "UTC", "LANG": "C", "LC_ALL": "C", "PYTHONHASHSEED": "0", "HOME": "/nonexistent", "COLUMNS": "80"}
OTHER = {
    "TZ": "Pacific/Kiritimati",
    "LANG": "tr_TR.UTF-8",
    "LC_ALL": "tr_TR.UTF-8",
    "PYTHONHASHSEED": "4242",
    "PYTHONUTF8": "0",
    "SOURCE_DATE_EPOCH": "1",
    "COLUMNS": "200",
}


def test_two_builders_make_the_same_site(tmp_path: Path) -> None:
    """File for file and byte for byte, with the same rights; and nothing in it tells where it was built."""
    one = checkout(tmp_path / "a")
    other = checkout(tmp_path / "another place, deeper" / "Möbius")
    build(one, ONE, umask=0o022)
    build(other, OTHER, umask=0o077)
    first, second = contents(one / "site"), contents(other / "site")
    assert sorted(first) == sorted(second)
    assert [name for name in first if first[name] != second[name]] == []
    rights = [{name: (house / "site" / name).stat().st_mode for name in first} for house in (one, other)]
    assert rights[0] == rights[1]
    for path in (one / "site").rglob("*"):
        assert path.is_dir() or str(tmp_path).encode() not in path.read_bytes(), path


def test_a_second_build_changes_nothing(tmp_path: Path) -> None:
    """Built over itself, with what the first build has left on the disk, the site is the same."""
    house = checkout(tmp_path / "house")
    build(house)
    before = contents(house / "site")
    build(house)
    assert contents(house / "site") == before
