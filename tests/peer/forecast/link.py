"""From a path to rates: noise, gap, bits, MAC, placement of channels. Figures as docs/method.md names them."""
import itertools

import numpy as np

THERMAL = -173.98  # dBm/Hz at 290 K
SPACING = 0.1953125  # MHz, 50 / 256 and 100 / 512 (facts, 1.2)
USED = {1: 224 * SPACING, 2: 480 * SPACING}  # MHz of a channel that carry bits (from memory)
BITS = {1: 8, 2: 10}
FULL = 700.0  # Mb/s of a 100 MHz channel
LOWEST, HIGHEST = 1125.0, 1675.0
PORTS = {"100 Mb/s": 100.0, "1 Gb/s": 1000.0, "2.5 Gb/s": 2500.0}
TCP = 1460 / 1538  # RFC 6349, 4.1.1
ORDER = ["1.1", "2.0", "2.0 bonded", "2.5"]
# Least MAC rate by PHY rate, MoCA 1.1 Reference Specification, Table 1-2; "220" read as 200.
TABLE = np.array([(0, 0), (75, 39.82), (100, 54.65), (125, 68.32), (150, 81.98), (175, 95.64), (200, 107.74), (225, 119.45), (250, 130.78), (275, 139.87)])
MOST = {"2.0": 400.0, "2.0-pair": 500.0, "2.5": 500.0}  # Mb/s net of a channel


def generation(version):
    return 1 if version.startswith("1") else 2


def placements(version):
    """Where the channels may lie: lists of centres. 1.1: D1 to D8. 2.x on a grid of 25 MHz."""
    if version == "1.1":
        return [[1150.0 + 50 * k] for k in range(8)]
    grid = np.arange(LOWEST + 50, HIGHEST - 49, 25.0)
    if version == "2.0":
        return [[centre] for centre in grid]
    if version == "2.0 bonded":
        # Beacon offsets of -25, 0, +25 and of -125 or +125 MHz: 100, 125 or 150 MHz apart.
        return [[a, a + apart] for a in grid for apart in (100.0, 125.0, 150.0) if a + apart <= HIGHEST - 50]
    return [[start + 100 * k for k in range(5)] for start in grid if start + 450 <= HIGHEST]


class Nodes:
    """What the nodes and the network throw: (draw, node) or (draw, 1)."""

    def __init__(self, priors, dice, draws, nodes, channels):
        self.usable = priors.likely("usable-rate")
        one = lambda name: priors.draw(dice, name, draws, 1)
        self.sent = priors.draw(dice, "transmit-power", draws, nodes)
        shared = dice.random((draws, 1)) < priors.likely("power-shared-odds")
        self.sent = self.sent - shared * 10 * np.log10(channels)
        figure = priors.draw(dice, "noise-figure", draws, nodes)
        self.noise = THERMAL + 60 + 10 * np.log10(10 ** (figure / 10) + 10 ** (one("ingress") / 10))  # dBm/MHz
        margin = one("margin")
        self.gap = {2: one("gap") + margin}
        self.gap[1] = one("gap-1x") + margin if "gap-1x" in priors else self.gap[2]
        self.cap = {1: one("snr-cap-1x"), 2: one("snr-cap-2x")}
        self.spread = one("subcarrier-spread")
        self.least = one("least-received")
        self.full = {1: one("phy-full-1x"), 2: np.full((draws, 1), FULL)}
        self.even_in_db = "subcarriers-even-in-db" in priors
        self.position = {1: one("mac-position-1-1"), 2: one("mac-position")}
        self.shares = {name: one(f"mac-share-{name}") for name in ("2.0", "2.0-pair", "2.5")}

    def bits(self, power, sender, receiver, made):
        """Mean bits a subcarrier carries: `power` (draw, frequency) is |S|^2 of the way."""
        sent = self.sent[:, [sender]] - 10 * np.log10(USED[made])
        heard = sent + 10 * np.log10(np.maximum(power, 1e-30)) - self.noise[:, [receiver]]
        own = 10 ** (-heard / 10) + 10 ** (-self.cap[made] / 10)
        over_gap = -10 * np.log10(own) - self.gap[made]
        total = 0.0
        steps = (np.arange(24) + 0.5) / 24
        for step in steps:
            off = self.off_channel(step)
            total = total + np.minimum(np.floor(np.log2(1 + 10 ** ((over_gap - off) / 10))), BITS[made])
        return total / len(steps)

    def off_channel(self, step):
        """Noise on single subcarriers beside the channel's, dB: as documented even in power, in the peer's own even in dB."""
        if self.even_in_db:
            return (2 * step - 1) * self.spread
        low, high = 10 ** (-self.spread / 10), 10 ** (self.spread / 10)
        return 10 * np.log10(low + step * (high - low))

    def net(self, phy, version, nodes, channels):
        if version == "1.1":
            least = np.interp(phy, TABLE[:, 0], TABLE[:, 1])
            net = least + self.position[1][:, 0] * np.maximum(phy * 175 / 275 - least, 0)
            return np.minimum(net, 175.0)
        name = "2.5" if version == "2.5" else ("2.0-pair" if nodes == 2 else "2.0")
        net = phy * self.shares[name][:, 0]
        if name == "2.0":
            # Few nodes lose less than many: up to a pair's share, never above the published rate for more than two.
            most = np.maximum(self.shares["2.0-pair"][:, 0], self.shares[name][:, 0])
            net = net + self.position[2][:, 0] * (phy * most - net)
        return np.minimum(net, channels * MOST[name])


