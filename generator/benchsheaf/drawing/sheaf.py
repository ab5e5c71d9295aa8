"""The sheaf seen from the side: sheet edges tied by a band, one of them pulled out."""

from functools import cache

from benchsheaf.drawing.picture import Box, Line, Picture, Shape

_OFFSETS = (2, 0, 4, 1, 5, 2, 3, 0, 4, 2, 1, 5, 3)
"""How far the edges of neighbouring sheets stand in, so that a pile looks like a pile; the same at every build."""

_BIG_SHEETS = 27
_BIG_PULLED = 9


@cache  # the same few on all pages
def sheaf_edge(sheets: int, current: int, ident: str) -> Picture:
    """The head of a sheet: as many lines as the machine has sheets, the current one (from 1 on) pulled out."""
    return _sheaf(sheets, current, ident, "sheaf-edge", f"Sheet {current} of {sheets}", (56, 66), (0, 44), 4)


def sheaf_big(ident: str) -> Picture:
    """The sheaf on the home page; it stands for no machine, so its number of sheets says nothing."""
    return _sheaf(_BIG_SHEETS, _BIG_PULLED, ident, "sheaf-big", "A tied sheaf of sheets", (324, 152), (0, 278), 6)


def _sheaf(
    sheets: int,
    current: int,
    ident: str,
    css_class: str,
    label: str,
    size: tuple[float, float],
    ends: tuple[float, float],
    inset: float,
) -> Picture:
    """Lines spread over the height, the pulled one over the right edge, the band over all."""
    width, height = size
    left, right = ends
    step = (height - 2 * inset) / max(sheets - 1, 1)
    jag = (right - left) / 100
    band = Box(left + (right - left) * 0.37, 0.65, (right - left) * 0.1, height - 1.3, "band")
    lines: list[Shape] = []
    for number in range(1, sheets + 1):
        y = inset + step * (number - 1) if sheets > 1 else height / 2
        offset = _OFFSETS[number % len(_OFFSETS)] * jag
        if number == current:
            lines.append(Line(left + (right - left) * 0.13, y, width, y, "pulled"))
        else:
            lines.append(Line(left + offset, y, right - _OFFSETS[(number * 5) % len(_OFFSETS)] * jag, y, "leaf"))
    return Picture(view_box=(0, 0, width, height), label=label, shapes=(*lines, band), css_class=css_class, ident=ident)
