"""Tijdeman's rule for the chairman assignment problem (1980): no yarn strays beyond its bound."""

from random import Random

import pytest

from app.craft.alternate import alternate, furthest, ramp, running, strays, taken

CASES = 1000


def test_two_yarns_half_and_half_take_turns():
    assert alternate([1.0] * 6, ramp([1, 1], [1, 1], 6)) == (0, 1, 0, 1, 0, 1)


def test_a_quarter_is_every_fourth_round_and_stands_in_the_middle_of_its_four():
    turns = alternate([1.0] * 8, ramp([3, 1], [3, 1], 8))
    assert turns == (0, 0, 1, 0, 0, 0, 1, 0)


def test_one_yarn_knits_every_row():
    assert alternate([2.0, 3.0], [[1.0, 1.0]]) == (0, 0)
    assert furthest(1) == 0


def test_no_rows_need_no_yarn():
    assert alternate([], [[], []]) == ()
    assert strays([], [[], []], ()) == [0.0, 0.0]
    assert taken([], (), 2) == [0.0, 0.0]


def test_a_yarn_without_a_share_is_never_knit():
    assert 1 not in alternate([1.0] * 30, ramp([2, 0, 1], [1, 0, 2], 30))


def test_a_fade_has_its_first_share_in_the_first_row_and_its_last_in_the_last():
    out, into = ramp([1, 0], [1, 3], 4)
    assert out == pytest.approx([1.0, 0.75, 0.5, 0.25])
    assert into == pytest.approx([0.0, 0.25, 0.5, 0.75])
    assert ramp([3, 1], [1, 1], 1) == [[0.75], [0.25]]


def test_taken_and_straying_by_hand():
    blocks, shares, turns = [2.0, 4.0], [[0.5, 0.5], [0.5, 0.5]], (0, 1)
    assert running(blocks, shares) == [[1.0, 3.0], [1.0, 3.0]]
    assert taken(blocks, turns, 2) == [2.0, 4.0]
    assert strays(blocks, shares, turns) == [1.0, 1.0]


@pytest.mark.parametrize(
    ("yarns", "bound"), [(2, 1 / 2), (3, 3 / 4), (4, 5 / 6), (5, 7 / 8), (6, 9 / 10)]
)
def test_the_bound_of_1980(yarns, bound):
    assert furthest(yarns) == pytest.approx(bound)


@pytest.mark.parametrize(
    ("blocks", "shares", "said"),
    [
        ([1.0], [], "one yarn at least"),
        ([-1.0], [[1.0]], "no less than nothing"),
        ([1.0], [[0.5], [0.4]], "block 1 do not add up to 1"),
        ([1.0], [[1.5], [-0.5]], "block 1 do not add up to 1"),
        ([1.0, 1.0], [[1.0]], "a share of every block"),
    ],
)
def test_what_cannot_be_shared_out_is_refused(blocks, shares, said):
    with pytest.raises(ValueError, match=said):
        alternate(blocks, shares)


@pytest.mark.parametrize("ends", [[0, 0], [1, -1], []])
def test_shares_of_nothing_are_refused(ends):
    with pytest.raises(ValueError, match="not all of them 0"):
        ramp(ends, [1, 1], 3)


@pytest.mark.property
@pytest.mark.parametrize("seed", range(CASES // 100))
def test_no_yarn_strays_beyond_the_bound(seed):
    """Two to six yarns, constant or ramped, rows alike or not, in the round and flat."""
    chance = Random(seed)
    for _ in range(100):
        blocks, shares = a_case(chance)
        turns = alternate(blocks, shares)
        bound = furthest(len(shares)) * max(blocks)
        assert max(strays(blocks, shares, turns)) <= bound * (1 + 1e-9)
        assert sum(taken(blocks, turns, len(shares))) == pytest.approx(sum(blocks))


@pytest.mark.property
@pytest.mark.parametrize("seed", range(3))
def test_shares_may_jump_from_row_to_row(seed):
    chance = Random(seed)
    for _ in range(100):
        yarns, rows = chance.randint(2, 6), chance.randint(1, 60)
        columns = [_shared_out([chance.random() ** 4 for _ in range(yarns)]) for _ in range(rows)]
        shares = [list(own) for own in zip(*columns, strict=True)]
        blocks = [1.0] * rows
        assert max(strays(blocks, shares, alternate(blocks, shares))) <= furthest(yarns) + 1e-9


@pytest.mark.parametrize("yarns", [2, 3, 4, 5, 6])
def test_furthest_behind_first_breaks_the_bound_from_three_yarns_on(yarns):
    """The control: a yarn that has had its turn has no share any more."""
    shares = _spent_one_by_one(yarns)
    blocks = [1.0] * (yarns - 1)
    straying = max(strays(blocks, shares, _furthest_behind_first(shares)))
    assert (straying > furthest(yarns)) == (yarns > 2)
    assert max(strays(blocks, shares, alternate(blocks, shares))) <= furthest(yarns)
    if yarns == 6:
        assert straying == pytest.approx(1.45)


def a_case(chance: Random) -> tuple[list[float], list[list[float]]]:
    """Blocks of a made-up piece and the shares of two to six yarns in them."""
    rows = _rows(chance, chance.randint(12, 300))
    per_block = chance.choice((1, 2))
    blocks = [sum(rows[at : at + per_block]) for at in range(0, len(rows), per_block)]
    yarns = chance.randint(2, 6)
    begin, end = ([chance.random() ** 3 for _ in range(yarns)] for _ in range(2))
    return blocks, ramp(begin, chance.choice((begin, end)), len(blocks))


def _rows(chance: Random, rows: int) -> list[float]:
    kind = chance.choice(("alike", "shaped", "in steps", "wild"))
    one, other = chance.uniform(20, 200), chance.uniform(20, 200)
    if kind == "shaped":
        return [one + (other - one) * at / rows for at in range(rows)]
    if kind == "in steps":
        return [one if at // 9 % 2 else other for at in range(rows)]
    return [one if kind == "alike" else chance.uniform(1, 200) for _ in range(rows)]


def _shared_out(parts: list[float]) -> list[float]:
    return [one / sum(parts) for one in parts]


def _spent_one_by_one(yarns: int) -> list[list[float]]:
    left, columns = list(range(yarns)), []
    for _ in range(yarns - 1):
        columns.append([1 / len(left) if yarn in left else 0.0 for yarn in range(yarns)])
        left.pop(0)
    return [list(own) for own in zip(*columns, strict=True)]


def _furthest_behind_first(shares: list[list[float]]) -> list[int]:
    used, turns = [0.0] * len(shares), []
    for at in range(len(shares[0])):
        behind = [sum(own[: at + 1]) - got for own, got in zip(shares, used, strict=True)]
        turns.append(behind.index(max(behind)))
        used[turns[-1]] += 1
    return turns
