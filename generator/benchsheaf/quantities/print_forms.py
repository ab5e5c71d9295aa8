"""How figures stand in print: a number, a no-break space, and the unit with the prefix that suits the size."""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Context, Decimal

from benchsheaf.quantities.measures import BINARY, EXACT, MEASURES, POWERS

ROUNDINGS = {"half": ROUND_HALF_UP, "up": ROUND_CEILING, "down": ROUND_FLOOR}
"""The nearest (a half away from zero), the next greater number, the next smaller one."""

# A whole number of bytes over 1024³ can have thirty decimal places.
LONG = Context(prec=60)
"""Wide enough to round any figure that facts of fifteen digits make."""
NO_BREAK = "\u00a0"
MINUS = "\u2212"


def printed(value: Decimal | int, unit: str, places: int | None = None, rounds: str = "half") -> str:
    """A quantity in its base unit as people read it: `11.40 V`, `28 mA`, `−12 V`, `1500 µF`, `14,131,200 B`.

    `places` None keeps the digits that were written and a Decimal holds; otherwise they are rounded as `rounds` says,
    one of `ROUNDINGS`.
    """
    number = _number(value)
    symbol, power = _prefix(number, unit, places, rounds)
    return _digits(number.scaleb(-power, EXACT), places, rounds) + NO_BREAK + symbol


def printed_range(
    low: Decimal | int, high: Decimal | int, unit: str, places: int | None = None, rounds: str = "half"
) -> str:
    """Two bounds under one prefix: `4.75–5.25 V`; `−13.20 to −10.80 V` where one is negative."""
    ends = (_number(low), _number(high))
    symbol, power = _prefix(max(ends, key=Decimal.copy_abs), unit, places, rounds)
    between = " to " if min(ends) < 0 else "–"
    return between.join(_digits(end.scaleb(-power, EXACT), places, rounds) for end in ends) + NO_BREAK + symbol


def printed_binary(value: Decimal | int, unit: str = "B", places: int | None = None, rounds: str = "half") -> str:
    """A size with a prefix of 1024: `64 KiB`, `13.477 MiB`; in full where `places` is None."""
    return _with_size(Decimal(value), {prefix: Decimal(size) for prefix, size in BINARY.items()}, unit, places, rounds)


def printed_decimal(value: Decimal | int, unit: str = "B", places: int | None = None, rounds: str = "half") -> str:
    """A size with a prefix of 1000: `14.131 MB`; in full where `places` is None."""
    sizes = {prefix: Decimal(10) ** POWERS[prefix] for prefix in ("k", "M", "G")}
    return _with_size(Decimal(value), sizes, unit, places, rounds)


def _with_size(number: Decimal, sizes: dict[str, Decimal], unit: str, places: int | None, rounds: str) -> str:
    """The number under the first prefix, the smallest first, that keeps what is printed below the next."""
    step = next(iter(sizes.values()))
    name, scaled = "", number
    for prefix, size in sizes.items():
        if (scaled if places is None else _rounded(scaled, places, rounds)).copy_abs() < step:
            break
        name, scaled = prefix, LONG.divide(number, size)
    return _digits(scaled, places if name else None, rounds) + NO_BREAK + name + unit


def _prefix(number: Decimal, unit: str, places: int | None, rounds: str) -> tuple[str, int]:
    """The first rung that the number reaches, or the one above if rounding makes it a thousand."""
    rungs = MEASURES[unit].rungs
    if not number:
        bare = next((rung for rung in rungs if not rung.power), rungs[0])
        return bare.symbol, bare.power
    place = next((place for place, rung in enumerate(rungs) if number.adjusted() >= rung.least), len(rungs) - 1)
    rung = rungs[place]
    if place and places is not None and _rounded(number.scaleb(-rung.power, EXACT), places, rounds).adjusted() >= 3:
        rung = rungs[place - 1]
    return rung.symbol, rung.power


def _number(value: Decimal | int) -> Decimal:
    return value if isinstance(value, Decimal) else Decimal(value).normalize(LONG)


def _rounded(number: Decimal, places: int, rounds: str) -> Decimal:
    return number.quantize(Decimal(1).scaleb(-places), ROUNDINGS[rounds], LONG)


def _digits(number: Decimal, places: int | None, rounds: str) -> str:
    """A number with a true minus, and commas between thousands from five digits on."""
    rounded = number if places is None else _rounded(number, places, rounds)
    whole, point, rest = f"{rounded.copy_abs():f}".partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}"
    return (MINUS if rounded < 0 else "") + whole + point + rest
