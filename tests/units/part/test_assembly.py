from gageline.part import Assembly, BoltSet, FittingKind, Join, Weld
from pieces import at, clip_angle, piece


def test_the_mark_is_the_main_parts() -> None:
    beam = piece(mark="B4")
    angle = clip_angle(beam)
    welds = (Weld(angle.name, at("1/4"), at("9in"), 2, "both ends"),)
    bolts = (BoltSet((angle.name,), "3/4", 3, at("7/8"), field=False),)
    assembly = Assembly(beam, 2, (angle,), welds, bolts)
    assert assembly.mark == "B4"
    assert assembly.hand_of is None
    assert (angle.kind, angle.join) == (FittingKind.ANGLE, Join.BOLTED)
    assert f"{angle.kind} {angle.join}" == "connection angle bolted"
