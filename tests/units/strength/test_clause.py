from __future__ import annotations

import pytest

from gageline.strength import clause_of, clauses_in
from gageline.strength.aisc360 import MANUAL, SPECIFICATION, j4_elements, manual_prying


def test_a_function_carries_its_clause() -> None:
    clause = clause_of(j4_elements.block_shear)
    assert (clause.number, clause.title, clause.standard) == ("J4.3", "Block shear rupture", SPECIFICATION)


def test_the_manual_is_not_the_specification() -> None:
    assert clause_of(manual_prying.prying).standard == MANUAL


def test_a_strength_names_the_clause_of_its_function() -> None:
    assert j4_elements.shear_yielding(50, 1).clause is clause_of(j4_elements.shear_yielding)


def test_a_module_lists_its_clauses() -> None:
    listed = clauses_in(j4_elements)
    assert list(listed) == [
        "tensile_yielding",
        "tensile_rupture",
        "shear_yielding",
        "shear_rupture",
        "block_shear",
        "compression",
        "flexural_yielding",
        "flexural_rupture",
    ]
    assert listed["block_shear"].number == "J4.3"


def test_other_functions_carry_none() -> None:
    with pytest.raises(KeyError, match="clause"):
        clause_of(len_of_nothing)


def len_of_nothing() -> None:
    """Stands for any function that is no clause."""
