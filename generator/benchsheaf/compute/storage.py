"""What a drive holds, how fast it gives it, and how long a low-level format takes."""

from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from math import ceil

from benchsheaf.compute.laws import rounded_down, rounded_up, twelve
from benchsheaf.model.drives import Drive, Geometry, LowLevelFormat
from benchsheaf.standards import BITS_A_BYTE, MEBIBYTE, MEGABYTE

MOST_FACTORS = 8
"""The interleaves that a table compares. Source: common practice, larger ones are seldom seen."""


@dataclass(frozen=True, kw_only=True, slots=True)
class CapacityFigures:
    """What a geometry holds. MB is a million bytes, MiB is 1,048,576."""

    tracks: int
    sectors: int
    capacity_bytes: int
    capacity_megabytes: Decimal
    capacity_mebibytes: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class TrackFigures:
    """One turn of one track before and after formatting."""

    turn_s: Decimal
    latency_s: Decimal
    raw_track_bytes: Decimal
    formatted_track_bytes: int
    format_share: Decimal
    overhead_sector_bytes: Decimal
    raw_megabytes: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class InterleaveFigures:
    """Reading one track in the order of its sector numbers; `read_turns` is from the first sector to the last's end."""

    factor: int
    order: tuple[int, ...]
    read_turns: Decimal
    track_s: Decimal
    rate_bytes_per_s: Decimal
    missed_track_s: Decimal
    missed_rate_bytes_per_s: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class FactorFigures:
    """One interleave that a drive could have: the time that the machine gets between two sectors, and the rate then."""

    factor: int
    gap_s: Decimal = rounded_down()
    track_s: Decimal
    rate_bytes_per_s: Decimal


@dataclass(frozen=True, kw_only=True, slots=True)
class FormatFigures:
    """A low-level format: the turning alone; with half a turn of waiting a track and every step; verified singly.

    Which of them it is depends on the controller's routine.
    """

    turning_s: Decimal = rounded_up()
    waiting_s: Decimal = rounded_up()
    sector_by_sector_s: Decimal = rounded_up()


@dataclass(frozen=True, kw_only=True, slots=True)
class StorageFigures:
    """All that follows from a drive's plate."""

    capacity: CapacityFigures
    track: TrackFigures
    interleave: InterleaveFigures | None
    factors: tuple[FactorFigures, ...]
    surface_read_s: Decimal | None = rounded_up()
    format: FormatFigures | None
    flawed_tracks_share: Decimal | None


def storage_figures(drive: Drive) -> StorageFigures:
    """The figures of a drive; what rests on a fact that is not given is None."""
    capacity = capacity_figures(drive.geometry)
    track = track_figures(drive.geometry, drive.turns_rpm, drive.rate_bits_per_s)
    turn_s = track.turn_s
    return StorageFigures(
        capacity=capacity,
        track=track,
        interleave=interleave_figures(drive.geometry, drive.interleave, turn_s) if drive.interleave else None,
        factors=factor_figures(drive.geometry, turn_s) if drive.interleave else (),
        surface_read_s=_surface_read(drive, capacity.tracks, turn_s),
        format=format_figures(drive.geometry, turn_s, drive.format) if drive.format else None,
        flawed_tracks_share=twelve(Decimal(drive.accept.flawed_tracks) / capacity.tracks) if drive.accept else None,
    )


def _surface_read(drive: Drive, tracks: int, turn_s: Decimal) -> Decimal | None:
    """Every track read in order, and every step between cylinders; None where the step is not known."""
    if drive.step_s is None:
        return None
    return twelve(turn_s * tracks * (drive.interleave or 1) + drive.step_s * (drive.geometry.cylinders - 1))


def capacity_figures(geometry: Geometry) -> CapacityFigures:
    """Bytes of a geometry.

    Units: sectors and bytes; MB of 10^6, MiB of 2^20.
    Source: cylinders × heads × sectors × bytes a sector; prefixes of IEC 80000-13.
    """
    tracks = geometry.cylinders * geometry.heads
    total = tracks * geometry.sectors * geometry.sector_bytes
    return CapacityFigures(
        tracks=tracks,
        sectors=tracks * geometry.sectors,
        capacity_bytes=total,
        capacity_megabytes=twelve(Decimal(total) / MEGABYTE),
        capacity_mebibytes=twelve(Decimal(total) / MEBIBYTE),
    )


