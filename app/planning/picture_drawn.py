"""The outlines of a designed garment's pieces, where its parts are still as they were drawn."""

from app.book.plan import Part, Plan
from app.book.shape import Runs
from app.craft.constructions.drawing import Drawing, DrawnPiece
from app.planning.design import drawing_of, part_id
from app.planning.picture_outline import Corners
from app.planning.picture_rows import Scale


def drawn_pieces(plan: Plan) -> dict[str, DrawnPiece]:
    """The pieces of a plan's design by the part each became; none where it cannot be drawn."""
    drawn = _drawing(plan)
    return {part_id(plan.id, one.name): one for one in drawn.pieces} if drawn else {}


def notes_of(plan: Plan) -> tuple[str, ...]:
    """What is told of a plan's design beside its pieces, such as how they are joined."""
    drawn = _drawing(plan)
    return drawn.notes if drawn else ()


def _drawing(plan: Plan) -> Drawing | None:
    if plan.design is None or plan.gauge is None:
        return None
    try:
        return drawing_of(plan.design, plan.gauge)
    except ValueError:
        return None


def as_drawn(part: Part, scale: Scale, piece: DrawnPiece | None) -> Corners | None:
    """The outline of a part with its openings, from the middle of its lower edge; None where the
    part has been changed since it was drawn."""
    if piece is None or not same_runs(part, piece):
        return None
    wide, high = scale.stitch / piece.knit.wide(1), scale.row / piece.knit.long(1)
    return tuple((x * wide, y * high) for x, y in piece.outline)


def same_runs(part: Part, piece: DrawnPiece) -> bool:
    """Whether a part is knit still as it was drawn."""
    if not isinstance(part.shape, Runs):
        return False
    runs = [(one.rows, one.stitches, one.stitches_to) for one in part.shape.runs]
    return runs == [(one.rows, one.stitches, one.stitches_to) for one in piece.runs]


def mirrored(outline: Corners) -> Corners:
    """The other of a pair."""
    return tuple((-x, y) for x, y in outline)


def one_sided(outline: Corners) -> bool:
    """Whether a piece is half of something: it has a straight edge where the middle was."""
    across = [x for x, _ in outline]
    return min(across) > -0.5 * max(across)


def centred(outline: Corners) -> Corners:
    """The outline around the middle of its lower edge's span."""
    across = [x for x, _ in outline]
    middle = (max(across) + min(across)) / 2
    return tuple((x - middle, y) for x, y in outline)
