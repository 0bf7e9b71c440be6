"""Somebody at the shop without a browser, for tests that only send and read."""

from __future__ import annotations

import http.cookiejar
import re
import urllib.parse
import urllib.request

from shop_server import Shop

__all__ = ["Hand"]


class Hand:
    """Somebody who is signed in, without a browser."""

    def __init__(self, shop: Shop) -> None:
        self.url = shop.url
        self.jar = http.cookiejar.CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.jar))
        page = self.get("/in/")
        sent = {"name": "Ada Example", "secret": "a long enough secret", "csrfmiddlewaretoken": _token(page)}
        self.post("/in/", urllib.parse.urlencode(sent).encode())

    def get(self, path: str) -> str:
        with self.opener.open(self.url + path, timeout=60) as answer:
            return str(answer.read().decode())

    def post(self, path: str, body: bytes, kind: str = "application/x-www-form-urlencoded") -> str:
        token = next((cookie.value for cookie in self.jar if cookie.name == "csrftoken"), "") or ""
        headers = {"Content-Type": kind, "X-CSRFToken": token, "Accept": "application/json"}
        request = urllib.request.Request(self.url + path, body, headers)  # noqa: S310 -- a server of our own
        with self.opener.open(request, timeout=60) as answer:
            return str(answer.read().decode())

    def form(self, path: str, **fields: str) -> str:
        return self.post(path, urllib.parse.urlencode(fields).encode())


def _token(page: str) -> str:
    found = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', page)
    assert found is not None
    return found[1]
