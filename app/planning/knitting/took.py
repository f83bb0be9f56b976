"""What the parts of a garment really took: the yarn that went into it, shared out by what its balls
told of each part, and by what was planned where they told nothing."""

from app.book.book import Book
from app.book.knitting import Took
from app.planning.groups import Group
from app.planning.knitting.balls import OnNeedles, on_needles
from app.planning.knitting.course import Course
from app.planning.knitting.doubt import courses_of
from app.planning.used import Used, grams_in
from app.planning.yarns import Lots


def took(book: Book, plan_id: str) -> tuple[Took, ...]:
    """What each role of each part took in all its copies, in whole mg and mm; none for a garment
    of which nothing is knit. The shares of a yarn add up to what went in of it."""
    courses = courses_of(book, plan_id)
    groups = tuple(one.group for one in courses)
    metres = Used(book).shares(plan_id, groups)
    grams = _grams(groups, grams_in(book, plan_id))
    balls = on_needles(Lots(book), plan_id, courses)
    found: list[Took] = []
    for course, m, g in zip(courses, metres, grams, strict=True):
        shares = _shares(course, [one for one in balls if one.course.group == course.group])
        found += [
            Took(part_id, role, round(g * share * 1000), round(m * share * 1000))
            for (part_id, role), share in shares.items()
            if m > 0 or g > 0
        ]
    return tuple(found)


def part_paces(balls: list[OnNeedles]) -> dict[str, float]:
    """Yarn taken as a multiple of yarn planned, in each part that balls were weighed in."""
    planned: dict[str, float] = {}
    gone: dict[str, float] = {}
    for ball in balls:
        for at in range(1, len(ball.weighings)):
            part_id = ball.weighings[at].part_id
            if part_id == ball.weighings[at - 1].part_id:
                before, after = ball.weighed[at - 1], ball.weighed[at]
                expected = (after.x - before.x) * ball.g_per_m
                planned[part_id] = planned.get(part_id, 0.0) + expected
                gone[part_id] = gone.get(part_id, 0.0) + before.g - after.g
    return {one: gone[one] / grams for one, grams in planned.items() if grams > 0}


def _shares(course: Course, balls: list[OnNeedles]) -> dict[tuple[str, str], float]:
    paces = part_paces(balls)
    usual = sum(paces.values()) / len(paces) if paces else 1.0
    weights = {
        (part_id, role.role): role.need.value * paces.get(part_id, usual)
        for part_id, role in course.group.roles
    }
    whole = sum(weights.values())
    return {key: weight / whole for key, weight in weights.items()} if whole > 0 else {}


def _grams(groups: tuple[Group, ...], by_yarn: dict[str, float]) -> list[float]:
    """Grams of each group; yarn of no group counts for the first, as its metres do."""
    found = [0.0 for _ in groups]
    for yarn_id, grams in by_yarn.items():
        at = next((i for i, one in enumerate(groups) if yarn_id in one.yarn_ids), 0)
        if groups:
            found[at] += grams
    return found
