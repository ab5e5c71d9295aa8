"""Whether a description has the fields, kinds and bounds that its schema asks for."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, cast

from benchsheaf.conformity.blanks import blanks_told, follows_from_blank
from benchsheaf.conformity.codes import (
    FIELD_01,
    FIELD_02,
    FIELD_03,
    FIELD_04,
    FIELD_05,
    FIELD_07,
    KIND_04,
    MISSING,
    RANGE_01,
    RANGE_02,
    RANGE_03,
    RANGE_04,
    UNKNOWN,
)
from benchsheaf.conformity.slid import runs_on, without_slid
from benchsheaf.conformity.sound import Doubt, Shell, sound_walk
from benchsheaf.conformity.spoken import bound, choices, listed, sample_line, shape_of, wanted_shape
from benchsheaf.documents import Entry
from benchsheaf.fields import Absence, Field, Misfit, absences, converted, spoken_path, text_at
from benchsheaf.mistakes import Code, Mistake, nearest_name

__all__ = ["Conformed", "blanks_told", "conformed"]

_MINUS_HINT = " With a minus sign -13.20 V is the low end."


@dataclass(frozen=True, kw_only=True)
class Conformed:
    """A description whose scalars have become what its schema says they are."""

    entry: Entry
    kind: Field
    mistakes: list[Mistake]

    @cached_property
    def values(self) -> dict[str, Any]:
        """What it says; of one without a mistake it need not be kept."""
        return cast(dict[str, Any], sound_walk(Shell(self.kind))(self.entry.values))

    @cached_property
    def name(self) -> str:
        """The name on its plate; nothing where it has none."""
        name = self.values.get("name")
        return name if isinstance(name, str) else ""

    @property
    def lacks_a_line(self) -> bool:
        """Whether the line that begins a list is missing, and with it all names that its items give."""
        return any(mistake.code is FIELD_07 for mistake in self.mistakes)

    @cached_property
    def absences(self) -> list[Absence]:
        """What is asked for and is not told."""
        return absences(self.kind, self.values)

    def let_go(self) -> None:
        """Forget the values, once they have become a record; what it is called and what it lacks is kept.

        Errors: ValueError if it has mistakes; then its values could not be found again.
        """
        if self.mistakes:
            raise ValueError(f"{len(self.mistakes)} mistakes")
        self.__dict__["name"], self.__dict__["absences"] = self.name, self.absences
        self.__dict__.pop("values", None)
        self.entry.let_go()

    def spoken(self, path: tuple[str | int, ...]) -> str:
        """A path in this description as a contributor says it."""
        return spoken_path(self.kind, self.entry.values, path)


Path = tuple[str | int, ...]


def conformed(entry: Entry, kind: Field, *, whole: bool, blanks: frozenset[str] = frozenset()) -> Conformed:
    """A description measured against its schema.

    `whole` says that every file of it could be read; if not, what is missing at the top is not told. `blanks` are
    fields at which nothing is written, which is told already; what follows from one is not.
    """
    try:
        values = sound_walk(Shell(kind))(entry.values)
    except Doubt:
        return measured(entry, kind, whole=whole, blanks=blanks)
    return _with(values, Conformed(entry=entry, kind=kind, mistakes=[]))


def measured(entry: Entry, kind: Field, *, whole: bool, blanks: frozenset[str] = frozenset()) -> Conformed:
    """The same by the validator alone, which finds all that is wrong, and is slow; even to load it takes time."""
    from benchsheaf.conformity.validator import validator

    mistakes: list[Mistake] = []
    misfits: set[Path] = set()

    def tell(
        code: Code,
        path: Path,
        fills: Mapping[str, str],
        nearest: str | None = None,
        key: bool = False,
        shared: tuple[str, ...] = (),
    ) -> None:
        """`shared` is what several mistakes may have in common, such as a field of a wrong name in all of a list."""
        place = entry.key_place(path) if key else entry.place(path)
        spoken = spoken_path(kind, entry.values, path)
        told = code.at(place, spoken, text_at(entry.values, path), nearest, **fills)
        mistakes.append(replace(told, about=(code.id, entry.kind, entry.slug, *shared)) if shared else told)

    def convert(described: Field, written: object, path: Path) -> object:
        if described.shape == "record" and isinstance(written, dict):
            known = described.fields
            return {
                name: convert(known[name], inner, (*path, name)) if name in known else inner
                for name, inner in written.items()
            }
        if described.shape == "list" and isinstance(written, list) and described.item:
            item = described.item
            return [convert(item, inner, (*path, index)) for index, inner in enumerate(written)]
        if described.shape not in ("record", "list") and isinstance(written, str):
            value = converted(described, written)
            if not isinstance(value, Misfit):
                return value
            misfits.add(path)
            tell(value.code, path, value.fills, value.nearest)
        return written

    written, slid = without_slid(kind, entry.values)
    for path, name in slid:
        tell(FIELD_07, path, {"list": name})
    values = convert(kind, written, ())
    assert isinstance(values, dict)
    judge = validator(Shell(kind))
    judge.validate(values, normalize=False)
    errors = list(_leaves(judge._errors))
    lacking = {tuple(error.document_path)[:-1] for error in errors if error.code == MISSING}
    for path in [path for path in misfits if path[:-1] in lacking]:
        if runs_on(_described(kind, path), text_at(entry.values, path)):
            place = entry.place(path)
            mistakes[:] = [
                told for told in mistakes if told.place != place
            ]  # it follows from the field that is missing
    there = {(*path[:-2], name) for path, name in slid} | set(_meant(errors, kind, values))
    for error in errors:
        path = tuple(error.document_path)
        if there and _is_there(error, path, there):
            continue
        absent = error.code == MISSING or error.rule == "needs"
        described = _described(kind, path)
        if error.rule == "allowed" and path[:-1] in lacking and runs_on(described, text_at(entry.values, path)):
            continue
        if path in misfits or (absent and path[:-1] == () and not whole):
            continue
        if not blanks or not follows_from_blank(error, path, blanks):
            _tell_error(error, kind, path, tell, values)
    return _with(values, Conformed(entry=entry, kind=kind, mistakes=mistakes))


def _meant(errors: list[Any], kind: Field, values: object) -> Iterator[Path]:
    """Fields that are there under a misspelt name."""
    for error in errors:
        path = tuple(error.document_path)
        if error.code == UNKNOWN:
            name = _nearest_field(kind, values, path)
            yield from [(*path[:-1], name)] if name else []


def _nearest_field(kind: Field, values: Any, path: Path) -> str | None:
    """The field that a misspelt name most resembles; one that stands beside it already is seldom meant."""
    fields = sorted(_described(kind, path[:-1]).fields)
    beside = values
    for step in path[:-1]:
        beside = beside[step]
    absent = [name for name in fields if name not in beside]
    return nearest_name(str(path[-1]), absent) or nearest_name(str(path[-1]), fields)


def _is_there(error: Any, path: Path, there: set[Path]) -> bool:
    """Whether what an error misses is there after all, in a way that is told already."""
    if error.code == MISSING:
        return path in there
    if error.rule == "needs":
        return (*path[:-1], error.info[0]) in there
    return error.rule == "at_least" and any((*path, name) in there for name in error.info)


def _with(values: dict[str, Any], found: Conformed) -> Conformed:
    """A description that knows its values already."""
    found.__dict__["values"] = values
    return found


def _tell_error(error: Any, kind: Field, path: Path, tell: Any, values: object) -> None:
    """One of Cerberus' errors in our words."""
    described = _described(kind, path)
    rule = "unknown" if error.code == UNKNOWN else error.rule
    if rule == "unknown":
        known = sorted(_described(kind, path[:-1]).fields)
        name = str(path[-1])
        nearest = _nearest_field(kind, values, path)
        fields = "" if nearest else f" The fields are {listed(known, 'and')}."
        names = tuple(step for step in path if isinstance(step, str))
        tell(FIELD_01, path, {"name": name, "fields": fields}, nearest, key=True, shared=names)
    elif rule == "required":
        name = str(path[-1])
        tell(FIELD_02, path, {"name": name, "help": described.help, "sample": sample_line(described)})
    elif rule == "allowed":
        words = list(described.allowed)
        nearest = nearest_name(str(error.value), words)
        tell(FIELD_03, path, {"allowed": choices(words, is_one_near=nearest is not None)}, nearest)
    elif rule == "needs":
        needed = error.info[0]
        group = (*map(str, path[:-1]), needed)
        tell(FIELD_04, path, {"name": str(path[-1]), "needed": needed}, key=True, shared=group)
    elif rule == "at_least":
        tell(FIELD_05, path, {"names": listed(list(described.at_least), "or")})
    elif rule == "type":
        tell(KIND_04, path, {"wanted": wanted_shape(described, error.value), "got": shape_of(error.value)})
    elif rule in ("min", "max"):
        tell(RANGE_01 if rule == "min" else RANGE_02, path, {"bound": bound(described, error.constraint)})
    elif rule == "above":
        other, edge = error.info
        hint = _MINUS_HINT if edge < 0 else ""
        fills = {"name": str(path[-1]), "other": other, "bound": bound(described, edge), "hint": hint}
        tell(RANGE_03, path, fills)
    elif rule == "minlength":
        tell(RANGE_04, path, {"bound": str(error.constraint)})
    else:  # pragma: no cover
        raise NotImplementedError(f"no words for the rule {rule}")


def _described(kind: Field, path: Path) -> Field:
    here = kind
    for step in path:
        if isinstance(step, int):
            assert here.item is not None
            here = here.item
        else:
            here = here.fields.get(step, here)
    return here


def _leaves(errors: Any) -> Iterator[Any]:
    for error in errors:
        if error.child_errors:
            yield from _leaves(error.child_errors)
        else:
            yield error
