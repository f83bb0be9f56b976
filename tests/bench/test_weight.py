"""What a first visit costs over the wire: the page, its style, its script and its icon."""

import re
from contextlib import closing

from starlette.testclient import TestClient

from app.web.server import create_app
from tests.bench.shelf import guild_book, store_of

HOME = "http://127.0.0.1:8765"
MOST_BYTES = 60_000


def test_the_first_visit_of_a_list_page_is_light(tmp_path):
    with (
        closing(store_of(tmp_path / "data", guild_book(60, 7))) as store,
        TestClient(create_app(store), base_url=HOME) as browser,
    ):
        page = browser.get("/skeins")
        linked = re.findall(r'(?:href|src)="(/static/[^"]+)"', page.text)
        answers = [page, *(browser.get(one) for one in linked)]
    assert len(linked) > 4
    sizes = {answer.url.path: answer.num_bytes_downloaded for answer in answers}
    assert sum(sizes.values()) <= MOST_BYTES, sizes
    assert page.headers["content-encoding"] == "gzip"
