"""What can still be built of a document whose form is not right everywhere.

A typed key and a section that no table has are said in one go, so that nobody corrects a
document twice.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from gageline.job.document import JobDocument
from gageline.job.problems import Path
from gageline.job.reading import validated

__all__ = ["original_path", "salvaged"]

_NO_NAME = {"name": "?"}


def salvaged(table: dict[str, Any], wrong: Iterable[Path]) -> tuple[JobDocument | None, dict[Path, Path]]:
    """The document without the tables and keys that are not right.

    Args:
        table: the document as TOML tables.
        wrong: paths of the problems of form.

    Returns:
        The rest, None when nothing is left to build, and where each of its list items stood.
    """
    cut = {_to_cut(path) for path in wrong}
    _cut_followers(table, cut)
    origins: dict[Path, Path] = {}
    rest: dict[str, Any] = _without(table, cut, ((), ()), origins)
    facts = rest.get("job")
    rest["job"] = _NO_NAME | (facts if isinstance(facts, dict) else {})
    document, _ = validated(rest)
    return document, origins


def _to_cut(path: Path) -> Path:
    """The smallest thing to take out: an item of a list, a key of a piece, a piece without a mark."""
    if path[0] != "piece" or path[2:3] == ("mark",):
        return path[:2]
    return path[:4] if len(path) > 3 and isinstance(path[3], int) else path[:3]


def _cut_followers(table: dict[str, Any], cut: set[Path]) -> None:
    """Take out hole groups too that are measured from one that is taken out."""
    for path in sorted((path for path in cut if len(path) == 4 and path[2] == "holes"), key=str):
        holes = table["piece"][path[1]]["holes"]
        lost = {holes[path[3]].get("name")} if isinstance(holes[path[3]], dict) else set()
        for index, group in enumerate(holes):
            if isinstance(group, dict) and group.get("from") in lost - {None}:
                cut.add((*path[:3], index))
                lost.add(group.get("name"))


def _without(value: Any, cut: set[Path], at: tuple[Path, Path], origins: dict[Path, Path]) -> Any:
    """A copy without what is cut; `at` is its path in the copy and its path in the document."""
    new, old = at
    if isinstance(value, dict):
        return {
            key: _without(item, cut, ((*new, key), (*old, key)), origins)
            for key, item in value.items()
            if (*old, key) not in cut
        }
    if not isinstance(value, list):
        return value
    kept: list[Any] = []
    for index, item in enumerate(value):
        here = (*old, index)
        if here not in cut:
            origins[*new, len(kept)] = here
            kept.append(_without(item, cut, ((*new, len(kept)), here), origins))
    return kept


def original_path(path: Path, origins: dict[Path, Path]) -> Path:
    """Where in the document a path of the salvaged rest stands."""
    for length in range(len(path), 0, -1):
        if path[:length] in origins:
            return (*origins[path[:length]], *path[length:])
    return path
