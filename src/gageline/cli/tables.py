"""What needs no job: the tables of sections, and sums of lengths."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

import typer
from rich.table import Table

from gageline.cli.screen import AsJson, say
from gageline.errors import ValueProblem
from gageline.exchange import json_text
from gageline.steel import facts, find
from gageline.units import Length, exact_text, feet_inches, inches_text, millimetres, parse_length


def section(
    designation: Annotated[
        list[str], typer.Argument(help="W16x26, HSS6x6x3/8, L4x3x1/4, IPE 300, PL1/2x8 ...")
    ],
    as_json: AsJson = False,
) -> None:
    """What the tables say of a section or plate."""
    stock = find(" ".join(designation))
    if as_json:
        print(json_text({fact.name: {"value": fact.value, "unit": fact.unit} for fact in facts(stock)}))
        return
    table = Table("", stock.designation, "unit")
    for fact in facts(stock):
        table.add_row(fact.name, fact.value, fact.unit)
    say.print(table)


def length(
    terms: Annotated[
        list[str],
        typer.Argument(help='lengths with + and - between, "18-7 1/4" + "3/8"; x and / by a number'),
    ],
) -> None:
    """Add, subtract, multiply and divide lengths as the trade writes them."""
    ticks = _sum(terms)
    total = Length(round(ticks))
    texts = (
        feet_inches(total, 64),
        inches_text(total, 64),
        f"{total.inches:.6g} in",
        f"{millimetres(total, 2)} mm",
    )
    say.print("  =  ".join(texts), markup=False)
    if ticks.denominator != 1:
        say.print(
            f"nearest to it is {exact_text(total)}; the fractions above are rounded to 1/64", markup=False
        )
    elif parse_length(texts[0]) != total:
        say.print(f"exactly {exact_text(total)}; the fractions above are rounded to 1/64", markup=False)


def _sum(terms: list[str]) -> Fraction:
    """The value of a chain of terms, worked from left to right, in ticks of `Length`."""
    total = Fraction(parse_length(terms[0]).ticks)
    if len(terms) % 2 == 0:
        raise ValueProblem(f'"{terms[-1]}" has nothing after it: write a length, or a number after x and /')
    for sign, term in zip(terms[1::2], terms[2::2], strict=True):
        match sign:
            case "+":
                total += parse_length(term).ticks
            case "-":
                total -= parse_length(term).ticks
            case "x" | "×" | "*":
                total *= _factor(term)
            case "/":
                total /= _factor(term)
            case _:
                raise ValueProblem(f'"{sign}" is no sign between lengths: use +, -, x or /')
    return total


def _factor(text: str) -> Fraction:
    try:
        factor = Fraction(text)
    except (ValueError, ZeroDivisionError):
        factor = Fraction(0)
    if not factor:
        raise ValueProblem(f'"{text}" is not a number to multiply or divide by: write one like 3 or 1/2')
    return factor
