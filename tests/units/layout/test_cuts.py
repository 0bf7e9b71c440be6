import pytest

from gageline.layout.cuts import (
    clip_marks,
    clip_name,
    cope_marks,
    cope_name,
    cut_x,
    end_marks,
    flange_face,
    is_hollow,
    opening_marks,
    opposite_wall,
    other_wall,
    trim_marks,
    trim_name,
    web_faces,
)
from gageline.layout.mark import Bench, Mark, MarkKind
from gageline.part import Clip, Cope, End, EndCut, Face, FlangeTrim, Opening, Part, Side, faces_of
from gageline.units import System, parse_slope
from pieces import ONE_OF_EACH, at, piece


def on_bench(part: Part) -> Bench:
    return Bench(part, at("1/16"), System.FT_IN)


def lines(marks: list[Mark], face: Face) -> list[list[tuple[str, str]]]:
    return [[(spot.x.text, spot.y.text) for spot in mark.spots] for mark in marks if mark.face is face]


@pytest.mark.parametrize("stock", ONE_OF_EACH)
@pytest.mark.parametrize("end", End)
def test_an_end_is_struck_on_every_face(stock: str, end: End) -> None:
    part = piece(stock)
    marks = list(end_marks(on_bench(part), end))
    assert tuple(mark.face for mark in marks) == faces_of(part.stock)
    assert {mark.x.text for mark in marks} == {'0"' if end is End.LEFT else "10'-0\""}
    assert {mark.for_ for mark in marks} == {f"{end} end"}


def test_a_bevel_is_read_at_both_edges_and_square_across_the_flanges() -> None:
    part = piece(left=EndCut(parse_slope("3 in 12")), right=EndCut(-parse_slope("3 in 12")))
    left, right = (list(end_marks(on_bench(part), end)) for end in End)
    assert lines(left, Face.NEAR) == [[('0"', '0"'), ('3 15/16"', "1'-3 11/16\"")]]  # 15.7 in / 4
    assert lines(left, Face.TOP) == [[('0"', '2 3/4" near'), ('0"', '2 3/4" far')]]
    assert lines(left, Face.BOTTOM) == [[('3 15/16"', '2 3/4" near'), ('3 15/16"', '2 3/4" far')]]
    assert lines(right, Face.FAR) == [[("9'-8 1/16\"", '0"'), ("10'-0\"", "1'-3 11/16\"")]]


def test_a_mitre_leans_across_the_flanges_and_sets_the_webs_apart() -> None:
    part = piece(left=EndCut(mitre=parse_slope("12 in 12")))  # 5 1/2 wide, near side longer
    marks = list(end_marks(on_bench(part), End.LEFT))
    assert lines(marks, Face.TOP) == [[('0"', '2 3/4" near'), ('5 1/2"', '2 3/4" far')]]
    assert lines(marks, Face.NEAR)[0][0][0] == '2 5/8"'  # half of 5 1/2 less half the web
    assert lines(marks, Face.FAR)[0][0][0] == '2 7/8"'


@pytest.mark.parametrize(
    ("end", "x", "x_centre"), [(End.LEFT, '4"', '3 1/2"'), (End.RIGHT, "9'-8\"", "9'-8 1/2\"")]
)
def test_a_cope_has_its_length_depth_and_radius_centre(end: End, x: str, x_centre: str) -> None:
    cope = Cope(end, Face.TOP, at("4"), at("1 1/2"), at("1/2"))
    marks = list(cope_marks(on_bench(piece(copes=(cope,))), cope))
    start = '0"' if end is End.LEFT else "10'-0\""
    assert lines(marks, Face.NEAR) == [
        [(x, '0"'), (x, '1 1/2"')],
        [(start, '1 1/2"'), (x, '1 1/2"')],
        [(x_centre, '1"')],
    ]
    assert lines(marks, Face.TOP) == [[(x, '2 3/4" near'), (x, '2 3/4" far')]]
    assert [mark.size for mark in marks if mark.kind is MarkKind.RADIUS_CENTRE] == [at("1/2")]
    assert {mark.for_ for mark in marks} == {cope_name(cope)} == {f"{end} top cope"}


def test_a_bottom_cope_is_read_from_the_bottom_edge_too() -> None:
    cope = Cope(End.LEFT, Face.BOTTOM, at("4"), at("1 1/2"), at("0"))
    marks = list(cope_marks(on_bench(piece(copes=(cope,))), cope))
    assert [spot.y_back.text for spot in marks[0].spots] == ['0"', '1 1/2"']
    assert MarkKind.RADIUS_CENTRE not in {mark.kind for mark in marks}
    assert lines(marks, Face.BOTTOM) == [[('4"', '2 3/4" near'), ('4"', '2 3/4" far')]]


