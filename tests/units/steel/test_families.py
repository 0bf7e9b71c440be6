from __future__ import annotations

import pytest

from gageline.steel import Family, Profile
from gageline.steel.families import profile_of


@pytest.mark.parametrize(
    ("profile", "families"),
    [
        (Profile.I_SHAPE, {"W", "M", "S", "HP", "IPE", "HEA", "HEB", "HEM"}),
        (Profile.CHANNEL, {"C", "MC", "UPN", "UPE"}),
        (Profile.ANGLE, {"L", "L_EU"}),
        (Profile.TEE, {"WT", "MT", "ST"}),
        (Profile.BOX, {"HSS"}),
        (Profile.TUBE, {"HSS_ROUND", "PIPE"}),
        (Profile.PLATE, set()),
    ],
)
def test_every_series_has_its_shape(profile: Profile, families: set[str]) -> None:
    assert {str(family) for family in Family if profile_of(family) is profile} == families
