"""A form of a page of the shop as a browser sends it: every field that it has, typed into or not."""

from __future__ import annotations

from html.parser import HTMLParser

__all__ = ["as_sent"]


def as_sent(page: str, **changes: str) -> dict[str, list[str]]:
    """What a browser sends of the form `piece-form` of a page.

    Args:
        page: as HTML.
        changes: what is typed or chosen instead, by the fields' names with `__` for a dot.
    """
    form = _Form()
    form.feed(page)
    for name, value in changes.items():
        key = name.replace("__", ".")
        assert key in form.fields, f"the form has no {key}"
        form.fields[key] = [*form.fields[key][:-1], value]
    return form.fields


class _Form(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.fields: dict[str, list[str]] = {}
        self._inside = False
        self._name = ""
        self._text = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        if tag == "form":
            self._inside = given.get("id") == "piece-form"
        if not self._inside:
            return
        name = given.get("name", "")
        if tag == "input" and name:
            self.fields.setdefault(name, []).append(given.get("value", ""))
        elif tag in {"select", "textarea"}:
            self._name, self._text = name, tag == "textarea"
            self.fields.setdefault(name, []).append("")
        elif tag == "option" and ("selected" in given or not self.fields[self._name][-1]):
            self.fields[self._name][-1] = given.get("value", "")

    def handle_data(self, data: str) -> None:
        if self._inside and self._text:
            self.fields[self._name][-1] += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "textarea":
            self._text = False
        elif tag == "form":
            self._inside = False
