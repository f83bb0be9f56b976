"""The picture of a garment as a file to keep."""

import re

from fastapi import APIRouter, Response

from app.planning.picture import picture
from app.web.garment_shown import plan_or_missing
from app.web.pages.picture import drawing
from app.web.session import ReadingSession
from app.web.templating import draw, shown_in
from app.work.reckoning import current

router = APIRouter()

FILE = "pictures/garment_file.svg"


@router.get("/garments/{plan_id}/picture.svg")
def keep(session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    known = current(session)
    drawn = drawing(picture(known.book, known.reckoning, plan_id), shown_in(known.book.settings))
    headers = {"content-disposition": f'attachment; filename="{file_name(plan.name)}"'}
    return Response(draw(FILE, {"drawn": drawn}), media_type="image/svg+xml", headers=headers)


def file_name(name: str) -> str:
    """A name any disk can hold: "Round-yoke pullover" is round-yoke-pullover.svg."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    return f"{plain[:60] or 'garment'}.svg"
