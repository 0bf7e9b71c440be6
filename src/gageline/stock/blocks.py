"""Blocks: rectangles put together side by side and on top of one another, as a shear takes them apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gageline.stock.problem import Ints
from gageline.stock.rectangles import Box, Room

_PAIRS = 30_000  # joints looked at closely in one round and direction
_KEPT = 700  # new blocks taken on from one round
_PARTNERS = 2500  # blocks that new ones are joined to
_ROUNDS = 9  # a round can double the number of pieces in a block

Hashes = NDArray[np.uint64]


@dataclass(frozen=True, slots=True)
class Blocks:
    """Blocks that fit on a sheet, single pieces among them.

    Args:
        along: size of each along the sheet.
        across: size of each across it.
        area: of the pieces in it.
        counts: pieces of each kind in it, a row a block.
        first: the block at its lower left; of a single piece less than zero.
        second: the block joined to it; of a single piece its kind.
        above: whether the second lies across from the first, not along.
    """

    along: Ints
    across: Ints
    area: Ints
    counts: NDArray[np.int16]
    first: Ints
    second: Ints
    above: NDArray[np.bool_]

    def __len__(self) -> int:
        return len(self.along)

    def pieces(self, number: int, x: int = 0, y: int = 0) -> list[tuple[int, Room]]:
        """The kinds of the pieces of a block, and where each lies when the block's corner is at (x, y)."""
        first, second = int(self.first[number]), int(self.second[number])
        if first < 0:
            return [(second, Room(x, y, int(self.along[number]), int(self.across[number])))]
        right, up = x + int(self.along[first]), y + int(self.across[first])
        beside = self.pieces(second, x, up) if self.above[number] else self.pieces(second, right, y)
        return self.pieces(first, x, y) + beside


def build_blocks(
    room: Room, boxes: Sequence[Box], demand: Ints, waste: float, random: np.random.Generator
) -> Blocks:
    """Join pieces to blocks, and blocks to larger ones, as long as little is wasted.

    After P. Y. Wang, Two algorithms for constrained two-dimensional cutting stock problems, Operations
    Research 31 (1983), from memory; only so many blocks are carried on from each round.

    Args:
        room: the sheet.
        boxes: the kinds of pieces.
        demand: how many of each.
        waste: part of the sheet that one block may waste.
        random: decides which of very many blocks are carried on.

    Returns:
        The blocks, single pieces first.
    """
    blocks = _singles(room, boxes, demand)
    areas = np.array([b.along * b.across for b in boxes], dtype=np.int64)
    words = random.integers(1, 2**63, size=len(boxes) + 2, dtype=np.uint64)
    seen = _hashes(blocks, words)
    most = int(waste * room.along * room.across)
    new = np.arange(len(blocks))
    for _ in range(_ROUNDS):
        partners = new if len(new) == len(blocks) else _some(blocks, _PARTNERS, random)
        joined = _merged(
            [
                _joined(blocks, new, partners, demand, room, most, areas, random, above=up)
                for up in (False, True)
            ]
        )
        hashes = _hashes(joined, words)
        _, once = np.unique(hashes, return_index=True)
        fresh = once[~np.isin(hashes[once], seen)]
        if len(fresh) == 0:
            break
        if len(fresh) > _KEPT:
            fresh = fresh[_best(_taken(joined, fresh), _KEPT, random)]
        before = len(blocks)
        seen = np.concatenate([seen, hashes[fresh]])
        blocks = _merged([blocks, _taken(joined, fresh)])
        new = np.arange(before, len(blocks))
    return blocks


def _singles(room: Room, boxes: Sequence[Box], demand: Ints) -> Blocks:
    """Every piece as it lies and turned, where it fits."""
    ways = [
        (kind, along, across)
        for kind, box in enumerate(boxes)
        for along, across in box.ways()
        if demand[kind] > 0 and along <= room.along and across <= room.across
    ]
    kinds, along, across = np.array(ways, dtype=np.int64).reshape(-1, 3).T
    counts = np.zeros((len(ways), len(boxes)), dtype=np.int16)
    counts[np.arange(len(ways)), kinds] = 1
    none, beside = np.full(len(ways), -1), np.zeros(len(ways), dtype=np.bool_)
    return Blocks(along, across, along * across, counts, none, kinds, beside)


def _merged(parts: list[Blocks]) -> Blocks:
    names = Blocks.__slots__
    return Blocks(*(np.concatenate([getattr(part, name) for part in parts]) for name in names))


def _taken(blocks: Blocks, numbers: Ints) -> Blocks:
    return Blocks(*(getattr(blocks, name)[numbers] for name in Blocks.__slots__))


def _hashes(blocks: Blocks, words: Hashes) -> Hashes:
    """Equal for blocks of one size with the same pieces; sums wrap around."""
    sizes = blocks.along.astype(np.uint64) * words[0] + blocks.across.astype(np.uint64) * words[1]
    hashes: Hashes = sizes + blocks.counts.astype(np.uint64) @ words[2:]
    return hashes


def _best(blocks: Blocks, most: int, random: np.random.Generator) -> Ints:
    """The blocks that waste least for their size, a little by chance."""
    share = blocks.area / (blocks.along * blocks.across)
    return np.argpartition(-share + random.uniform(0.0, 0.02, len(share)), most)[:most]


def _some(blocks: Blocks, most: int, random: np.random.Generator) -> Ints:
    """Blocks to join others to: all single pieces, and the best of the rest."""
    singles = int(np.count_nonzero(blocks.first < 0))
    rest = np.arange(singles, len(blocks))
    if len(rest) <= most:
        return np.arange(len(blocks))
    return np.concatenate([np.arange(singles), rest[_best(_taken(blocks, rest), most, random)]])


def _joined(
    blocks: Blocks,
    new: Ints,
    partners: Ints,
    demand: Ints,
    room: Room,
    most: int,
    areas: Ints,
    random: np.random.Generator,
    *,
    above: bool,
) -> Blocks:
    """New blocks joined to others in one direction, within the sheet, the waste and the demand."""
    on, off = (blocks.across, blocks.along) if above else (blocks.along, blocks.across)
    longest = room.across if above else room.along
    size = on[new][:, None] + on[partners][None, :]
    other = np.maximum(off[new][:, None], off[partners][None, :])
    waste = size * other - blocks.area[new][:, None] - blocks.area[partners][None, :]
    one, two = np.nonzero((size <= longest) & (waste <= most))
    if len(one) > _PAIRS:
        share = waste[one, two] / (size[one, two] * other[one, two])
        few = np.argpartition(share + random.uniform(0.0, 0.01, len(share)), _PAIRS)[:_PAIRS]
        one, two = one[few], two[few]
    counts = blocks.counts[new[one]] + blocks.counts[partners[two]]
    fits = np.all(counts <= demand, axis=1)
    one, two, counts = one[fits], two[fits], counts[fits]
    long, wide = size[one, two], other[one, two]
    along, across = (wide, long) if above else (long, wide)
    ways = np.full(len(one), above)
    return Blocks(along, across, counts @ areas, counts, new[one], partners[two], ways)
