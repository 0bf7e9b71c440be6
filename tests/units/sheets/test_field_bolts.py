"""The field bolt list."""

from collections import Counter

from frames import bays, demo_frame
from gageline.detail import read_full
from gageline.sheets import field_bolt_list
from gageline.units import System, write_length
from pages import all_texts


def test_field_bolts_are_all_counted() -> None:
    full = demo_frame()
    assert full.detailed is not None
    total = sum(bolts.count for bolts in full.detailed.field_bolts)
    # under the connections, under the bolts to order, and one washer to each
    assert all_texts(field_bolt_list(full)).count(str(total)) == 3


def test_bolts_stand_with_the_mark_of_their_piece() -> None:
    found = all_texts(field_bolt_list(demo_frame()))
    assert found[found.index("start of B8") - 1] == "B1"
    assert found[found.index("G1 on P2") - 1] == "G1"


def test_what_to_order_adds_up_by_length() -> None:
    full = read_full(bays([240], [240], 1))
    assert full.detailed is not None
    wanted: Counter[str] = Counter()
    for bolts in full.detailed.field_bolts:
        wanted[write_length(bolts.length, System.FT_IN)] += bolts.count
    found = all_texts(field_bolt_list(full))
    rows = found[found.index("To order") + 6 :]
    order = {rows[n + 1]: int(rows[n + 3]) for n in range(0, rows.index("Total"), 5)}
    assert order == wanted
    assert len(order) == 2


def test_shared_bolts_at_a_column_bring_the_rule_for_double_connections() -> None:
    angles = 'stock = "W16x26"\nends = { connection = "double angles" }'
    text = bays([240], [240, 240], 0).replace('stock = "W16x26"', angles).replace("W10x49", "W14x90")
    found = all_texts(field_bolt_list(read_full(text)))
    assert "Double connections at columns (29 CFR 1926.756(c))" in found
    assert "one bolt with a wrench-tight nut has to stay in the first member" in " ".join(found)
    none = all_texts(field_bolt_list(read_full(bays([240], [240], 0))))
    assert not any("Double connections" in text for text in none)
