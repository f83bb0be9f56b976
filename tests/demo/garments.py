"""The demo's people and the seven things they are to wear."""

from dataclasses import replace
from datetime import date
from typing import Any

from app.book.errand import Errand
from app.book.gauge import Gauge
from app.book.holding import Holding
from app.book.knitting import Progress
from app.book.person import Measure, Person
from app.book.plan import Part, Plan, Promise, RoleYarn
from app.book.shape import Counted, Rectangle, Run, Runs, Stated, Strand, Trapezoid
from app.book.swatch import Swatch, gauge_of
from app.book.woolbook import Portion, mm_of, use
from tests.demo.diary import Diary
from tests.demo.needles import BALLS_OF_THE_BODY, came_off, on_its_way, weigh_in
from tests.demo.shelf import Wool

INES = {
    "chest": 960,
    "waist": 800,
    "hips": 1020,
    "upper arm": 300,
    "wrist": 160,
    "arm length to underarm": 450,
    "head": 560,
}
OSKAR = {
    "chest": 1060,
    "waist": 940,
    "hips": 1040,
    "upper arm": 350,
    "wrist": 180,
    "arm length to underarm": 490,
    "head": 590,
}
TILDE = {
    "chest": 620,
    "waist": 570,
    "hips": 660,
    "upper arm": 190,
    "wrist": 130,
    "arm length to underarm": 290,
    "head": 520,
}


def keep_garments(diary: Diary, wool: Wool, swatches: dict[str, Swatch]) -> None:
    """People, plans and what has been knit so far."""
    ines, oskar = _person(diary, "Ines", INES), _person(diary, "Oskar", OSKAR)
    tilde = _person(diary, "Tilde", TILDE)
    _waistcoat(diary, wool, oskar, swatches["N"])
    _pullover(diary, wool, ines, swatches["B"])
    _cardigan(diary, wool, oskar, swatches["T"])
    _small_pullover(diary, wool, tilde)
    _wrist_warmers(diary, wool, tilde)
    _shawl(diary, wool, ines)
    _something_soft(diary, wool)
    diary.add(Errand(diary.new_id(), "Wool soap for the next wash", "buy"))
    diary.add(Errand(diary.new_id(), "Oil the wheel", "other", done=date(2026, 10, 10)))


def _waistcoat(diary: Diary, wool: Wool, person: Person, swatch: Swatch) -> None:
    """Finished, with its left-overs weighed."""
    plan = _plan(diary, wool, "Waistcoat", person, "N", gauge_of(swatch))
    _part(diary, plan, "Back", Rectangle(530, 590), edges="cast on, off and seams")
    _part(diary, plan, "Fronts", Rectangle(265, 590), copies=2, edges="cast on, off and seams")
    _part(diary, plan, "Bands", Counted(300, 8), gauge=Gauge(23.0, 30.0, needle_mm=3.5))
    garment = _garment(diary, plan)
    _knit(diary, wool, garment, "N-01", date(2026, 8, 9))
    _knit(diary, wool, garment, "N-02", date(2026, 8, 23))
    end = diary.add(
        Holding(
            diary.new_id(),
            "left-over",
            "N-03 end",
            fleece_id=wool.skeins["N-03"].fleece_id,
            yarn_id=plan.yarns[0].yarn_id,
            day=date(2026, 9, 6),
            place="Mending basket",
        )
    )
    whole = diary.held[wool.skeins["N-03"].id]
    left = Portion(end, 9_000, mm_of(whole, 9_000))
    taken = Portion(wool.skeins["N-03"], whole.mg, whole.mm)
    entry = use(diary.held, [taken], garment, [left], waste_mg=1_000)
    diary.post(date(2026, 9, 6), entry, "One front; the rest of the skein kept for mending.")
    diary.weigh(end, date(2026, 9, 6), 9)
    _knit(diary, wool, garment, "N-04", date(2026, 9, 20), left_g=31)
    on_its_way(diary, plan, date(2026, 7, 27))
    came_off(diary, plan, date(2026, 9, 20))


def _pullover(diary: Diary, wool: Wool, person: Person, swatch: Swatch) -> None:
    """On the needles, and about to run short; its swatch was weighed."""
    plan = _plan(
        diary, wool, "Round-yoke pullover", person, "B", gauge_of(swatch), date(2026, 12, 20)
    )
    body = _part(diary, plan, "Body", Rectangle(1040, 400), edges="cast on and off")
    sleeves = _part(diary, plan, "Sleeves", Trapezoid(220, 360, 450), copies=2)
    yoke = _part(diary, plan, "Yoke", Trapezoid(1320, 480, 220), edges="cast on and off")
    garment = _garment(diary, plan)
    plan = on_its_way(diary, plan, date(2026, 9, 15))
    for ball in BALLS_OF_THE_BODY:
        weigh_in(diary, wool, garment, plan, body, ball)
    diary.add(Progress(diary.new_id(), plan.id, body.id, 1, 111, date(2026, 10, 18)))
    _promise(diary, wool, plan, body, "B-03", 39, state="settled")
    _promise(diary, wool, plan, sleeves, "B-03", 110, state="settled")
    _promise(diary, wool, plan, sleeves, "B-04", state="settled")
    _promise(diary, wool, plan, yoke, "B-05", state="settled")


