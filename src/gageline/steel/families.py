"""The series that sections are rolled in, and the shapes they have."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Family", "Measure", "Profile", "profile_of"]


class Measure(StrEnum):
    """Whose tables a section, grade or bolt stands in: those of the United States or of Europe."""

    US = "us"
    EU = "eu"


class Profile(StrEnum):
    """The shape of a piece of stock, whatever series it comes from."""

    I_SHAPE = "I-shape"
    CHANNEL = "channel"
    ANGLE = "angle"
    TEE = "tee"
    BOX = "box"
    TUBE = "tube"
    PLATE = "plate"


class Family(StrEnum):
    """The series of a section; the value is the word before the size in its designation."""

    W = "W"
    M = "M"
    S = "S"
    HP = "HP"
    C = "C"
    MC = "MC"
    L = "L"
    WT = "WT"
    MT = "MT"
    ST = "ST"
    HSS = "HSS"
    HSS_ROUND = "HSS_ROUND"
    PIPE = "PIPE"
    IPE = "IPE"
    HEA = "HEA"
    HEB = "HEB"
    HEM = "HEM"
    UPN = "UPN"
    UPE = "UPE"
    L_EU = "L_EU"


_PROFILES = {
    Family.C: Profile.CHANNEL,
    Family.MC: Profile.CHANNEL,
    Family.UPN: Profile.CHANNEL,
    Family.UPE: Profile.CHANNEL,
    Family.L: Profile.ANGLE,
    Family.L_EU: Profile.ANGLE,
    Family.WT: Profile.TEE,
    Family.MT: Profile.TEE,
    Family.ST: Profile.TEE,
    Family.HSS: Profile.BOX,
    Family.HSS_ROUND: Profile.TUBE,
    Family.PIPE: Profile.TUBE,
}


def profile_of(family: Family) -> Profile:
    """The shape that all sections of a series have."""
    return _PROFILES.get(family, Profile.I_SHAPE)
