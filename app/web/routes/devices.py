"""The devices that may use the book over the home network."""

from datetime import date
from io import BytesIO

from fastapi import APIRouter, Request, Response

from app.web.errors import Missing
from app.web.pages.devices import devices_page
from app.web.routes.pair import sharing_or_missing
from app.web.session import READS, ReadingSession, WritingSession
from app.web.sharing import Sharing
from app.web.templating import after_save, render
from app.work.device_pair import devices, revoke

router = APIRouter(prefix="/settings/devices")

LIST = "/settings/devices"


@router.get("")
def show(request: Request, session: ReadingSession) -> Response:
    sharing: Sharing | None = getattr(request.app.state, "sharing", None)
    page = devices_page(sharing, devices(session))
    return render(request, "pages/settings/devices.html", page)


@router.get("/code.svg", dependencies=[READS])
def code(request: Request) -> Response:
    import segno

    drawn = BytesIO()
    segno.make(sharing_or_missing(request).pairing, micro=False).save(
        drawn, kind="svg", scale=4, border=4, dark="#000", light="#fff", xmldecl=False
    )
    return Response(drawn.getvalue(), media_type="image/svg+xml")


@router.post("/{device_id}/revoke")
def shut_out(request: Request, session: WritingSession, device_id: str) -> Response:
    if not revoke(session, device_id, date.today()):
        raise Missing("This device", LIST)
    return after_save(request, LIST, "The device is shut out.")
