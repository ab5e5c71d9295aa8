"""Every formula held to cases: what is given, what is wanted, why the case is there and where its answer comes from."""

import builtins
import importlib
import pkgutil
from collections.abc import Mapping
from inspect import isfunction
from typing import Any, get_type_hints

import pytest

from benchsheaf import compute
from expected import differences, meant, written

# It computes nothing: it finds what others computed, and is held to that in test_named_figures.py.
FINDER = "named_figures"
MODULES = sorted(each.name for each in pkgutil.iter_modules(compute.__path__) if each.name != FINDER)
KEYS = {"why", "given", "want", "error", "source"}

# What a figure is made of, or where it is kept, not a figure.
NO_FIGURES = {("laws", "rounded_up"), ("laws", "rounded_down"), ("workup", "sheaf_of")}


def all_cases() -> list[Any]:
    """Every case with its module and function, under the words of its `why`."""
    found = []
    for module in MODULES:
        cases = written(f"cases/compute/{module}.yml")
        always = cases.pop("always", {})
        for name, several in cases.items():
            for case in several:
                found.append(pytest.param(module, name, case, always, id=f"{module}.{name}: {case['why']}"))
    return found


def arguments(function: Any, given: Mapping[str, Any], always: Mapping[str, Any]) -> dict[str, Any]:
    """What a case gives to its function; what the file says of every case stands in where the case says nothing."""
    hints = get_type_hints(function)
    filled = {}
    for name, value in given.items():
        whole = {**always.get(name, {}), **value} if isinstance(value, dict) else value
        filled[name] = meant(hints[name], whole)
    return filled | {name: meant(hints[name], always[name]) for name in always if name in hints and name not in given}


@pytest.mark.parametrize("module,name,case,always", all_cases())
def test_a_case_comes_out_as_wanted(module: str, name: str, case: dict[str, Any], always: dict[str, Any]) -> None:
    """The result agrees with every field that the case names, or the error says what the case says."""
    assert set(case) <= KEYS, f"no such key: {set(case) - KEYS}"
    assert ("want" in case) != ("error" in case)
    function = getattr(importlib.import_module(f"benchsheaf.compute.{module}"), name)
    given = arguments(function, case["given"], always)
    if "error" in case:
        kind = getattr(builtins, case["error"], ValueError)
        with pytest.raises(kind) as raised:
            function(**given)
        assert kind is not ValueError or str(raised.value) == case["error"]
        return
    assert case["source"]
    assert not list(differences(case["want"], function(**given)))


def public_functions(module: str) -> set[str]:
    """What a module of formulas offers to others."""
    whole = importlib.import_module(f"benchsheaf.compute.{module}")
    offered = {name: each for name, each in vars(whole).items() if isfunction(each) and not name.startswith("_")}
    return {name for name, each in offered.items() if each.__module__.startswith(whole.__name__)}


@pytest.mark.parametrize("module", MODULES)
def test_every_formula_has_a_case(module: str) -> None:
    """A new module or function of `compute` fails here until somebody has worked out a case by hand."""
    told = set(written(f"cases/compute/{module}.yml")) - {"always"}
    assert told == {name for name in public_functions(module) if (module, name) not in NO_FIGURES}
