"""Every page on a phone, a tablet and a desk, light and dark, enlarged and printed: nothing runs over or is
clipped, what is pressed is large enough, and axe finds nothing.

A page is opened once and then resized, as a tablet that is turned. With GAGELINE_SHOTS naming a folder a
picture of each page in each size, light and dark, is left there to be looked at.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from shop_page import sign_in, until
from shop_server import start_shop

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
_NARROW, _ENLARGED, _PAPER = (320, 640), (820, 640), (720, 960)  # the last as wide as a letter sheet prints
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
_SMALL_TARGETS = """(least) => [...document.querySelectorAll('a, button, input, select, summary')]
  .filter((one) => one.checkVisibility({visibilityProperty: true}) && !one.matches('.skip, [type=hidden]')
    && !one.closest('label.pick') && !(one.matches('a') && one.closest('p, h1, td, th')))
  .map((one) => [one.getBoundingClientRect(), one.outerHTML.slice(0, 90)])
  .filter(([box]) => box.width > 1 && (box.height < least || box.width < least))
  .map(([box, html]) => `${Math.round(box.width)} x ${Math.round(box.height)} ${html}`)"""


_OVER = "document.documentElement.scrollWidth - innerWidth"
_CLIPPED = """() => [...document.querySelectorAll('.scroll')]
  .filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1)
  .map((one) => `${one.scrollWidth - one.clientWidth} px of ${one.getAttribute('aria-label')}`)"""
_RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(scope="module")
def shown(
    browser: Browser, seeded_home: Path, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[tuple[Page, str]]:
    """A page of somebody who is signed in, and the address of the shop."""
    shop = start_shop(Path(shutil.copytree(seeded_home, tmp_path_factory.mktemp("shown") / "home")))
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        page.set_default_timeout(60_000)
        sign_in(page, shop.url)
        yield page, shop.url
    shop.stop()


def _size(page: Page, size: tuple[int, int], text: str = "") -> None:
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", text)


def _violations(page: Page, only: list[str], kind: str = "rule") -> Iterator[str]:
    options = {"runOnly": {"type": kind, "values": only}, "iframes": False, "resultTypes": ["violations"]}
    for one in page.evaluate("(options) => axe.run(document, options)", options)["violations"]:
        yield from (f"{one['id']}: {node['html'][:120]}" for node in one["nodes"])


def _wrong(page: Page, name: str) -> Iterator[str]:
    """What is wrong with an open page, in every size and way that it is looked at."""
    for size, box in _SIZES.items():
        _size(page, box)
        if (over := page.evaluate(_OVER)) > 0:
            yield f"{over} px too wide on a {size}"
        least = 43.5 if name in _FLOOR else 23.5  # px; WCAG 2.2, 2.5.8 asks for 24
        yield from (f"small target on a {size}: {one}" for one in page.evaluate(_SMALL_TARGETS, least))
    page.evaluate(_AXE)  # through the debugger, which the content policy does not bind
    yield from _violations(page, _RULES, "tag")
    page.emulate_media(color_scheme="dark")
    yield from (f"dark: {one}" for one in _violations(page, ["color-contrast"]))  # all that the dark changes
    page.emulate_media(color_scheme="light")
    _size(page, _SIZES["phone"])
    yield from (f"phone: {one}" for one in _violations(page, ["scrollable-region-focusable"]))
    for words, box, text in (("320 px", _NARROW, ""), ("200 % text", _ENLARGED, "200%")):
        _size(page, box, text)
        if (over := page.evaluate(_OVER)) > 0:
            yield f"{over} px too wide at {words}"
    _size(page, _PAPER)
    page.emulate_media(media="print")
    yield from (f"clipped on paper: {one}" for one in page.evaluate(_CLIPPED))
    page.emulate_media(media="screen")


def _shoot(page: Page, name: str, folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for size, box in _SIZES.items():
        _size(page, box)
        for scheme in ("dark", "light"):
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            page.screenshot(path=folder / f"{name}-{size}-{scheme}.png", full_page=True)


@pytest.mark.parametrize("half", [0, 1])
def test_every_page_fits_and_everybody_can_use_it(shown: tuple[Page, str], half: int) -> None:
    page, url = shown
    folder = os.environ.get("GAGELINE_SHOTS", "")
    page.goto(f"{url}/office/3/frame/")
    framed = page.locator("main a[href^='/piece/']").last.get_attribute("href")
    page.goto(f"{url}/saw/")
    sheet = page.locator("main .cards a").filter(has_text="sheet").last.get_attribute("href")
    wrong: list[str] = []
    for name, address in list(_PAGES.items())[half::2]:
        _size(page, _SIZES["desk"])
        page.goto(url + address.format(framed=framed, sheet=sheet))
        until(page, _ALL_THERE)
        wrong += [f"{name}: {one}" for one in _wrong(page, name)]
        if folder:
            _shoot(page, name, Path(folder))
    assert not wrong, "\n".join(wrong)


def test_a_long_mark_does_not_squeeze_the_code_of_its_label(shown: tuple[Page, str]) -> None:
    page, url = shown
    _size(page, _SIZES["phone"])
    page.goto(f"{url}/office/1/labels/")
    page.evaluate("document.querySelector('.label .mark').textContent = 'LEVEL-2-BEAM-EAST-'.repeat(4)")
    box = page.locator(".label .code svg").first.bounding_box()
    assert box is not None
    assert box["width"] == box["height"] >= 120  # px, 32 mm on paper


def test_on_a_phone_the_places_leave_the_screen_to_the_card(shown: tuple[Page, str]) -> None:
    page, url = shown
    _size(page, _SIZES["phone"])
    page.goto(f"{url}/bench/1/")
    box = page.locator("#work").bounding_box()
    assert box is not None
    assert box["y"] <= 60  # px: one row of targets of 44 px
    assert page.locator(".strip a").first.text_content() == "Office 3 jobs"
    page.get_by_role("button", name="Sign out").scroll_into_view_if_needed()
    expect(page.get_by_role("button", name="Sign out")).to_be_in_viewport()


def test_on_a_low_screen_nothing_lies_over_the_reading(shown: tuple[Page, str]) -> None:
    page, url = shown
    for size in (_NARROW, (844, 390)):  # the smallest phone, and one that is turned
        _size(page, size)
        page.goto(f"{url}/bench/1/")
        reading = page.locator(".step:visible .readings span").first
        reading.evaluate("(one) => one.scrollIntoView({ block: 'end' })")
        top = """(one) => { const box = one.getBoundingClientRect();
            const there = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
            return one.contains(there); }"""
        assert reading.evaluate(top), size


def test_on_a_phone_no_row_of_buttons_lies_over_a_field(shown: tuple[Page, str]) -> None:
    page, url = shown
    _size(page, _SIZES["phone"])
    page.goto(f"{url}/saw/")
    sheet = page.locator("main .cards a").filter(has_text="sheet").last.get_attribute("href")
    page.goto(f"{url}{sheet}")
    field = page.locator(".step:visible input.big").first
    expect(field).to_be_visible()
    height = page.evaluate("document.documentElement.scrollHeight")
    free = """(one) => { const box = one.getBoundingClientRect();
        const x = box.x + box.width / 2, y = box.y + box.height / 2;
        return y > innerHeight || one === document.elementFromPoint(x, y); }"""
    for down in range(0, height, 60):
        page.evaluate("(y) => scrollTo(0, y)", down)
        if field.evaluate("(one) => one.getBoundingClientRect().top > 0"):
            assert field.evaluate(free), down


def test_what_is_folded_says_plus_and_what_is_open_minus(shown: tuple[Page, str]) -> None:
    page, url = shown
    page.goto(f"{url}/office/1/piece/2/")
    sign = "(one) => getComputedStyle(one, '::before').content"
    folded = page.locator("details:not([open]) > summary").first
    assert folded.evaluate(sign) == '"+"'
    folded.click()
    assert page.locator("details[open] > summary").first.evaluate(sign) == '"\u2212"'
