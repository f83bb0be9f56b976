"""The closed lists of words a record may hold; each is the trade's own or ours (DEVELOPERS.md)."""

from typing import Literal, get_args

WoolState = Literal["raw", "skirted", "scoured", "drying", "carded", "combed", "part spun"]
"""How far a fleece has come."""

HoldingKind = Literal[
    "fleece",
    "fibre",
    "bobbin",
    "skein",
    "ball",
    "garment",
    "left-over",
    "come in",
    "waste",
    "given away",
    "weighing and moisture",
]
"""Everything that holds wool; the last four are where wool comes from and goes to."""

EventKind = Literal[
    "arrive", "prepare", "spin", "wind", "use", "rip", "correct", "put away", "undo"
]

Task = Literal[
    "skirt",
    "scour",
    "dry",
    "pick",
    "card",
    "comb",
    "blend",
    "dye",
    "spin",
    "ply",
    "finish",
    "wind",
]
"""What is done to wool, from the sheep to the skein."""

Step = Literal["", Task]
"""What was done to wool in an event; empty where nothing is said of it."""

Work = Literal[Task, "knit"]
"""What time is spent at."""

WheelKind = Literal["wheel", "spindle"]
Verdict = Literal["struck out", "let in"]
SequenceKind = Literal["alternate", "fade", "stripes"]

ReadingKind = Literal["mass", "length", "wraps", "grist"]
Instrument = Literal["scale", "reel", "tape", "label", "gauge", "estimate"]
ReadingState = Literal["dry", "damp", "in the grease"]

Twist = Literal["", "S", "Z"]

PlanState = Literal["intended", "being knit", "finished", "put away"]
PromiseState = Literal["proposed", "kept", "settled"]
Edges = Literal[
    "none",
    "cast on",
    "cast on and seams",
    "cast on and off",
    "cast on, off and seams",
    "cast on, stretchy cast-off",
    "cast on, stretchy cast-off and seams",
    "cast off",
    "cast off and seams",
    "stretchy cast-off",
    "picked up and cast off",
    "picked up, stretchy cast-off",
]
"""What is done at the edges of a piece: the first row is cast on, picked up along another or knit
on from it; the last is cast off, or another piece is knit on from it."""

Place = Literal[
    "", "body", "back", "front", "sleeve", "yoke", "neck", "band", "cuff", "crown", "piece"
]
"""Where in a garment a part lies; empty where nobody has said."""

Follows = Literal["", "stitches", "stitches and rows", "size"]
"""What is kept of a written pattern at another gauge: its stitches with lengths by the tape, its
stitches and rows, or the size it gives, counted anew."""

ErrandKind = Literal["spin", "wash", "card", "buy", "other"]

WOOL_STATES: tuple[WoolState, ...] = get_args(WoolState)
HOLDING_KINDS: tuple[HoldingKind, ...] = get_args(HoldingKind)
EVENT_KINDS: tuple[EventKind, ...] = get_args(EventKind)
PLAN_STATES: tuple[PlanState, ...] = get_args(PlanState)
EDGES: tuple[Edges, ...] = get_args(Edges)
PLACES: tuple[Place, ...] = get_args(Place)
FOLLOWS: tuple[Follows, ...] = get_args(Follows)
ERRAND_KINDS: tuple[ErrandKind, ...] = get_args(ErrandKind)
STEPS: tuple[Step, ...] = get_args(Step)
WORKS: tuple[Work, ...] = get_args(Work)
WHEEL_KINDS: tuple[WheelKind, ...] = get_args(WheelKind)
SEQUENCE_KINDS: tuple[SequenceKind, ...] = get_args(SequenceKind)

OPEN_STATES: tuple[PlanState, ...] = ("intended", "being knit")
"""States of a plan whose promises tie up yarn."""

YARN_KINDS: frozenset[HoldingKind] = frozenset({"skein", "ball", "left-over"})
"""Holdings that can be promised to a plan."""

FIBRE_KINDS: frozenset[HoldingKind] = frozenset({"fleece", "fibre", "bobbin"})
"""Holdings that can still be spun or plied."""

SINKS: tuple[HoldingKind, ...] = ("come in", "waste", "given away", "weighing and moisture")
"""One holding of each exists in every book; its id is its kind."""
