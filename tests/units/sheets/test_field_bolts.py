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
    assert found[found.index("left end, place B8") - 1] == "B1"
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


def test_an_end_is_called_as_the_card_calls_it_also_of_a_beam_that_lies_the_other_way_round() -> None:
    # two of three beams alike, four rows at A; the second of them is told from B to A
    text, there, back = bays([240], [240], 2), "start = { rows = 4 }", "end = { rows = 4 }"
    for at, keys in (("80.0", there), ("160.0", back)):
        start, finish = (f'{{ on = "GL11{line}", at = "{at} in" }}' for line in "AB")
        ends = (start, finish) if keys == there else (finish, start)
        text = text.replace(
            f'from = {start}\nto = {finish}\ntop = "L1"',
            f'from = {ends[0]}\nto = {ends[1]}\ntop = "L1"\n{keys}',
        )
    full = read_full(text)
    assert full.detailed is not None
    assert full.detailed.member("BL11A2").lie.end_for_end
    found = all_texts(field_bolt_list(full))
    ends_of = {}
    for n, words in enumerate(found):
        if found[n - 1] == "BL11A1":
            ends_of[words] = found[n + 1]
    assert ends_of == {
        "left end": "GL11A",
        "right end": "GL11B",
        "left end, place BL11A2": "GL11A",
        "right end, place BL11A2": "GL11B",
    }


def test_long_names_find_room() -> None:
    text = bays([240], [240], 2)
    for number, name in enumerate(("GL11A", "GL11B", "BL11A1", "BL11A2")):
        text = text.replace(f'"{name}"', f'"Beam-over-the-north-doo{number}"')
    assert "Beam-over-the-north-doo2" in all_texts(field_bolt_list(read_full(text)))


def test_no_end_is_called_start_or_end_of_a_member() -> None:
    found = all_texts(field_bolt_list(demo_frame()))
    assert not [words for words in found if words.startswith(("start of", "end of"))]
    assert "left end" in found
    assert "right end" in found


def test_the_longest_names_that_a_frame_may_have_find_room_in_one_row() -> None:
    text = bays([240], [240], 1)
    full = read_full(text)
    assert full.detailed is not None
    for number, line in enumerate(full.detailed.frame.beams):
        text = text.replace(f'"{line.name}"', f'"{"W" * 22}{number:02}"')
    found = "".join(all_texts(field_bolt_list(read_full(text))))
    assert "W" * 22 + "00" in found
