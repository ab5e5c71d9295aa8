"""A volume on its drive: its layout, and what the flaws that are kept out of it cost."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchsheaf.compute.filesystem.acceptance import lost_verdict
from benchsheaf.compute.filesystem.layout import LayoutFigures, layout_figures, slack_figures
from benchsheaf.compute.laws import rounded_down, rounded_up, twelve
from benchsheaf.model.drives import Drive, Flaw, Geometry, Volume
from benchsheaf.standards import FIRST_CLUSTER


@dataclass(frozen=True, kw_only=True, slots=True)
class LossFigures:
    """What flaws take of a volume: sectors of its own, those before its data, the clusters marked, what is left."""

    sectors: tuple[int, ...]
    system_sectors: tuple[int, ...]
    clusters: tuple[int, ...]
    lost_bytes: int = rounded_up()
    lost_share: Decimal = rounded_up()
    free_bytes: int = rounded_down()
    verdict: str


@dataclass(frozen=True, kw_only=True, slots=True)
class VolumeFigures:
    """A volume as it is made, and with its flaws kept out; None where no such volume is possible, or none are known."""

    name: str
    layout: LayoutFigures | None
    most_slack_bytes: int | None = rounded_up()
    loss: LossFigures | None


def volume_figures(volume: Volume, drive: Drive) -> VolumeFigures:
    """The figures of a volume that takes the whole drive behind its hidden sectors.

    Units: sectors and bytes. Errors: none raised.
    """
    shape = drive.geometry
    layout = layout_figures(
        shape.cylinders * shape.heads * shape.sectors - volume.hidden,
        shape.sector_bytes,
        volume.cluster,
        volume.reserved,
        volume.tables,
        volume.roots,
    )
    flaws = _kept_out(volume, drive)
    return VolumeFigures(
        name=volume.name,
        layout=layout,
        most_slack_bytes=slack_figures(1, layout.cluster_bytes).slack_bytes if layout else None,
        loss=loss_figures(volume, layout, shape, flaws) if layout and flaws else None,
    )


def _kept_out(volume: Volume, drive: Drive) -> Sequence[Flaw]:
    """The flaws of the last run of the list that the volume names; none where only their number is known."""
    runs = [each.runs[-1] for each in drive.flaw_lists if each.id == volume.flaw_list]
    return runs[0].flaws if runs else ()


def flaw_sector(flaw: Flaw, geometry: Geometry) -> int:
    """The place of a flaw among all sectors of its drive, from 0.

    Units: sectors. Errors: none; beyond the geometry it goes on counting. Source: sectors are counted along the track,
    then head by head, then cylinder by cylinder.
    """
    return (flaw.cylinder * geometry.heads + flaw.head) * geometry.sectors + flaw.sector - 1


def loss_figures(volume: Volume, layout: LayoutFigures, geometry: Geometry, flaws: Sequence[Flaw]) -> LossFigures:
    """What flaws cost: whole clusters.

    Units: sectors from the volume's first one; bytes and a share of what is free without flaws. A flaw before the
    volume, in its tables or its root directory costs no cluster but the trust in the volume.
    Source: ECMA-107, a flawed cluster is marked in the table; `verdict` by common practice.
    """
    sectors = sorted({flaw_sector(flaw, geometry) - volume.hidden for flaw in flaws})
    clusters = flawed_clusters(sectors, layout, volume.cluster, volume.flaw_block or 1)
    system = tuple(each for each in sectors if each < layout.first_data_sector)
    lost = len(clusters) * layout.cluster_bytes
    share = twelve(Decimal(lost) / layout.free_bytes)
    return LossFigures(
        sectors=tuple(sectors),
        system_sectors=system,
        clusters=clusters,
        lost_bytes=lost,
        lost_share=share,
        free_bytes=layout.free_bytes - lost,
        verdict="not" if system else lost_verdict(share),
    )


def flawed_clusters(sectors: Iterable[int], layout: LayoutFigures, cluster: int, block: int = 1) -> tuple[int, ...]:
    """The clusters that are marked; a block over a cluster border costs two.

    Units: sectors of the volume, sectors a cluster, sectors in one block of the formatter's list.
    Errors: ZeroDivisionError if a block or a cluster is nothing. Source: ECMA-107, the first data cluster is number 2.
    """
    spread = (at for each in sectors for at in range(each // block * block, each // block * block + block))
    end = layout.first_data_sector + layout.clusters * cluster
    found = {(at - layout.first_data_sector) // cluster for at in spread if layout.first_data_sector <= at < end}
    return tuple(FIRST_CLUSTER + each for each in sorted(found))
