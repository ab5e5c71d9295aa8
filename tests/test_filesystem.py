"""Volumes held against the system's own formatter, checker and directory lister."""

from dataclasses import fields, replace
from pathlib import Path
from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from benchsheaf.compute.filesystem import (
    LayoutFigures,
    LossFigures,
    flawed_clusters,
    layout_figures,
    slack_figures,
)
from expected import table
from formatter import MISSING, Asked, Made, is_there, made
from system_packages import is_demanded

Row = dict[str, str]
GEOMETRIES = 240
SEED = 1107


@table("fat_volumes")
def test_a_volume_is_laid_out_as_the_row_says(row: Row) -> None:
    """Bits, tables, root directory, first data sector, clusters, what is left over, and free bytes."""
    cluster, block = int(row["sectors_per_cluster"]), 1024 // int(row["bytes_per_sector"])
    layout = layout_figures(
        int(row["total_sectors_in_bpb"]),
        int(row["bytes_per_sector"]),
        cluster,
        int(row["reserved_sectors"]),
        int(row["fats"]),
        int(row["root_entries"]),
    )
    assert layout is not None
    assert layout.table_bits == int(row["fat_bits"])
    assert layout.table_sectors == int(row["sectors_per_fat"])
    assert layout.root_sectors == int(row["root_dir_sectors"])
    assert layout.first_data_sector == int(row["first_data_sector"])
    assert layout.first_data_sector * int(row["bytes_per_sector"]) == int(row["fsck_data_start_byte"])
    assert layout.clusters == int(row["cluster_count"])
    assert layout.left_over_sectors == int(row["trailing_unused_sectors"])
    assert layout.free_bytes == int(row["fsck_data_bytes"])
    assert layout.count_bits == int(row["total_field"].removesuffix("-bit"))
    flawed = flawed_clusters([int(each) * block for each in row["bad_blocks"].split()], layout, cluster, block)
    assert flawed == tuple(int(each) for each in row["bad_clusters"].split())
    assert layout.free_bytes - len(flawed) * layout.cluster_bytes == int(row["mdir_free_bytes"])


@table("slack")
def test_files_take_what_the_row_says(row: Row) -> None:
    """Clusters where the row counts them, bytes taken and bytes not filled."""
    figures = slack_figures(int(row["file_bytes"]), int(row["cluster_bytes"]), int(row["files"]))
    assert (figures.used_bytes, figures.slack_bytes) == (int(row["used_bytes"]), int(row["slack_bytes"]))
    assert not row["clusters"] or figures.clusters == int(row["clusters"])


@given(st.integers(300, 60000), st.integers(0, 6), st.integers(1, 512))
def test_more_sectors_never_hold_less(sectors: int, power: int, roots: int) -> None:
    """A longer volume has no fewer clusters, every sector is in one place, and the table serves."""
    cluster = 2**power
    one = layout_figures(sectors, 512, cluster, 1, 2, roots)
    more = layout_figures(sectors + 1, 512, cluster, 1, 2, roots)
    assume(one is not None and more is not None)
    assert one is not None
    assert more is not None
    assert more.clusters >= one.clusters
    assert one.first_data_sector + one.clusters * cluster + one.left_over_sectors == sectors
    assert 1 + 2 * one.table_sectors + one.root_sectors == one.first_data_sector
    assert (one.table_bits == 12) == (one.clusters < 4085)
    assert one.table_sectors * 512 * 8 >= (one.clusters + 2) * one.table_bits


@given(st.sets(st.integers(33, 2879), max_size=40), st.integers(33, 2879), st.integers(1, 4))
def test_more_flaws_never_cost_less(sectors: set[int], another: int, block: int) -> None:
    """One flaw more costs no fewer clusters, and larger blocks cost no fewer than single sectors."""
    layout = layout_figures(2880, 512, 1, 1, 2, 224)
    assert layout is not None
    few = set(flawed_clusters(sectors, layout, 1, block))
    assert few <= set(flawed_clusters(sectors | {another}, layout, 1, block))
    assert set(flawed_clusters(sectors, layout, 1)) <= few


def test_what_is_lost_is_never_told_too_small() -> None:
    """Rounding: lost bytes and shares up, free bytes down."""
    ways = {"lost_bytes": "up", "lost_share": "up", "free_bytes": "down"}
    assert {each.name: each.metadata.get("rounds") for each in fields(LossFigures) if each.name in ways} == ways
    assert {each.name: each.metadata.get("rounds") for each in fields(LayoutFigures)}["free_bytes"] == "down"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder for volumes; without the commands the test is left out, or fails where they are demanded."""
    if not is_there():
        if is_demanded():
            pytest.fail(MISSING)
        pytest.skip(MISSING)
    return tmp_path


def layout_of(asked: Asked) -> LayoutFigures | None:
    """Our layout of what the formatter is asked for."""
    return layout_figures(asked.sectors, asked.sector_bytes, asked.cluster, asked.reserved, asked.tables, asked.roots)


def drawn_lot(lot: Random) -> tuple[Asked, LayoutFigures]:
    """A volume that can be formatted, now and then with flaws: what is asked for, and what we say of it."""
    while True:
        track = lot.randint(8, 39)
        sector_bytes = lot.choice([512, 512, 512, 1024, 2048])
        entries = sector_bytes // 32  # whole sectors of root entries: the formatter fills its last one
        asked = Asked(
            sectors=track * lot.randint(1, 8) * lot.randint(20, 1020) - lot.choice([0, track]),
            sector_bytes=sector_bytes,
            cluster=2 ** lot.randint(0, 5),
            reserved=lot.randint(1, 8),
            tables=lot.choice([1, 2, 2]),
            roots=entries * lot.randint(1, 512 // entries),
            table_bits=12,
        )
        layout = layout_of(asked)
        # 4085 and 4086 clusters the formatter refuses with either table, though the standard gives them 16 bits.
        if layout and layout.clusters not in (4085, 4086):
            return replace(asked, table_bits=layout.table_bits, flaws=flawed_blocks(lot, asked, layout)), layout


def flawed_blocks(lot: Random, asked: Asked, layout: LayoutFigures) -> tuple[int, ...]:
    """Up to five blocks of two sectors inside the data of some volumes; the formatter reckons sectors of 512 bytes."""
    first = -(-layout.first_data_sector // 2)
    end = (layout.first_data_sector + layout.clusters * asked.cluster) // 2
    if asked.sector_bytes != 512 or end - first < 5 or lot.random() < 0.5:
        return ()
    return tuple(sorted(lot.sample(range(first, end), lot.randint(1, 5))))


def said(asked: Asked, layout: LayoutFigures) -> Made:
    """What we say of a volume, in the words of the three commands."""
    flawed = flawed_clusters([block * 2 for block in asked.flaws], layout, asked.cluster, block=2)
    return Made(
        table_bits=layout.table_bits,
        table_sectors=layout.table_sectors,
        first_data_sector=layout.first_data_sector,
        clusters=layout.clusters,
        free_bytes=layout.free_bytes - len(flawed) * layout.cluster_bytes,
        used_clusters=len(flawed),
    )


def test_volumes_are_made_as_we_say(folder: Path) -> None:
    """Table, first data sector, clusters and free bytes of many volumes, the same ones at every run."""
    lot = Random(SEED)
    wrong = []
    for _ in range(GEOMETRIES):
        asked, layout = drawn_lot(lot)
        found = made(asked, folder)
        if found != said(asked, layout):
            wrong.append((asked, found, said(asked, layout)))
    assert not wrong
