"""No clause gives a number, or a traceback, for what one of its quantities cannot be."""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable, Iterator
from types import ModuleType
from typing import Any

import pytest

from gageline.errors import ValueProblem
from gageline.strength import Method, aisc360, clauses_in
from gageline.strength.aisc360 import manual_copes
from gageline.strength.aisc360.j3_bolts import Hole

BAD = [math.nan, math.inf, -math.inf, -1.0, 1e300, "x", None, True]
GOOD: dict[str, Any] = {
    "F_y": 50.0, "F_yw": 50.0, "F_yf": 50.0, "F_u": 65.0, "F_EXX": 70.0, "F_nv": 54.0, "f_c": 4.0,
    "L": 12.0, "L_b": 100.0, "L_c": 3.0, "lam_f": 7.0, "h_tw": 40.0, "h_o": 17.0, "h": 16.0, "C_b": 1.2,
    "Z_x": 100.0, "S_x": 88.0, "Z_y": 20.0, "S_y": 13.0, "r_y": 1.6, "r_ts": 1.9, "J": 1.2, "I_y": 30.0,
    "C_w": 3000.0, "c": 1.0, "r": 0.2, "Z": 5.0, "Z_net": 4.0, "d": 0.75, "t": 0.5, "t_w": 0.36, "b_f": 7.5,
    "t_f": 0.57, "k": 1.0, "l_b": 3.0, "y_end": 5.0, "A_g": 5.0, "A_n": 4.0, "A_e": 4.0, "U": 0.8,
    "A_gv": 4.0, "A_nv": 3.0, "A_nt": 1.0, "U_bs": 1.0, "A_fg": 4.0, "A_fn": 3.0, "A_1": 100.0, "A_2": 200.0,
    "A_pb": 2.0, "A_b": 0.44, "w": 0.25, "theta": 30.0, "E": 0.25, "b": 6.0, "a": 1.5, "p": 3.0, "d_b": 0.75,
    "d_hole": 0.8125, "d_h": 0.8125, "B_c": 25.0, "n": 3, "n_s": 1, "n_b": 4, "sides": 1, "fillers": 0,
    "group": "120", "threads": "N", "surface": "A", "V_r": 5.0, "V_c": 50.0, "T_b": 28.0, "T_r": 20.0,
    "P_r": 10.0, "P_c": 50.0, "M_rx": 10.0, "M_cx": 100.0, "M_ry": 1.0, "M_cy": 1.0, "M_r": 50.0,
    "M_c": 100.0, "M_y": 4000.0, "M_max": 10.0, "M_A": 5.0, "M_B": 6.0, "M_C": 4.0, "l_c": 1.0,
    "s": 3.0, "l_e": 1.5,
    "N": 20.0, "B": 20.0, "cantilever": 4.0, "e": 4.5, "d_c": 2.0, "c_t": 4.0, "c_b": 4.0, "d_ct": 2.0,
    "d_cb": 2.0, "C": 11.0, "t_p": 0.375, "R": 40.0, "setback": 0.75, "R_nwl": 10.0, "R_nwt": 10.0,
    "end_loaded_length": 1.0, "W": 4.0, "x_bar": 1.0, "l": 6.0, "t_pl": 0.5, "H": 6.0, "n_l": 2,
    "restrained": True, "flange": True, "weathering": False, "rolled_i": True, "deformation": True,
    "method": Method.LRFD, "hole": Hole.STANDARD,
}  # fmt: skip
ITS_OWN: dict[str, dict[str, Any]] = {
    "base_plate_cantilever": {"d": 12.0, "b_f": 12.0},
    "hollow_base_cantilever": {"d": 8.0, "b": 8.0},
    "prying": {"b": 2.0},
    "web_sidesway_buckling": {"L_b": 200.0},
    "conventional_plate": {"a": 3.0},
}


def arguments(name: str, function: Callable[..., object]) -> dict[str, Any]:
    given: dict[str, Any] = {}
    for key, parameter in inspect.signature(function).parameters.items():
        if key == "section":
            given[key] = manual_copes.coped_section(18, 0.355, 7.5, 0.57, 2.0)
        elif key in GOOD:
            deep = key == "d" and {"t_w", "k", "c_t", "h_tw", "d_c"} & set(
                inspect.signature(function).parameters
            )
            given[key] = 18.0 if deep else GOOD[key]
        else:
            assert parameter.default is not parameter.empty, f"{name}: {key} has no good value here"
    return given | ITS_OWN.get(name, {})


def functions() -> Iterator[tuple[str, Callable[..., object]]]:
    for module in vars(aisc360).values():
        if isinstance(module, ModuleType):
            for name in clauses_in(module):
                if name not in {"effective_bolt", "bolt_group"}:
                    yield name, getattr(module, name)


FUNCTIONS = dict(functions())


@pytest.mark.parametrize("name", FUNCTIONS)
def test_a_quantity_that_cannot_be_is_refused_in_words(name: str) -> None:
    function = FUNCTIONS[name]
    given = arguments(name, function)
    function(**given)
    kinds = inspect.signature(function).parameters
    for key in given:
        for bad in BAD:
            if kinds[key].annotation == "bool" and bad is True:
                continue
            if kinds[key].annotation not in {"float", "int", "bool", "str", "Method", "Hole"}:
                continue
            with pytest.raises(ValueProblem) as refused:
                function(**{**given, key: bad})
            assert str(refused.value).strip(), (key, bad)