def over(values, f, centre, made):
    """Mean over the used width of a channel."""
    inside = np.abs(f - centre) <= USED[made] / 2
    return values[:, inside].mean(axis=1)


class Rates:
    """Rates between the bridge (node 0) and each other node, for every placement: phy and net as (draw,) by placement."""

    def __init__(self, s, f, nodes, versions, ports, network):
        self.f, self.nodes, self.versions, self.ports, self.network = f, nodes, versions, ports, network
        self.places = placements(network)
        self.count = len(versions)
        self.power = {}
        self.bits = {}
        for room in range(1, self.count):
            pair = min(versions[0], versions[room], key=ORDER.index)
            for way, (to, by) in {"down": (room, 0), "up": (0, room)}.items():
                power = np.abs(s[:, :, to, by]) ** 2
                self.power[room, way] = power
                self.bits[room, way] = nodes.bits(power, by, to, generation(pair))

    def pair(self, room):
        return min(self.versions[0], self.versions[room], key=ORDER.index)

    def channels(self, room, place):
        """The channels that a pair uses of a placement: an older pair the first of them."""
        pair = self.pair(room)
        return self.places[place][:1] if pair in ("1.1", "2.0") else self.places[place]

    def phy(self, room, way, place):
        made = generation(self.pair(room))
        sender = {"down": 0, "up": room}[way]
        bits = 0.0
        for centre in self.channels(room, place):
            arrives = self.nodes.sent[:, sender] + 10 * np.log10(over(self.power[room, way], self.f, centre, made))
            heard = arrives >= self.nodes.least[:, 0]
            bits = bits + np.where(heard, over(self.bits[room, way], self.f, centre, made), 0.0)
        return bits / BITS[made] * self.nodes.full[made][:, 0]

    def net(self, room, way, place):
        net = self.nodes.net(self.phy(room, way, place), self.pair(room), self.count, len(self.channels(room, place)))
        net = np.minimum(net, TCP * min(PORTS[self.ports[0]], PORTS[self.ports[room]]))
        return np.where(net < self.nodes.usable, 0.0, net)

    def ceiling(self, room, place):
        """The most that this pair can get: the ports', or the version's."""
        name = "2.5" if self.pair(room) == "2.5" else ("2.0-pair" if self.count == 2 else "2.0")
        version = 175.0 if self.pair(room) == "1.1" else MOST[name] * len(self.channels(room, place))
        return min(version, TCP * min(PORTS[self.ports[0]], PORTS[self.ports[room]]))

    def loss(self, room, place):
        made = generation(self.pair(room))
        power = self.power[room, "down"]
        return -10 * np.log10(np.mean([over(power, self.f, centre, made) for centre in self.channels(room, place)], axis=0))

    def best(self):
        """The placement whose weakest room has the highest low; of near-equals the lowest."""
        lows = []
        for place in range(len(self.places)):
            nets = [self.net(room, way, place) for room in range(1, self.count) for way in ("down", "up")]
            lows.append(min(np.percentile(net, 10) for net in nets))
        enough = max(lows) - max(1.0, 0.01 * max(lows))
        return next(place for place, low in enumerate(lows) if low >= enough)
