"""Fleeces: the list, and what one can become."""

from fastapi import APIRouter, Request, Response
from fastapi.responses import RedirectResponse

from app.planning.fleeces import metres_at
from app.web.fleece_shown import fleece_or_missing
from app.web.forms.fleece import fleece_stamp
from app.web.forms.grist import filled_grist, read_grist
from app.web.pages.fleece import AtGrist, fleece_page
from app.web.pages.fleeces import fleeces_page
from app.web.pages.photos import photos_shown
from app.web.pages.wool_of import wool_of_holding
from app.web.session import ReadingSession
from app.web.templating import render, shown_in
from app.work.fleece_find import all_fleeces, lying_wet, way_ahead
from app.work.fleece_grist import likely_tex
from app.work.photo_find import photos_of
from app.work.reckoning import current

router = APIRouter()


@router.get("/fleeces")
def show_list(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    page = fleeces_page(all_fleeces(known), shown_in(known.book.settings))
    return render(request, "pages/fleeces/list.html", page)


@router.get("/fleeces/breeds")
def breeds_are_a_table(request: Request) -> Response:
    return RedirectResponse(str(request.url.replace(path="/tables/breeds")), 308)


@router.get("/fleeces/{fleece_id}")
def show(request: Request, session: ReadingSession, fleece_id: str) -> Response:
    known = current(session)
    found, settings = fleece_or_missing(known, fleece_id), known.book.settings
    usual = likely_tex(known.book, fleece_id)
    reader, tex = read_grist(request.query_params, settings, usual)
    page = fleece_page(
        known=found,
        at=AtGrist(tex, metres_at(found.answer.yarn_g, tex)),
        grist=reader.filled() if reader.typed("grist") else filled_grist(tex, settings),
        stages=way_ahead(known, found),
        stamp=fleece_stamp(found.fleece, found.holding),
        shown=shown_in(settings),
        lying_wet=lying_wet(known, found),
        wool=wool_of_holding(known.book, found.holding.id, shown_in(settings)),
        photos=photos_shown(
            photos_of(known.book.photos, "fleece", fleece_id), found.fleece.name, shown_in(settings)
        ),
    )
    status = 200 if reader.ok else 422
    return render(request, "pages/fleeces/fleece.html", page, status, block="becomes")
