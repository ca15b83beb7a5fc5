"""How often a truth that the peer throws lies below what we call low: nine times in ten it should not.

A truth is one throw of everything in a house by the peer's model, its channels where the peer places them (over other throws).
"""
import math

import numpy as np

import houses
import link
import ours
import truth

TRUTHS = 8
PLACING = 40  # throws over which the peer places channels
ROUNDED = 0.5  # Mb/s: what our figures may be rounded by


class Count:
    """Room-truths, each way one: how many lie below our low. *Open* are those of rooms whose low is neither none nor the ceiling
    of ports and version: below none nothing can lie, and at the ceiling more than a tenth may lie at low itself.
    """

    def __init__(self):
        self.below = self.above = self.all = self.open_below = self.open = 0
        self.houses = {}

    def add(self, house, rates, our, ceiling):
        low, high = our["low"], our["high"]
        below = int((rates < low - ROUNDED).sum())
        said = self.houses.get(house, (0, 0))
        self.houses[house] = said[0] + below, said[1] + len(rates)
        self.all += len(rates)
        self.below += below
        self.above += int((rates > high + ROUNDED).sum())
        if 0 < low < ceiling - 2 * ROUNDED:
            self.open += len(rates)
            self.open_below += below

    def share(self):
        return self.below / max(self.all, 1)

    def open_share(self):
        return self.open_below / max(self.open, 1)

    def unsure(self):
        """By how much the share would differ over as many other houses: a standard deviation. Rooms of a house go together."""
        return math.sqrt(sum((below - self.share() * count) ** 2 for below, count in self.houses.values())) / max(self.all, 1)

    def told(self):
        said = f"{self.below:5d} of {self.all:5d} below low: {self.share():6.1%} (+- {self.unsure():.1%})"
        open_rooms = f"{self.open_share():6.1%} of {self.open:5d} open" if self.open else " " * 20
        return f"{said}, {open_rooms}; above high {self.above / max(self.all, 1):6.1%}; {len(self.houses)} houses"


class Needed:
    """How much wider our range would have to be for one in ten: of the loss in dB, of the rate in its own measure and in dB."""

    def __init__(self, priors):
        self.loss, self.rate = [], []
        self.curves = {version: equal_loss(priors, version) for version in link.ORDER}

    def add(self, room, our, rates_down, losses, version):
        loss, rate = our["loss_db"], our["down_mbps"]
        self.loss += [(loss["likely"], loss["high"], here) for here in losses]
        db, net = self.curves[version]
        worth = lambda mbps: np.interp(-mbps, -net, db)
        if 0 < rate["low"] < net[0] - 1:
            self.rate += [(worth(rate["likely"]), worth(rate["low"]), worth(here)) for here in rates_down]

    @staticmethod
    def spread(rows, share=0.1):
        """The standard deviation, dB, that has to be added to the side towards worse."""
        likely, worse, here = np.array(rows).T
        for sigma in np.arange(0, 15, 0.1):
            edge = likely + np.sqrt((worse - likely) ** 2 + (1.2816 * sigma) ** 2)
            if (here > edge + 1e-6).mean() <= share:
                return sigma
        return np.inf

    def told(self):
        if not self.loss or not self.rate:
            return "nothing to widen"
        likely, _, here = np.array(self.loss).T
        likely_rate, _, here_rate = np.array(self.rate).T
        off, off_rate = here - likely, here_rate - likely_rate
        return (
            f"an error of {self.spread(self.loss):.1f} dB more on each path (standard deviation) makes its high loss exceeded in a tenth; "
            f"of {self.spread(self.rate):.1f} dB (what rates are worth over a flat path) its low rate undercut in a tenth. "
            f"Truth less likely: loss {np.median(off):+.1f} dB, rates {np.median(off_rate):+.1f} dB, median."
        )


def equal_loss(priors, version):
    """Net rate by flat loss, all at likely: (dB, Mb/s), falling."""
    db = np.arange(20.0, 96.0, 0.5)
    f = truth.frequencies(5.0)
    centres = link.placements(version)[0]
    nodes = link.Nodes(priors.at_likely(), np.random.default_rng(0), 1, 2, len(centres))
    s = np.zeros((len(db), len(f), 2, 2))
    s[:, :, 0, 1] = s[:, :, 1, 0] = 10 ** (-db[:, None] / 20)
    rates = link.Rates(s, f, nodes, [version] * 2, ["2.5 Gb/s"] * 2, version)
    net = rates.net(1, "down", 0)
    return db, net + np.linspace(1e-3, 0, len(db))


class Calibration:
    def __init__(self, command, count, seed, truths=TRUTHS):
        self.truths = truths
        self.houses = []
        for number in range(count):
            house = houses.house(seed, number)
            self.houses.append((number, house, ours.forecast(command, house)))
        self.seed = seed

    def against(self, priors, name, stream):
        """Prints the shares, and gives the count over all."""
        total, by, needed = Count(), {}, Needed(priors)
        for number, house, said in self.houses:
            dice = np.random.default_rng([self.seed, number, stream])
            place = truth.worked_out(house, priors, dice, PLACING, 5.0).best()
            rates = truth.worked_out(house, priors, dice, self.truths)
            for room, part in enumerate(house.adapters()[1:], 1):
                our = said["by_tag"][part.tag]
                if our["reach"] != "estimated":
                    raise SystemExit(f"{house.name} {part.tag}: not estimated, {our['reach']}")
                for way, member in (("down", "down_mbps"), ("up", "up_mbps")):
                    net = rates.net(room, way, place)
                    ceiling = rates.ceiling(room, place)
                    for kind in {"", f"way {way}", f"pair {rates.pair(room)}", *house.classes}:
                        count = by.setdefault(kind, Count()) if kind else total
                        count.add(number, net, our[member], ceiling)
                needed.add(room, our, rates.net(room, "down", place), rates.loss(room, place), rates.pair(room))
        print(f"Calibration with {name}: {len(self.houses)} houses, {self.truths} truths each")
        print(f"  {'all':22} {total.told()}")
        for kind in sorted(by):
            print(f"  {kind:22} {by[kind].told()}")
        print(f"  {needed.told()}")
        return total