def _cardigan(diary: Diary, wool: Wool, person: Person, swatch: Swatch) -> None:
    """Short until Tansy's fleece is dry, carded and spun."""
    plan = _plan(diary, wool, "Grey cardigan", person, "T", gauge_of(swatch), date(2027, 2, 1))
    seams = "cast on, off and seams"
    back = _part(diary, plan, "Back", Rectangle(560, 660), edges=seams)
    _part(diary, plan, "Fronts", Rectangle(275, 660), copies=2, edges=seams)
    _part(diary, plan, "Sleeves", Trapezoid(240, 420, 490), copies=2, edges=seams)
    _part(diary, plan, "Bands", Counted(320, 9), gauge=Gauge(19.0, 26.0, needle_mm=4.0))
    for code in ("T-01", "T-02"):
        _promise(diary, wool, plan, back, code, why="the first skeins of the lot")


def _small_pullover(diary: Diary, wool: Wool, person: Person) -> None:
    """Fits comfortably; its yoke is knit with two yarns at a time."""
    gauge = Gauge(23.0, 31.0, needle_mm=3.75)
    plan = _plan(diary, wool, "Small patterned pullover", person, "C", gauge)
    roles = (*plan.yarns, RoleYarn("contrast", wool.yarns["S"].id))
    plan = diary.change(plan, replace(plan, yarns=roles))
    body = _part(diary, plan, "Body", Rectangle(720, 260), edges="cast on and off")
    sleeves = _part(diary, plan, "Sleeves", Trapezoid(170, 260, 290), copies=2)
    patterned = (Strand("main", 0.6), Strand("contrast", 0.4))
    runs = Runs(
        (
            Run(8, 208, 208, "stocking stitch", 3.75),
            Run(24, 208, 156, "stranded", 4.0, patterned),
            Run(12, 156, 92, "stocking stitch", 3.75),
        )
    )
    yoke = _part(diary, plan, "Yoke", runs)
    _promise(diary, wool, plan, body, "C-01")
    _promise(diary, wool, plan, body, "C-02", metres=100)
    _promise(diary, wool, plan, sleeves, "C-03", metres=180)
    _promise(diary, wool, plan, yoke, "C-04", metres=150)
    _promise(diary, wool, plan, yoke, "S-01", metres=80, role="contrast")


def _wrist_warmers(diary: Diary, wool: Wool, person: Person) -> None:
    """Far too small for the yarn set aside for them."""
    gauge = Gauge(23.0, 32.0, needle_mm=3.5)
    plan = _plan(diary, wool, "Wrist warmers", person, "G", gauge)
    part = _part(diary, plan, "Both", Counted(36, 42), copies=2, edges="cast on and off")
    for code in ("G-01", "G-02"):
        _promise(diary, wool, plan, part, code)


def _shawl(diary: Diary, wool: Wool, person: Person) -> None:
    """An idea; the pattern states one total."""
    plan = _plan(diary, wool, "Lace shawl", person, "H", None)
    _part(diary, plan, "Whole shawl", Stated(1_150_000))


def _something_soft(diary: Diary, wool: Wool) -> None:
    """An idea without gauge or parts."""
    notes = "A hood or a wide scarf. Swatch first: the top drapes more than wool."
    plan = _plan(diary, wool, "Something soft in alpaca", None, "A", None)
    diary.change(plan, replace(plan, notes=notes))


def _person(diary: Diary, name: str, measures: dict[str, int]) -> Person:
    taken = tuple(Measure(one, mm) for one, mm in measures.items())
    return diary.add(Person(diary.new_id(), name, taken))


def _plan(
    diary: Diary,
    wool: Wool,
    name: str,
    person: Person | None,
    letter: str,
    gauge: Gauge | None,
    wanted_by: date | None = None,
) -> Plan:
    return diary.add(
        Plan(
            diary.new_id(),
            name,
            person_id=person.id if person else None,
            priority=len(diary.book().plans) + 1,
            wanted_by=wanted_by,
            gauge=gauge,
            yarns=(RoleYarn("main", wool.yarns[letter].id),),
        )
    )


def _part(diary: Diary, plan: Plan, name: str, shape: Any, **known: Any) -> Part:
    position = sum(part.plan_id == plan.id for part in diary.book().parts) + 1
    return diary.add(Part(diary.new_id(), plan.id, name, shape, position, **known))


def _promise(
    diary: Diary,
    wool: Wool,
    plan: Plan,
    part: Part,
    code: str,
    metres: int | None = None,
    **known: Any,
) -> None:
    """So many metres of a skein, or all it holds."""
    skein = wool.skeins[code]
    mm = diary.held[skein.id].mm if metres is None else metres * 1000
    diary.add(Promise(diary.new_id(), plan.id, part.id, skein.id, mm, **known))


def _garment(diary: Diary, plan: Plan) -> Holding:
    return diary.add(Holding(diary.new_id(), "garment", plan.name, plan_id=plan.id))


def _knit(
    diary: Diary, wool: Wool, garment: Holding, code: str, day: date, left_g: int = 0
) -> None:
    """Knit a skein until `left_g` grams of it are left, weighed."""
    skein = wool.skeins[code]
    now = diary.held[skein.id]
    mg = now.mg - left_g * 1000
    taken = Portion(skein, mg, mm_of(now, mg))
    diary.post(day, use(diary.held, [taken], garment))
    if left_g:
        diary.weigh(skein, day, left_g)
