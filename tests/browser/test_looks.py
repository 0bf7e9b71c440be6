"""Every page on a phone, a tablet and a desk, light and dark: nothing runs over, and axe finds nothing.

With GAGELINE_SHOTS naming a folder every size is taken light and dark, and a picture of each page is left
there to be looked at; without it a phone in the dark and a tablet in the light stand for them.
"""

from __future__ import annotations

import os
from importlib.resources import files
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from shop_page import until
from shop_server import Shop

_AXE = (files("axe_core_python") / "axe.min.js").read_text("utf8")
_PAGES = {
    "sign-in": "/in/",
    "sign-in-shop": "/in/shop/",
    "office": "/office/",
    "job-new": "/office/new/",
    "job-import": "/office/import/",
    "job": "/office/1/",
    "job-mm": "/office/2/",
    "facts": "/office/1/facts/",
    "job-text": "/office/3/text/",
    "strength": "/office/1/strength/",
    "strength-mm": "/office/2/strength/",
    "frame": "/office/3/frame/",
    "frame-none": "/office/1/frame/",
    "frame-grid": "/office/3/frame/grid/",
    "member-new": "/office/3/frame/member/",
    "member": "/office/3/frame/member/of/G4/",
    "column": "/office/3/frame/column/of/P4/",
    "job-framed": "/office/3/",
    "history": "/office/1/log/",
    "labels": "/office/1/labels/",
    "piece-new": "/office/1/piece/",
    "piece-edit": "/office/1/piece/2/",
    "piece": "/piece/2/",
    "yard": "/yard/",
    "stick-new": "/yard/new/",
    "stick": "/yard/5/",
    "stick-measure": "/yard/5/measure/",
    "rack": "/yard/rack/",
    "saw": "/saw/",
    "saw-plan": "/saw/plan/1/",
    "saw-card": "/saw/1/",
    "saw-card-new": "/saw/2/",
    "saw-card-sheet": "{sheet}",
    "bench": "/bench/",
    "bench-card": "/bench/1/#bench-3",
    "bench-card-rows": "/bench/7/",
    "fit": "/fit/",
    "fit-card": "/fit/2/",
    "check": "/check/",
    "check-card": "/check/4/",
    "piece-framed": "{framed}",
    "gate": "/gate/",
    "people": "/people/",
    "person": "/people/3/",
    "tablets": "/tablets/",
    "refused": "/office/1/print/nothing.pdf",
}
_SIZES = {"phone": (390, 844), "tablet": (820, 1180), "desk": (1440, 900)}
_EVERY = [(size, scheme) for size in _SIZES for scheme in ("light", "dark")]
_LOOKS = _EVERY if os.environ.get("GAGELINE_SHOTS") else [("phone", "dark"), ("tablet", "light")]
_FLOOR = (
    "yard",
    "stick-new",
    "stick",
    "stick-measure",
    "saw",
    "saw-card",
    "saw-card-new",
    "saw-card-sheet",
    "bench",
    "bench-card",
    "bench-card-rows",
    "fit",
    "fit-card",
    "check",
    "check-card",
    "gate",
    "sign-in-shop",
)
_ALL_THERE = """[...document.querySelectorAll('[hx-trigger=load]')]
  .every((one) => !one.textContent.includes('Being reckoned'))"""
_SMALL_TARGETS = """() => [...document.querySelectorAll('a, button, input, select, summary')]
  .filter((one) => one.checkVisibility({visibilityProperty: true}) && !one.matches('.skip, [type=hidden]')
    && !one.closest('label.pick') && !(one.matches('a') && one.closest('p, h1, td, th')))
  .map((one) => [one.getBoundingClientRect(), one.outerHTML.slice(0, 90)])
  .filter(([box]) => box.width > 1 && (box.height < 43.5 || box.width < 43.5))
  .map(([box, html]) => `${Math.round(box.width)} x ${Math.round(box.height)} ${html}`)"""


def _signed_in(context: BrowserContext, shop: Shop) -> Page:
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.goto(f"{shop.url}/in/")
    page.get_by_label("Name").fill("Ada Example")
    page.get_by_label("Password").fill("a long enough secret")
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("heading", name="Jobs")).to_be_visible()
    return page


def _violations(page: Page) -> list[str]:
    page.evaluate(_AXE)  # through the debugger, which the content policy does not bind
    rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
    options = {"runOnly": rules, "iframes": False}
    found = page.evaluate("(options) => axe.run(document, options)", options)["violations"]
    return [f"{one['id']}: {node['html'][:120]}" for one in found for node in one["nodes"]]


@pytest.mark.parametrize(("size", "scheme"), _LOOKS)
def test_every_page_fits_and_everybody_can_use_it(
    browser: Browser, seeded: Shop, size: str, scheme: str
) -> None:
    width, height = _SIZES[size]
    folder = os.environ.get("GAGELINE_SHOTS", "")
    wrong: list[str] = []
    with browser.new_context(
        viewport={"width": width, "height": height},
        color_scheme="dark" if scheme == "dark" else "light",
        service_workers="block",
    ) as context:
        page = _signed_in(context, seeded)
        page.goto(f"{seeded.url}/office/3/frame/")
        framed = page.locator("main a[href^='/piece/']").last.get_attribute("href")
        page.goto(f"{seeded.url}/saw/")
        sheet = page.locator("main .cards a").filter(has_text="sheet").last.get_attribute("href")
        for name, address in _PAGES.items():
            page.goto(seeded.url + address.format(framed=framed, sheet=sheet))
            page.wait_for_load_state("load")
            until(page, _ALL_THERE)
            over = page.evaluate("document.documentElement.scrollWidth - innerWidth")
            if over > 0:
                wrong.append(f"{name}: {over} px too wide")
            if name in _FLOOR:
                wrong += [f"{name}: small target {one}" for one in page.evaluate(_SMALL_TARGETS)]
            wrong += [f"{name}: {one}" for one in _violations(page)]
            if folder:
                Path(folder).mkdir(parents=True, exist_ok=True)
                page.screenshot(path=Path(folder) / f"{name}-{size}-{scheme}.png", full_page=True)
    assert not wrong, "\n".join(wrong)


def test_a_long_mark_does_not_squeeze_the_code_of_its_label(browser: Browser, seeded: Shop) -> None:
    with browser.new_context(viewport={"width": 390, "height": 844}, service_workers="block") as context:
        page = _signed_in(context, seeded)
        page.goto(f"{seeded.url}/office/1/labels/")
        page.evaluate("document.querySelector('.label .mark').textContent = 'LEVEL-2-BEAM-EAST-'.repeat(4)")
        box = page.locator(".label .code svg").first.bounding_box()
        assert box is not None
        assert box["width"] == box["height"] >= 120  # px, 32 mm on paper


@pytest.mark.parametrize(("width", "text"), [(320, "100%"), (820, "200%")])
def test_pages_reflow_when_they_are_enlarged(browser: Browser, seeded: Shop, width: int, text: str) -> None:
    """WCAG 2.2, 1.4.4 and 1.4.10: text to 200 %, and 320 px without scrolling both ways."""
    over: dict[str, int] = {}
    with browser.new_context(viewport={"width": width, "height": 640}, service_workers="block") as context:
        page = _signed_in(context, seeded)
        for name in (
            "office",
            "job",
            "piece",
            "bench",
            "bench-card",
            "fit-card",
            "check-card",
            "saw-card",
            "stick",
        ):
            page.goto(seeded.url + _PAGES[name])
            page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", text)
            over[name] = page.evaluate("document.documentElement.scrollWidth - innerWidth")
    assert {name: px for name, px in over.items() if px > 0} == {}
