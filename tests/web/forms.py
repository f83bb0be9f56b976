"""A form as a browser would send it back unchanged."""

from html.parser import HTMLParser

NOT_SENT = ("file", "submit")


class _Forms(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.forms: dict[str, dict[str, str]] = {}
        self._form: dict[str, str] = {}
        self._field = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = {name: value or "" for name, value in attrs}
        if tag == "form":
            self._form = self.forms.setdefault(found.get("action", ""), {})
        elif tag in ("select", "textarea"):
            self._field = found["name"]
        elif tag == "option" and self._field and ("selected" in found or self._first()):
            self._form[self._field] = found["value"]
        elif tag == "input" and "name" in found:
            self._input(found)

    def _first(self) -> bool:
        return self._field not in self._form

    def _input(self, found: dict[str, str]) -> None:
        kind = found.get("type")
        if kind not in ("checkbox", "radio", *NOT_SENT) or "checked" in found:
            self._form[found["name"]] = found.get("value", "")

    def handle_endtag(self, tag: str) -> None:
        if tag in ("select", "textarea"):
            self._form.setdefault(self._field, "")
            self._field = ""
        elif tag == "form":
            self._form = {}

    def handle_data(self, data: str) -> None:
        if self._field and self.lasttag == "textarea":
            self._form[self._field] = self._form.get(self._field, "") + data.removeprefix("\n")


def shown_values(html: str, action: str) -> dict[str, str]:
    """The fields of the form that is sent to `action`, with the values they show."""
    parser = _Forms()
    parser.feed(html)
    return parser.forms[action]
