"""The page of the devices on the home network, and the form that pairs one."""

from dataclasses import dataclass

from app.web.forms.filled import Filled
from app.web.sharing import Sharing
from app.work.device_pair import Device


@dataclass(frozen=True, slots=True)
class PairPage:
    """The form that pairs a device."""

    form: Filled


@dataclass(frozen=True, slots=True)
class DevicesPage:
    """`addresses` and `code` while the book is shared; `qr` the drawing of the pairing address."""

    addresses: tuple[str, ...]
    code: str
    qr: str
    devices: tuple[Device, ...]


def devices_page(sharing: Sharing | None, found: tuple[Device, ...]) -> DevicesPage:
    """The page, with the code only while the book is shared."""
    if sharing is None:
        return DevicesPage((), "", "", found)
    return DevicesPage(sharing.addresses, sharing.code, "/settings/devices/code.svg", found)
