"""Every page a link leads to, by its kind: two of each, and all garments and fleeces."""

import re
from collections import Counter
from urllib.error import HTTPError
from urllib.request import urlopen

from tests.running import Running

ID = re.compile(r"/[0-9a-z]{20}(?:-[a-z-]+)?(?=/|$)")
NUMBER = re.compile(r"/\d+(?=/|$)")
LINK = re.compile(r'href="(/[^"#]*)')
STATIC = "/static/"
ALL_OF = ("/garments/*", "/fleeces/*")
OF_EACH = 2
TABLES = "/tables/"
FEW_TABLES = 6
DESIGN = (
    "/garments/new/design?construction=cardigan%2C+round+yoke&person_id=&gauge_measure=10+cm"
    "&gauge_washed=yes&gauge_stitches=22&gauge_rows=30&measure_chest=96"
)
NOT_LINKED = (
    "/quick?have=340&yarn=&gauge_stitches=22&gauge_rows=30&garment=waistcoat&chest=96",
    "/quick?have=some&gauge_stitches=many&gauge_rows=few&chest=wide",
    "/skeins?state=free&sort=metres",
    "/skeins?q=no+such+skein",
    DESIGN,
    f"{DESIGN}&measure_body_length=20",
    "/no-such-page",
)
"""A question is an address; and pages for those who lost their way."""


def kind_of(address: str) -> str:
    return NUMBER.sub("/*", ID.sub("/*", address.split("?")[0]))


def every_page(program: Running) -> list[str]:
    """The addresses to look at, in the order in which links lead to them."""
    waiting, seen, found = ["/"], {"/"}, []
    count: Counter[str] = Counter()
    while waiting:
        address = waiting.pop(0)
        kind = kind_of(address)
        count[kind] += 1
        if count[kind] > OF_EACH and kind not in ALL_OF:
            continue
        page = _page(program, address)
        if page is None:
            continue
        found.append(address)
        for link in LINK.findall(page):
            link = link.replace("&amp;", "&")
            if link not in seen and not link.startswith(STATIC):
                seen.add(link)
                waiting.append(link)
    return [*found, *NOT_LINKED]


def one_of_a_template(addresses: list[str]) -> list[str]:
    """The same without most of the tables, which are all drawn by one template."""
    tables = [one for one in addresses if one.startswith(TABLES)]
    return [one for one in addresses if one not in tables[FEW_TABLES:]]


def _page(program: Running, address: str) -> str | None:
    """The text of a page; None of a file: a picture, a style sheet, a table to save."""
    try:
        with urlopen(program.address + address[1:]) as answer:
            is_page = answer.headers.get_content_type() == "text/html"
            return str(answer.read(), "utf-8") if is_page else None
    except HTTPError as error:
        raise AssertionError(f"a link leads to {address}, which answers {error.code}") from error
