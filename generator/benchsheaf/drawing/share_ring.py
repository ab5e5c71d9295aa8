"""A ring filled clockwise by a share: the mark of a suspect."""

from math import cos, pi, sin

from benchsheaf.drawing.attributes import coordinate
from benchsheaf.markup import Markup

RADIUS = 5.5
MIDDLE = 10.0


def share_ring(weight: int, weight_sum: int) -> Markup:
    """The mark of a suspect with as much of it filled as its weight has of the sum; the words stand beside it."""
    share = weight / weight_sum
    inner = (
        f'<circle class="share" cx="10" cy="10" r="{RADIUS}"/>'
        if share >= 1
        else f'<path class="share" d="{_sector(share)}"/>'
    )
    return Markup(
        '<svg class="mark suspect" viewBox="0 0 20 20" aria-hidden="true" focusable="false">'
        '<circle class="ring" cx="10" cy="10" r="8.5"/>'
    ) + Markup(inner + "</svg>")


def _sector(share: float) -> str:
    """From the top clockwise; letters and numbers of ours only."""
    x = MIDDLE + RADIUS * sin(2 * pi * share)
    y = MIDDLE - RADIUS * cos(2 * pi * share)
    large = 1 if share > 0.5 else 0
    return f"M10 10V{coordinate(MIDDLE - RADIUS)}A{RADIUS} {RADIUS} 0 {large} 1 {coordinate(x)} {coordinate(y)}Z"
