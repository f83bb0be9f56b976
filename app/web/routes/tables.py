"""The tables of the trade: a question is an address, and nothing is kept of it."""

from fastapi import APIRouter, Request, Response

from app.web.errors import Missing
from app.web.forms.reader import Reader
from app.web.pages.table_list import tables_page
from app.web.pages.table_page import table_page
from app.web.pages.tables import all_tables
from app.web.session import READS, settings_of_request
from app.web.templating import render, shown_in

router = APIRouter(dependencies=[READS])


@router.get("/tables")
def show_list(request: Request) -> Response:
    settings = settings_of_request(request)
    reader = Reader(request.query_params, settings)
    page = tables_page(reader.text("q")[:80], shown_in(settings))
    return render(request, "pages/tables/list.html", page, block="found")


@router.get("/tables/{word}")
def show_table(request: Request, word: str) -> Response:
    table = all_tables().get(word)
    if table is None:
        raise Missing("This table")
    settings = settings_of_request(request)
    page = table_page(table, Reader(request.query_params, settings), shown_in(settings))
    status = 422 if page.form.errors else 200
    return render(request, "pages/tables/table.html", page, status, block="calculator")
