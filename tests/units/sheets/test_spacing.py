"""Spreading labels."""

from __future__ import annotations

import pytest

from gageline.sheets.spacing import needed_span, spread


def test_labels_with_room_stay_where_they_want_to_be() -> None:
    assert spread([10, 20, 30], [5, 5, 5], 1, (0, 40)) == [10, 20, 30]


def test_two_at_one_place_part_evenly() -> None:
    assert spread([10, 10], [4, 4], 1, (0, 40)) == [7.5, 12.5]


def test_the_end_of_the_line_pushes_back() -> None:
    assert spread([0, 1], [4, 4], 1, (0, 40)) == [2, 7]


def test_no_labels_need_no_room() -> None:
    assert spread([], [], 1, (0, 1)) == []
    assert needed_span([], 1) == 0


def test_a_line_that_is_just_long_enough_is_filled() -> None:
    assert spread([0, 0, 0], [2, 3, 4], 1, (5, 16)) == pytest.approx([6, 9.5, 14])


def test_too_many_labels_do_not_fit() -> None:
    assert needed_span([2, 3, 4], 1) == 11
    assert spread([0, 0, 0], [2, 3, 4], 1, (5, 15.9)) is None
