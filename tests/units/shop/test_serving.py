from __future__ import annotations

import ipaddress

import segno

from gageline.shop.serving import _qr_text, network_address


def test_the_address_is_one_of_this_machine() -> None:
    assert ipaddress.ip_address(network_address()).version == 4


def test_the_code_on_the_screen_is_the_code() -> None:
    url = "http://192.168.1.20:8700/"
    rows = [list(row) for row in segno.make(url, error="m", micro=False).matrix_iter(border=2)]
    printed = _qr_text(url).split("\n")
    dark = {"█": (0, 0), "▀": (0, 1), "▄": (1, 0), " ": (1, 1)}
    for number, line in enumerate(printed):
        upper, lower = zip(*(dark[sign] for sign in line), strict=True)
        assert list(upper) == [int(bool(one)) for one in rows[2 * number]]
        if 2 * number + 1 < len(rows):
            assert list(lower) == [int(bool(one)) for one in rows[2 * number + 1]]
