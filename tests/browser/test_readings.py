"""Readings at Check and at the Bench in a real browser, with the network cut on the way."""

from __future__ import annotations

from playwright.sync_api import Browser, BrowserContext, Page, expect

from shop_page import NOTHING_WAITS, until
from shop_server import Shop


def _opened(context: BrowserContext, shop: Shop, address: str) -> Page:
    """A card, opened twice so that it is kept on the tablet."""
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.goto(f"{shop.url}/in/?next={address}")
    page.get_by_label("Name").fill("Ada Example")
    page.get_by_label("Password").fill("a long enough secret")
    page.get_by_role("button", name="Sign in").click()
    expect(page.locator("#work")).to_be_visible()
    until(page, "navigator.serviceWorker.controller !== null")
    page.reload()
    expect(page.locator("#work")).to_be_visible()
    return page


def test_an_inspection_goes_on_without_network(browser: Browser, seeded: Shop) -> None:
    with browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True) as context:
        page = _opened(context, seeded, "/check/5/")
        context.set_offline(True)
        for number, value in (("2", "0"), ("3", "1/16")):
            page.locator(f"#f-read-{number}").fill(value)
            page.locator(f"#f-read-{number}").press("Enter")
            expect(page.locator(f"#say-read-{number}")).to_have_text("kept on this tablet")
        expect(page.locator("#net")).to_contain_text("No network. 2 ticks wait")
        page.reload()  # the sheet that was opened comes back without network, with what was read
        expect(page.locator("#f-read-3")).to_have_value("1/16")
        expect(page.locator("#outcome")).to_contain_text("nothing read yet")
        context.set_offline(False)
        expect(page.locator("#net")).to_be_empty()
        expect(page.locator("#say-read-3")).to_have_text("good")
        expect(page.locator("#outcome")).to_contain_text("2 of ")
        page.get_by_role("button", name="To the Gate").click()
        expect(page.locator(".by")).to_contain_text("let go by Ada Example")
        until(page, NOTHING_WAITS)


def test_a_measured_stick_changes_the_card(browser: Browser, seeded: Shop) -> None:
    with browser.new_context(viewport={"width": 820, "height": 1180}) as context:
        page = _opened(context, seeded, "/bench/12/")
        summary = page.locator("#stick summary")
        expect(summary).to_contain_text("not measured")
        summary.click()
        page.locator("#f-stick-length").fill("60'")
        page.locator("#f-stick-length").press("Enter")
        expect(summary).to_contain_text("Measure it again")  # the card came anew from the shop
        expect(page.locator("#stick")).to_contain_text("longer than the piece")
        expect(page.locator("#f-stick-camber")).to_be_visible()  # the next reading is at hand
        page.reload()
        expect(page.locator("#f-stick-length")).to_have_value("60'-0\"")


def test_the_next_reading_is_typed_in_peace_while_the_first_one_goes_up(
    browser: Browser, seeded: Shop
) -> None:
    with browser.new_context(viewport={"width": 820, "height": 1180}) as context:
        page = _opened(context, seeded, "/bench/12/")
        page.locator("#stick summary").click()
        page.locator("#f-stick-length").fill("60'")
        page.locator("#f-stick-left-gap").click()
        page.keyboard.type("1/")
        expect(page.locator("#stick-said")).to_contain_text("when you leave these fields")
        expect(page.locator("#f-stick-left-gap")).to_have_value("1/")
        page.keyboard.type("8")
        page.locator("#stick-said").click()
        expect(page.locator("#stick summary")).to_contain_text("Measure it again")
        until(page, NOTHING_WAITS)
        page.reload()
        expect(page.locator("#f-stick-left-gap")).to_have_value('1/8"')
        expect(page.locator("#f-stick-length")).to_have_value("60'-0\"")
        page.get_by_role("link", name="Print shop mezzanine").first.click()
        for words in ("read length 60'-0\"", 'read left-gap 1/8"'):
            expect(page.locator("#history li").filter(has_text=words)).to_have_count(1)
