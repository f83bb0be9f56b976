"""Every page of the demo: accessible, as wide as its window, quiet, and of this machine only."""

import pytest

from tests.browser.every_page import one_of_a_template

pytestmark = pytest.mark.browser

WIDTHS = (1280, 390, 360)
AS_WIDE_AS_ITS_WINDOW = """() => {
  const page = document.documentElement;
  if (page.scrollWidth <= page.clientWidth) return [];
  const wide = [...document.querySelectorAll("body *")]
    .filter(one => one.scrollWidth > one.clientWidth && one.clientWidth > 0)
    .map(one => one.tagName + "." + one.className).slice(-2);
  return [`${page.scrollWidth} px wide, by ${wide}`];
}"""
SMALL_TARGETS = """() => [...document.querySelectorAll("button, .button, input[type=text], select")]
  .filter(one => one.offsetParent && one.getBoundingClientRect().height < 24)
  .map(one => one.outerHTML.slice(0, 80))"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(page, demo, addresses, scheme):
    from axe_playwright_python.sync_playwright import Axe

    axe, faults = Axe(), []
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    page.set_viewport_size({"width": 390 if scheme == "dark" else 1280, "height": 900})
    for address in one_of_a_template(addresses):
        page.goto(demo.address + address[1:])
        answer = axe.run(page).response
        assert len(answer["passes"]) > 5, address
        for found in answer["violations"]:
            where = [node["target"] for node in found["nodes"]][:3]
            faults.append(f"{address}: {found['id']} at {where}: {found['help']}")
    assert faults == [], "\n".join(faults)


def test_every_page_has_a_title_fits_its_window_and_is_easy_to_press(page, demo, addresses):
    faults = []
    for address in addresses:
        page.goto(demo.address + address[1:])
        if page.locator("h1").count() != 1 or page.title().startswith("·"):
            faults.append(f"{address} has no title of its own")
        for width in WIDTHS:
            page.set_viewport_size({"width": width, "height": 800})
            wide = page.evaluate(AS_WIDE_AS_ITS_WINDOW)
            faults += [f"{address} at {width} px: {one}" for one in wide]
        faults += [f"{address}: too small: {one}" for one in page.evaluate(SMALL_TARGETS)]
    assert faults == [], "\n".join(faults)


def test_a_form_sent_empty_says_what_is_missing_and_stays_accessible(page, demo, addresses):
    from axe_playwright_python.sync_playwright import Axe

    axe, faults = Axe(), []
    page.set_viewport_size({"width": 360, "height": 800})
    forms = [one for one in addresses if one.endswith("/new")]
    assert len(forms) > 5
    for address in forms:
        page.goto(demo.address + address[1:])
        page.locator("main form button.chief").last.click()
        if page.locator(".faults a").count() == 0 or page.locator(".fault").count() == 0:
            faults.append(f"{address}: nothing is said to be missing")
        found = axe.run(page).response["violations"]
        faults += [f"{address}: {one['id']} at {one['nodes'][0]['target']}" for one in found]
        faults += [f"{address}: {one}" for one in page.evaluate(AS_WIDE_AS_ITS_WINDOW)]
    assert faults == [], "\n".join(faults)
