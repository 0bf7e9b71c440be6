"""From the first visit to a laid-out piece, in a real browser, with the network cut on the way."""

from __future__ import annotations

import re

from playwright.sync_api import Browser, BrowserContext, Page, expect

from shop_page import NOTHING_WAITS, until
from shop_server import Shop


def _open(context: BrowserContext, problems: list[str]) -> Page:
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.on("pageerror", lambda wrong: problems.append(str(wrong)))
    page.on("console", lambda said: problems.append(said.text) if "Content Security" in said.text else None)
    return page


def _make_owner(page: Page, shop: Shop) -> None:
    page.goto(shop.url)
    page.get_by_label("Your name").fill("Ada Example")
    page.get_by_label("Password, 10").fill("a long enough secret")
    page.get_by_label("The same again").fill("a long enough secret")
    page.get_by_role("button", name="Open the shop").click()
    expect(page.get_by_role("heading", name="Jobs")).to_be_visible()


def _make_piece(page: Page) -> None:
    page.get_by_role("link", name="New job").click()
    page.get_by_label("Name").fill("Porch of an invented house")
    page.get_by_role("button", name="Make the job").click()
    page.get_by_role("link", name="Add a piece").click()
    page.get_by_label("stock", exact=False).first.fill("W12x26")
    before = page.locator("#picture-now").inner_html()
    page.locator("#f-length").fill("9-6 1/2")
    page.locator("#f-length").press("Tab")
    expect(page.locator("#say-length")).to_contain_text("9'-6 1/2\"")
    expect(page.locator("#picture-now")).to_contain_text("9'-6 1/2\"")
    assert page.locator("#picture-now").inner_html() != before
    for name in ("copes", "holes", "angles"):
        page.get_by_role("button", name=f"Add of {name}").click()
        expect(page.locator(f"#list-{name} .item")).to_have_count(1)
    page.locator("#f-copes-0-depth").fill("not a length")
    page.locator("#f-copes-0-depth").press("Tab")
    expect(page.locator("#say-copes-0-depth")).to_contain_text("not a length")
    expect(page.locator("#f-copes-0-depth")).to_have_attribute("aria-invalid", "true")
    page.locator("#f-copes-0-depth").fill("1 3/4")
    page.locator("#f-copes-0-depth").press("Tab")
    expect(page.locator("#picture-now")).to_contain_text('1 3/4"')
    expect(page.locator("[aria-invalid]")).to_have_count(0)  # what was put right is not shown as wrong
    page.locator("#f-angles-0-rows").fill("2")
    page.locator("#f-holes-0-x").fill("4'-0")
    page.get_by_role("button", name="Save the piece").last.click()
    expect(page.get_by_role("rowheader", name="B1")).to_be_visible()
    expect(page.locator("#pieces")).to_contain_text("Bench")


def _add_fitter(page: Page) -> None:
    page.get_by_role("link", name="People").click()
    page.get_by_label("Name").fill("Flo Fitter")
    page.get_by_label("PIN of 4").fill("4711")
    page.get_by_role("button", name="Add").click()
    expect(page.get_by_role("rowheader", name="Flo Fitter")).to_be_visible()


def _know_tablet(tablet: Page, shop: Shop) -> None:
    tablet.goto(f"{shop.url}/in/?next=/tablets/")
    tablet.get_by_label("Name").fill("Ada Example")
    tablet.get_by_label("Password").fill("a long enough secret")
    tablet.get_by_role("button", name="Sign in").click()
    tablet.get_by_label("What it is called").fill("Bench tablet")
    tablet.get_by_role("button", name="Make it known").click()
    tablet.get_by_role("button", name="Sign out").click()
    tablet.get_by_label("Flo Fitter").check()
    tablet.get_by_label("PIN").fill("4711")
    tablet.get_by_role("button", name="Sign in").click()


def _walk(tablet: Page, context: BrowserContext) -> int:
    """Walk the card to its end, the network cut half way; returns how many steps there are."""
    tablet.get_by_role("link", name=re.compile("B1")).click()
    expect(tablet.locator("#work.stepping")).to_be_visible()  # its script runs: one step at a time
    steps = tablet.locator(".step").count()
    assert steps > 5
    until(tablet, "navigator.serviceWorker.controller !== null")
    tablet.reload()
    for number in range(steps):
        if number == steps // 2:
            until(tablet, NOTHING_WAITS)
            context.set_offline(True)
        if number == steps // 2 + 2:
            tablet.reload()  # the card that was opened comes back without network
            expect(tablet.locator("#net")).to_contain_text("2 ticks wait")
        tablet.locator(".step:visible").get_by_role("button", name="Done").click()
    expect(tablet.locator("#progress")).to_have_text(f"{steps} of {steps}")
    expect(tablet.locator("#net")).to_contain_text("No network.")
    expect(tablet.get_by_text("Done here. Nothing else waits here.")).to_be_visible()
    expect(tablet.get_by_role("link", name="All that waits here")).to_be_visible()
    return steps


def test_from_the_first_visit_to_a_laid_out_piece(browser: Browser, shop: Shop) -> None:
    problems: list[str] = []
    with (
        browser.new_context(viewport={"width": 1440, "height": 900}) as desk,
        browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True) as hand,
    ):
        page = _open(desk, problems)
        _make_owner(page, shop)
        _make_piece(page)
        job = page.url.split("#")[0]
        with page.expect_download() as download:
            page.get_by_role("link", name=re.compile("Packet")).click()
        assert download.value.path().read_bytes().startswith(b"%PDF")
        _add_fitter(page)
        page.goto(job)
        tablet = _open(hand, problems)
        _know_tablet(tablet, shop)
        steps = _walk(tablet, hand)
        expect(page.locator("#pieces")).to_contain_text("Bench")
        hand.set_offline(False)
        expect(tablet.locator("#net")).to_be_empty()
        expect(page.locator("#pieces")).to_contain_text("Fit")  # without reloading
        page.get_by_role("link", name="B1", exact=True).click()
        ticked = page.locator("#history li").filter(
            has_text=re.compile(r"Flo Fitter ticked \d+\. .* on B1 \(1 of 1\)")
        )
        expect(ticked).to_have_count(steps)
    assert not problems
