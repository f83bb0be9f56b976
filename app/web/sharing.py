"""Sharing over the home network: the address that listens there, the code that pairs a device, and
how often it may be guessed.

The code is short, because somebody types it on a phone; so guesses are slowed, and after TEN wrong
ones nobody can pair for a while. A code pairs one device and is then replaced.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from secrets import choice
from threading import Lock
from time import monotonic

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"
"""Without those that are taken for each other."""

SIGNS = 8
"""Thirty-two to the eighth: ten guesses in a quarter of an hour find it once in a million years."""

TEN = 10
LOCKED_S = 15 * 60
SLOWED_S, SLOWEST_S = 1.0, 16.0
"""After each wrong guess the next is heard twice as late, from one second up to sixteen."""

COOKIE = "tallyhank_device"
COOKIE_S = 400 * 24 * 3600


def new_code() -> str:
    """A pairing code, as "K7QM-3XWP"."""
    signs = "".join(choice(LETTERS) for _ in range(SIGNS))
    return f"{signs[: SIGNS // 2]}-{signs[SIGNS // 2 :]}"


@dataclass
class Sharing:
    """`hosts` are the addresses on the home network, with the `port` they listen at."""

    hosts: frozenset[str]
    port: int
    clock: Callable[[], float] = monotonic
    code: str = field(default_factory=new_code)
    _wrong: int = 0
    _closed_until: float = 0.0
    _lock: Lock = field(default_factory=Lock)

    def wait_s(self) -> float:
        """Seconds until the next guess is heard; 0 while one would be."""
        return max(0.0, self._closed_until - self.clock())

    def guess(self, typed: str) -> bool:
        """Whether this is the code. The right one is used up; a wrong one makes the next wait."""
        with self._lock:
            if self.wait_s() > 0:
                return False
            if _plain(typed) == _plain(self.code):
                self.code, self._wrong = new_code(), 0
                return True
            self._wrong += 1
            locked = self._wrong % TEN == 0
            slowed = min(SLOWEST_S, SLOWED_S * 2 ** (self._wrong % TEN - 1))
            wait = LOCKED_S if locked else slowed
            self._closed_until = self.clock() + wait
            return False

    @property
    def addresses(self) -> tuple[str, ...]:
        """Where a phone finds the program."""
        return tuple(f"http://{host}:{self.port}/" for host in sorted(self.hosts))

    @property
    def pairing(self) -> str:
        """The address that a QR code holds: it brings the code along."""
        return f"{self.addresses[0]}pair?code={self.code}"


def _plain(code: str) -> str:
    return "".join(one for one in code.upper() if one in LETTERS)
