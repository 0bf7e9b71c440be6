"""Waiting for a page of the shop, whose content policy forbids what Playwright's own waiting asks of it."""

from __future__ import annotations

import time

from playwright.sync_api import Page, expect

__all__ = ["NOTHING_WAITS", "sign_in", "until"]

NOTHING_WAITS = "JSON.parse(localStorage.getItem('gageline-ticks') || '[]').length === 0"
"""Everything that was ticked or read on this tablet is at the shop."""


def sign_in(page: Page, url: str) -> None:
    """Sign in as the owner of the shop that the tests have seeded.

    Args:
        page: any.
        url: of the shop.
    """
    page.goto(f"{url}/in/")
    page.get_by_label("Name").fill("Ada Example")
    page.get_by_label("Password").fill("a long enough secret")
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("heading", name="Jobs")).to_be_visible()


def until(page: Page, condition: str, seconds: float = 60) -> None:
    """Wait until a condition holds in a page, asked for anew from outside.

    `Page.wait_for_function` asks by itself in the page, and there the content policy forbids evaluation.

    Args:
        page: that is open.
        condition: as an expression of JavaScript.
        seconds: to wait at most.
    """
    end = time.monotonic() + seconds
    while not page.evaluate(condition):
        assert time.monotonic() < end, f"not within {seconds:.0f} s: {condition}"
        page.wait_for_timeout(50)
