"""The plain flow model: metres from every skein to every part, each use paid for.

Nothing in it knows of groups, so it tells whether dividing into groups loses anything. Without the
fixed prices it is the transport problem.
"""

from tests.planning.solve.model import Model


def transport(supply, demand, costs):
    """The cheapest way to send what is wanted from where it is: its cost."""
    model = Model()
    sent = {pair: model.metres(cost) for pair, cost in costs.items()}
    for place, most in supply.items():
        model.row({one: 1 for (start, _), one in sent.items() if start == place}, None, most)
    for place, least in demand.items():
        model.row({one: 1 for (_, end), one in sent.items() if end == place}, least, None)
    return model.least()


def least(problem):
    """The least cost of feeding the parts by metres; without fleeces. What is made comes in as
    many new skeins of each kind as there are parts, each as long as it is wanted."""
    model, prices = Model(), problem.prices
    most = sum(one.need for one in problem.parts)
    knit = _kinds(model, problem)
    uses = {j: [] for j in range(len(problem.parts))}
    for skein in problem.skeins:
        kinds = [k for k, one in enumerate(problem.kinds) if skein.yarn in one.yarns]
        sent = _sent(model, problem, skein.metres, kinds, knit, uses)
        _cut(model, [use for _, use in sent], prices.cut)
        _remnant(model, sent, skein.metres, prices)
    for k in range(len(problem.kinds)):
        for _ in problem.parts:
            new = _sent(model, problem, most, [k], knit, uses, cost=prices.miss)
            _cut(model, [use for _, use in new], prices.cut)
    for j, part in enumerate(problem.parts):
        model.row({metres: 1 for metres, _ in uses[j]}, part.need, part.need)
        for _, use in uses[j]:
            model.costs[use] += prices.join
    return model.least() - prices.join * len(problem.parts)


def _kinds(model, problem):
    knit = {}
    for j, part in enumerate(problem.parts):
        for k, cost in enumerate(part.unlike):
            if cost is not None:
                knit[j, k] = model.yes(cost)
        model.row({one: 1 for (of, _), one in knit.items() if of == j}, 1, 1)
    return knit


def _sent(model, problem, most, kinds, knit, uses, cost=0.0):
    """Metres to each part from one skein, each with the yes-or-no of its use."""
    found = []
    for j, part in enumerate(problem.parts):
        metres, use = model.metres(cost), model.yes(0)
        model.row({metres: 1, use: -min(most, part.need)}, None, 0)
        model.row({use: 1} | {knit[j, k]: -1 for k in kinds if (j, k) in knit}, None, 0)
        uses[j].append((metres, use))
        found.append((metres, use))
    model.row({metres: 1 for metres, _ in found}, None, most)
    return found


def _cut(model, uses, price):
    cuts = model.metres(price)
    model.row({cuts: 1} | dict.fromkeys(uses, -1), -1, None)


def _remnant(model, sent, metres, prices):
    """A skein is untouched, used up, left with a scrap, or left with ample."""
    touched, scrap, ample = model.yes(0), model.yes(prices.scrap), model.yes(0)
    for _, use in sent:
        model.row({use: 1, touched: -1}, None, 0)
    spent = {one: 1 for one, _ in sent}
    model.row(spent | {touched: -metres, scrap: prices.scrap_below, ample: metres}, 0, None)
    model.row(spent | {ample: prices.scrap_below}, None, metres)
