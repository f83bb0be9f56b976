"""The help: how the program reckons, told to a newcomer."""

from dataclasses import dataclass

from fastapi import APIRouter, Request, Response

from app.web.session import READS
from app.web.templating import render

router = APIRouter(prefix="/help")


@dataclass(frozen=True, slots=True)
class HelpPage:
    """A page that is the same for everyone."""


@router.get("/garments", dependencies=[READS])
def garments(request: Request) -> Response:
    return render(request, "pages/help/garments.html", HelpPage())