def track_figures(geometry: Geometry, turns_rpm: Decimal, rate_bits_per_s: Decimal) -> TrackFigures:
    """What passes a head in one turn, and what formatting leaves of it.

    Units: turns a minute, bit a second in; second, bytes and shares out.
    Errors: ZeroDivisionError if it does not turn.
    Source: raw bytes = rate × turn / 8.
    """
    turn_s = 60 / turns_rpm
    raw = rate_bits_per_s * turn_s / BITS_A_BYTE
    formatted = geometry.sectors * geometry.sector_bytes
    tracks = geometry.cylinders * geometry.heads
    return TrackFigures(
        turn_s=twelve(turn_s),
        latency_s=twelve(turn_s / 2),
        raw_track_bytes=twelve(raw),
        formatted_track_bytes=formatted,
        format_share=twelve(formatted / raw),
        overhead_sector_bytes=twelve((raw - formatted) / geometry.sectors),
        raw_megabytes=twelve(raw * tracks / MEGABYTE),
    )


def interleave_figures(geometry: Geometry, factor: int, turn_s: Decimal) -> InterleaveFigures:
    """A track read in order: one turn for each step of the factor, or one turn a sector where each is missed.

    Units: second a turn in; second a track, bytes a second out.
    Source: a track at factor n takes n turns; a missed sector comes round once a turn.
    """
    held = geometry.sectors * geometry.sector_bytes
    track_s = turn_s * factor
    missed_s = turn_s * geometry.sectors
    order = interleave_order(geometry.sectors, factor)
    return InterleaveFigures(
        factor=factor,
        order=order,
        read_turns=twelve(Decimal(read_slots(order)) / geometry.sectors),
        track_s=twelve(track_s),
        rate_bytes_per_s=twelve(held / track_s),
        missed_track_s=twelve(missed_s),
        missed_rate_bytes_per_s=twelve(held / missed_s),
    )


def interleave_order(sectors: int, factor: int, first: int = 0) -> tuple[int, ...]:
    """The sector numbers as they pass the head, from the index on.

    Errors: ValueError unless both counts are above zero.
    Source: common practice: the next number stands `factor` places on; where that place is taken, the next free one.
    """
    if sectors < 1 or factor < 1:
        raise ValueError(f"counts must be above zero, not {sectors} and {factor}")
    places: list[int | None] = [None] * sectors
    here = 0
    for number in range(sectors):
        while places[here] is not None:
            here = (here + 1) % sectors
        places[here] = first + number
        here = (here + factor) % sectors
    return tuple(number for number in places if number is not None)


def read_slots(order: tuple[int, ...], gap_slots: Decimal = Decimal(0)) -> int:
    """How many places pass from the start of the first sector to the end of the last, all read in rising order.

    Units: places of the track; `gap_slots` are what the machine needs between two sectors. One that comes sooner is
    missed and costs a turn more. Errors: none; without a sector 1. Source: by counting the places.
    """
    places = {number: place for place, number in enumerate(order)}
    passed = 1
    for one, other in pairwise(sorted(order)):
        distance = (places[other] - places[one]) % len(order)
        missed = max(0, ceil((gap_slots - (distance - 1)) / len(order)))
        passed += distance + missed * len(order)
    return passed


def factor_figures(geometry: Geometry, turn_s: Decimal) -> tuple[FactorFigures, ...]:
    """The interleaves from 1 up to eight: the smallest whose gap is longer than the machine needs is its best.

    Units: second a turn in; second and bytes a second out.
    Source: a track at factor n takes n turns, and leaves n - 1 places between two sectors.
    """
    place_s = turn_s / geometry.sectors
    held = geometry.sectors * geometry.sector_bytes
    return tuple(
        FactorFigures(
            factor=factor,
            gap_s=twelve(place_s * (factor - 1)),
            track_s=twelve(turn_s * factor),
            rate_bytes_per_s=twelve(held / (turn_s * factor)),
        )
        for factor in range(1, min(MOST_FACTORS, geometry.sectors - 1) + 1)
    )


def format_figures(geometry: Geometry, turn_s: Decimal, way: LowLevelFormat) -> FormatFigures:
    """How long a low-level format takes.

    Units: second a turn in; second out.
    Source: tracks × turns; beside it half a turn of waiting a track and one step between cylinders; beside that, by
    common practice, one turn for each sector where the routine verifies them singly and misses the next each time.
    """
    tracks = geometry.cylinders * geometry.heads
    turning = turn_s * way.turns * tracks
    waiting = turning + turn_s / 2 * tracks + way.step_s * (geometry.cylinders - 1)
    singly = max(way.turns, 1 + geometry.sectors) if way.turns > 1 else way.turns
    return FormatFigures(
        turning_s=twelve(turning),
        waiting_s=twelve(waiting),
        sector_by_sector_s=twelve(waiting + turn_s * (singly - way.turns) * tracks),
    )
