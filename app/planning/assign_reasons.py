"""Why a skein lies with a part: a typed reason, and its words.

The words name skeins and parts but no figures, so that they stay true in any unit.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Alone:
    """The skein is enough for the part, `used_up` with hardly anything left."""

    part: str
    used_up: bool

    def words(self) -> str:
        if self.used_up:
            return f"enough for {self.part} alone, and used up by it"
        return f"enough for {self.part} alone, and what is left is worth keeping"


@dataclass(frozen=True, slots=True)
class Together:
    """The skein and `others` are enough together, with as few changes of skein as can be."""

    part: str
    others: tuple[str, ...]

    def words(self) -> str:
        return f"with {_listed(self.others)} the fewest skeins that are enough for {self.part}"


@dataclass(frozen=True, slots=True)
class Shared:
    """What `part` leaves of the skein goes on into `others`."""

    part: str
    others: tuple[str, ...]

    def words(self) -> str:
        return f"what {self.part} leaves of it goes on into {_listed(self.others)}"


@dataclass(frozen=True, slots=True)
class GoesOn:
    """The skein was begun in `before` and is knit on."""

    before: str

    def words(self) -> str:
        return f"goes on from {self.before}, so that less is left over"


@dataclass(frozen=True, slots=True)
class AllThereIs:
    """The shelf has too little; all that suits is used, and the rest is made."""

    part: str

    def words(self) -> str:
        return f"all there is for {self.part}; the rest is still to be made"


@dataclass(frozen=True, slots=True)
class InHand:
    """Only for safety: without it the garment is not as sure as was asked."""

    def words(self) -> str:
        return "kept in hand, so that the garment is as sure as you asked"


Reason = Alone | Together | Shared | GoesOn | AllThereIs | InHand


@dataclass(frozen=True, slots=True)
class Mixed:
    """The skein is of another yarn that reads as the same."""

    yarn: str

    def words(self) -> str:
        return f"{self.yarn} reads as the same yarn beside it"


@dataclass(frozen=True, slots=True)
class Halved:
    """The skein is wound in `pieces` equal balls, one for each piece."""

    pieces: int

    def words(self) -> str:
        return f"wind it in {self.pieces} equal balls, one for each piece"


@dataclass(frozen=True, slots=True)
class Coupled:
    """The skein and `other` are alike in length: one for each piece."""

    other: str

    def words(self) -> str:
        return f"as long as {self.other}: one for each piece"


Note = Mixed | Halved | Coupled


def _listed(names: tuple[str, ...]) -> str:
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last
