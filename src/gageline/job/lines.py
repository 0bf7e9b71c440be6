"""Which line of a TOML text each table, key and item of a list stands on, for messages."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

__all__ = ["line_of", "lines_of_keys"]

Path = tuple[str | int, ...]
_TOKEN = re.compile(
    r'(?P<text>"""(?:\\.|[^\\])*?"{3,5}|' + r"'''.*?'{3,5}" + r'|"(?:\\.|[^"\\\n])*"|' + r"'[^'\n]*')"
    r"|(?P<comment>#[^\n]*)|(?P<sign>[\[\]{},=\n])|(?P<word>[^\s\[\]{},=#\"']+)",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class _Open:
    """A list or an inline table that has begun and not ended.

    Args:
        path: of the list or table.
        is_list: whether its items are numbered.
        item: number of the current item.
    """

    path: Path
    is_list: bool
    item: int = 0


@dataclass(slots=True)
class _Walk:
    """A walk along the tokens of a well-formed text.

    Args:
        found: lines by path, so far.
        counts: number of the last table of each list of tables.
        here: path of the current table header.
        opened: lists and inline tables around the current token.
        names: of the key or header being read.
        at: path of the value being read.
        state: what comes next: a key, a value, or a header's names.
        line: counted from 1.
    """

    found: dict[Path, int] = field(default_factory=dict)
    counts: dict[Path, int] = field(default_factory=dict)
    here: Path = ()
    opened: list[_Open] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    at: Path = ()
    state: str = "key"
    array: bool = False
    line: int = 1

    def name_or_value(self, text: str, *, quoted: bool) -> None:
        if self.state == "value":
            self.found.setdefault(self.at, self.line)
        elif self.state in {"key", "header"}:
            self.names.extend([text[1:-1]] if quoted else [name for name in text.split(".") if name])

    def sign(self, sign: str) -> None:
        match sign:
            case "\n":
                self.line += 1
                if not self.opened:
                    self.state, self.names, self.array = "key", [], False
            case "=":
                self.key()
            case "[" | "{":
                self.begin(sign)
            case ",":
                self.next_item()
            case _:
                self.end()

    def key(self) -> None:
        path = self.opened[-1].path if self.opened else self.here
        for name in self.names:
            path = (*path, name)
            self.found.setdefault(path, self.line)
        self.at, self.state = path, "value"

    def begin(self, sign: str) -> None:
        if self.state == "value":
            self.found.setdefault(self.at, self.line)
            self.opened.append(_Open(self.at, is_list=sign == "["))
            self.item() if sign == "[" else self.table()
        else:  # a header: one bracket, or two of a list of tables
            self.array, self.state = self.state == "header", "header"

    def item(self) -> None:
        self.at, self.state = (*self.opened[-1].path, self.opened[-1].item), "value"

    def table(self) -> None:
        self.names, self.state = [], "key"

    def next_item(self) -> None:
        last = self.opened.pop()
        self.opened.append(_Open(last.path, last.is_list, last.item + 1))
        self.item() if last.is_list else self.table()

    def end(self) -> None:
        if self.opened:
            self.opened.pop()
            self.state = "ended"
        elif self.state == "header":
            self.here = self.header()
            self.found.setdefault(self.here, self.line)
            if self.array:
                self.found.setdefault(self.here[:-1], self.line)
            self.state = "ended"

    def header(self) -> Path:
        """The path of a table header: names, with the number of the current item after each list."""
        path: Path = ()
        for depth, name in enumerate(self.names):
            path = (*path, name)
            if self.array and depth == len(self.names) - 1:
                self.counts[path] = self.counts.get(path, -1) + 1
            if path in self.counts:
                path = (*path, self.counts[path])
        return path


def lines_of_keys(text: str) -> dict[Path, int]:
    """The line, counted from 1, of every table header, key and item of a well-formed TOML text.

    Args:
        text: a text that `tomllib` has read.

    Returns:
        Paths such as ("piece", 3, "copes", 0, "depth") and their lines.
    """
    walk = _Walk()
    for token in _TOKEN.finditer(text):
        if token["sign"]:
            walk.sign(token["sign"])
        elif token["word"]:
            walk.name_or_value(token["word"], quoted=False)
        elif token["text"]:
            walk.name_or_value(token["text"], quoted=True)
            walk.line += token["text"].count("\n")
    return walk.found


def line_of(path: Path, lines: dict[Path, int]) -> int | None:
    """The line of a path, or of the nearest table or list around it."""
    for length in range(len(path), 0, -1):
        if path[:length] in lines:
            return lines[path[:length]]
    return None
