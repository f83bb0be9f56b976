"""The compact model: each group is led by its first part, and no metre is a variable.

The parts and skeins of a group are told by whom they follow; HiGHS does the rest. It is the
reference the columns are compared with.
"""

from tests.planning.solve.model import Model


def least(problem):
    """The least any division costs, by the compact model."""
    model, prices = Model(), problem.prices
    parts = range(len(problem.parts))
    follows = {(j, g): model.yes(prices.cut) for g in parts for j in parts if j >= g}
    feeds = {(i, g): model.yes(prices.join) for i in range(len(problem.skeins)) for g in parts}
    asked = {place: {} for place in range(len(problem.fleeces))}
    for j in parts:
        model.row({follows[j, g]: 1 for g in parts if g <= j}, 1, 1)
    for i in range(len(problem.skeins)):
        model.row({feeds[i, g]: 1 for g in parts}, None, 1)
    for g in parts:
        _group(model, problem, g, follows, feeds, asked)
    for place, uses in asked.items():
        lacking = model.metres(prices.lack)
        model.row(uses | {lacking: -1}, None, problem.fleeces[place])
    return model.least()


def _group(model, problem, g, follows, feeds, asked):
    """The group led by part g: one kind, one join and one cut less than skeins and parts."""
    led = follows[g, g]
    model.costs[led] -= problem.prices.cut + problem.prices.join
    knit = {(g, k): model.yes(0) for k in range(len(problem.kinds))}
    model.row(dict.fromkeys(knit.values(), 1) | {led: -1}, 0, 0)
    for j in range(g, len(problem.parts)):
        model.row({follows[j, g]: 1, led: -1}, None, 0)
        _unlike(model, problem, j, follows[j, g], g, knit)
    for i, skein in enumerate(problem.skeins):
        may = [k for k, kind in enumerate(problem.kinds) if skein.yarn in kind.yarns]
        model.row({feeds[i, g]: 1} | {knit[g, k]: -1 for k in may}, None, 0)
    _remnant(model, problem, g, follows, feeds, knit, asked)


def _unlike(model, problem, j, follows, g, knit):
    """Part j in the group of g in kind k costs its price, or may not be."""
    for k, cost in enumerate(problem.parts[j].unlike):
        if cost is None:
            model.row({follows: 1, knit[g, k]: 1}, None, 1)
        elif cost > 0:
            paid = model.metres(1.0)
            model.row({paid: 1, follows: -cost, knit[g, k]: -cost}, -cost, None)


def _remnant(model, problem, g, follows, feeds, knit, asked):
    """What is left of a group is nothing, a scrap, or ample; what it lacks is made."""
    prices = problem.prices
    most = sum(one.metres for one in problem.skeins) + sum(one.need for one in problem.parts)
    needs = {follows[j, g]: one.need for j, one in enumerate(problem.parts) if j >= g}
    held = {feeds[i, g]: -one.metres for i, one in enumerate(problem.skeins)}
    made = {}
    for k, kind in enumerate(problem.kinds):
        made[k] = model.metres(prices.miss)
        model.row({made[k]: 1, knit[g, k]: -most}, None, 0)
        if kind.fleece is not None:
            asked[kind.fleece][made[k]] = kind.grams_a_metre
    making = model.yes(prices.join)
    model.row(dict.fromkeys(made.values(), 1) | {making: -most}, None, 0)
    scrap, ample = model.yes(prices.scrap), model.yes(0)
    model.row({scrap: 1, ample: 1}, None, 1)
    over = held | needs | dict.fromkeys(made.values(), -1)  # minus what is left
    model.row(over, None, 0)
    model.row(over | {scrap: prices.scrap_below, ample: most}, 0, None)
    model.row(over | {ample: prices.scrap_below}, None, 0)
    _all_needed(model, problem, g, needs, feeds)


def _all_needed(model, problem, g, needs, feeds):
    """Without one of its skeins, the last, a group's skeins are fewer metres than it needs."""
    last = {i: model.yes(0) for i in range(len(problem.skeins))}
    model.row(dict.fromkeys(last.values(), 1), None, 1)
    for i, one in last.items():
        model.row({one: 1, feeds[i, g]: -1}, None, 0)
        model.row({feeds[i, g]: 1} | dict.fromkeys(last.values(), -1), None, 0)
    metres = {i: one.metres for i, one in enumerate(problem.skeins)}
    others = {feeds[i, g]: m for i, m in metres.items()} | {last[i]: -m for i, m in metres.items()}
    led = next(iter(needs))
    model.row(others | {j: -need for j, need in needs.items()} | {led: 1 - needs[led]}, None, 0)