@pytest.mark.parametrize(
    ("stock", "edge", "faces"),
    [
        ("W16X26", Face.TOP, {Face.NEAR, Face.TOP}),
        ("C8X11.5", Face.BOTTOM, {Face.NEAR, Face.BOTTOM}),
        ("WT8X18", Face.BOTTOM, {Face.NEAR}),
        ("HSS6X6X3/8", Face.TOP, {Face.NEAR, Face.FAR, Face.TOP}),
        ("L6X4X1/2", Face.TOP, {Face.LEG_A}),
        ("L6X4X1/2", Face.BOTTOM, {Face.LEG_A, Face.LEG_B}),
        ("PL1/2X8", Face.TOP, {Face.FACE}),
    ],
)
def test_a_cope_is_struck_on_the_faces_it_cuts(stock: str, edge: Face, faces: set[Face]) -> None:
    cope = Cope(End.LEFT, edge, at("2"), at("1"), at("1/2"))
    assert {mark.face for mark in cope_marks(on_bench(piece(stock, copes=(cope,))), cope)} == faces


@pytest.mark.parametrize(
    ("side", "keep", "reading"),
    [(Side.NEAR, "0", '1/8" near'), (Side.FAR, "0", '1/8" far'), (Side.FAR, "1/2", '5/8" far')],
)
def test_a_trim_runs_along_the_web_and_out_to_the_edge(side: Side, keep: str, reading: str) -> None:
    trim = FlangeTrim(End.RIGHT, Face.TOP, side, at("6"), at(keep))
    marks = list(trim_marks(on_bench(piece(trims=(trim,))), trim))
    edge = f'2 3/4" {side}'
    assert lines(marks, Face.TOP) == [
        [("9'-6\"", edge), ("9'-6\"", reading)],
        [("10'-0\"", reading), ("9'-6\"", reading)],
    ]
    assert {mark.for_ for mark in marks} == {trim_name(trim)} == {f"right top trim, {side} side"}


def test_a_trim_of_a_flange_that_is_not_there_has_no_mark() -> None:
    trim = FlangeTrim(End.LEFT, Face.BOTTOM, Side.NEAR, at("6"))
    assert list(trim_marks(on_bench(piece("WT8X18")), trim)) == []


def test_a_clip_runs_across_the_corner() -> None:
    clip = Clip(End.RIGHT, Face.BOTTOM, at("1"), at("3/4"))
    (mark,) = clip_marks(on_bench(piece("PL1/2X8", clips=(clip,))), clip)
    assert lines([mark], Face.FACE) == [[("9'-11\"", '8"'), ("10'-0\"", '7 1/4"')]]
    assert mark.for_ == clip_name(clip) == "right bottom clip"
    assert list(clip_marks(on_bench(piece()), clip)) == []


def test_a_rectangular_opening_has_centre_lines_edges_and_radius_centres() -> None:
    opening = Opening(Face.NEAR, at("5'"), at("7.7"), at("12"), at("6"), at("1"))
    marks = list(opening_marks(on_bench(piece()), opening, "opening 1"))
    assert [mark.kind for mark in marks] == (
        [MarkKind.CENTRE_LINE] * 2 + [MarkKind.CUT_LINE] * 4 + [MarkKind.RADIUS_CENTRE] * 4
    )
    assert lines(marks[2:6], Face.NEAR)[0] == [("4'-6\"", '5"'), ("5'-6\"", '5"')]
    assert {(mark.x.text, mark.y.text) for mark in marks[6:]} == {
        ("4'-7\"", '6"'), ("5'-5\"", '6"'), ("5'-5\"", '10"'), ("4'-7\"", '10"'),
    }  # fmt: skip


def test_a_round_opening_is_punched_at_its_centre_on_both_walls_it_goes_through() -> None:
    opening = Opening(Face.NEAR, at("5'"), at("3"), at("2"), at("2"), at("1"), through=True)
    marks = list(opening_marks(on_bench(piece("HSS6X6X3/8")), opening, "opening 1"))
    centres = [mark for mark in marks if mark.kind is MarkKind.RADIUS_CENTRE]
    assert [(mark.face, mark.for_, mark.size) for mark in centres] == [
        (Face.NEAR, "opening 1", at("1")),
        (Face.FAR, other_wall("opening 1"), at("1")),
    ]


def test_faces_of_cuts() -> None:
    angle, box = piece("L6X4X1/2"), piece("HSS6X6X3/8")
    assert web_faces(angle) == (Face.LEG_A,)
    assert web_faces(box) == (Face.NEAR, Face.FAR)
    assert flange_face(angle, Face.BOTTOM) is Face.LEG_B
    assert flange_face(angle, Face.TOP) is None
    assert is_hollow(box)
    assert not is_hollow(angle)
    assert opposite_wall(Face.TOP) is Face.BOTTOM
    assert cut_x(box, End.RIGHT, at("4")) == at("9'-8")
