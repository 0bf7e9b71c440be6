"""A session that ends while somebody types: nothing is lost, and the form goes on with the next session."""

from __future__ import annotations

from playwright.sync_api import Browser, expect

from shop_page import sign_in
from shop_server import Shop

_SESSION = "gageline"


def test_what_is_typed_outlives_its_session(browser: Browser, seeded: Shop) -> None:
    with browser.new_context(service_workers="block") as context:
        page, other = context.new_page(), context.new_page()
        sign_in(page, seeded.url)
        page.goto(f"{seeded.url}/office/1/piece/")
        page.locator("[name=mark]").fill("KEPT1")
        page.locator("[name=stock]").fill("W12x26")
        context.clear_cookies(name=_SESSION)
        page.get_by_role("button", name="Add of copes").click()
        expect(page.locator("#net")).to_contain_text("What is typed here stays")
        sign_in(other, seeded.url)
        page.get_by_role("button", name="Add of copes").click()
        page.locator("[name='copes.0.length']").fill("4")
        page.locator("[name='copes.0.depth']").fill("1")
        expect(page.locator("#net")).to_be_empty()
        context.clear_cookies(name=_SESSION)
        page.get_by_role("button", name="Save the piece").click()
        expect(page.get_by_role("heading", name="You are signed out")).to_be_visible()
        sign_in(other, seeded.url)
        page.get_by_role("button", name="Send it again").click()
        expect(page.get_by_role("link", name="KEPT1", exact=True)).to_be_visible()
