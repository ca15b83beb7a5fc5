"""Draws a house: every part of it as a matrix, joined to a network, with all that nobody knows thrown."""
import numpy as np

import parts
from network import Network

FEET = 30.48  # metres in 100 ft
SIX = 0.20063, 0.000245  # dB/100 ft: fitted to a published sheet up to 2,150 MHz (docs/method.md)
MOCA_TOP, MOCA_BOTTOM = 1675.0, 1125.0
STATES = {
    "compression": ("condition-sound", "joint-return-loss"),
    "unknown": ("condition-unsure", "joint-return-loss"),
    "hand_tight": ("condition-hand-tight", "condition-bad-return-loss"),
    "twist_on": ("condition-twist-on", "condition-bad-return-loss"),
    "corroded": ("condition-corroded", "condition-bad-return-loss"),
}


class Wiring:
    """One house, `draws` times, at the frequencies `f` (MHz)."""

    def __init__(self, house, priors, dice, draws, f):
        self.house, self.priors, self.dice, self.draws, self.f = house, priors, dice, draws, f
        self.net = Network(draws, len(f))
        self.warm = 1 + 0.00198 * (self.draw("cable-temperature") - 20)
        self.adapters = house.adapters()
        self.wanted = {}
        self.has_bypass = np.ones(draws, dtype=bool)
        root = self.entry("E1")
        self.children("E1", [(root, 1)])
        self.root = root

    def solved(self):
        """S between the adapters, the bridge first: (draw, frequency, to, from)."""
        return self.net.solved(self.root, [self.wanted[part.tag] for part in self.adapters])

    def differs_from_circuit(self):
        wanted = [self.wanted[part.tag] for part in self.adapters]
        total = self.draws * len(self.f)
        samples = np.unique(np.linspace(0, total - 1, 6).astype(int))
        ours = self.solved().reshape(total, len(wanted), len(wanted))[samples]
        return float(np.abs(ours - self.net.by_circuit(wanted, samples)).max())

    # Throws.

    def draw(self, name):
        return self.priors.draw(self.dice, name, self.draws, 1)

    def phase(self):
        return parts.phases(self.dice, self.draws, 1)

    def happens(self, name):
        return self.dice.random(self.draws) < self.priors.likely(name)

    # The tree.

    def children(self, tag, ports):
        """What hangs at the ports of a part, given as (piece, port) by number."""
        part = self.house.parts[tag]
        taken = {child.port: child for child in self.house.fed(tag)}
        for number, (piece, port) in enumerate(ports, 1):
            if number in taken:
                self.below(taken[number], piece, port)
            else:
                self.end(f"{tag}.{number}", piece, port, part.ends.get(number))

    def below(self, part, piece, port):
        piece, port = self.run(part.tag, part.run, piece, port)
        getattr(self, part.kind)(part.tag, piece, port)

    def then(self, name, s, piece, port):
        """A two-port in line."""
        self.net.add(name, s)
        self.net.join(piece, port, name, 0)
        return name, 1

    def end(self, name, piece, port, how):
        capped = self.draw("cap-reflection") * self.phase()
        if how == "loose_end":
            piece, port = self.then(f"{name} loose", self.cable("unknown", self.draw("loose-end-length")), piece, port)
        reflection = capped if how == "capped" else np.ones((self.draws, 1))
        if how is None:
            reflection = np.where(self.happens("unseen-port-open")[:, None], 1.0, capped)
        self.close(name, reflection, piece, port)

    def close(self, name, reflection, piece, port):
        self.net.add(f"{name} end", parts.one_port(reflection))
        self.net.join(piece, port, f"{name} end", 0)

    # Cables and joints.

    def cable(self, series, metres):
        root, linear = (SIX[0] * self.draw("cable-six-spread"), SIX[1])
        if series != "6":
            other = self.draw("cable-fifty-nine-k1"), self.draw("cable-fifty-nine-k2")
            share = self.draw("cable-unknown-series") if series == "unknown" else 1.0
            root, linear = root + share * (other[0] - root), linear + share * (other[1] - linear)
        db = (root * np.sqrt(self.f) + linear * self.f) * self.warm * metres / FEET
        return parts.line(self.f, db, metres, self.draw("cable-velocity"), self.draw("cable-impedance"))

    def run(self, tag, run, piece, port):
        metres = self.draw("unknown-run-length") if run.metres is None else run.metres * (1 + self.draw(f"length-{run.known}"))
        piece, port = self.then(f"{tag} near", self.connector(run.near), piece, port)
        piece, port = self.then(f"{tag} cable", self.cable(run.series, metres), piece, port)
        return self.then(f"{tag} far", self.connector(run.far), piece, port)

    def connector(self, state):
        loss, echo = STATES[state]
        return parts.mismatch(self.draw(echo), self.phase(), self.draw(loss))

    def small(self, name):
        return parts.mismatch(self.draw("joint-return-loss"), self.phase(), self.draw(name))

    # Parts.

    def entry(self, tag):
        """The street: what stands behind it sends something back, after the drop. Port 1 is the house's side."""
        echo = parts.amplitude(self.draw("entry-return-loss")) * self.phase()
        late = np.exp(-2j * np.pi * self.f * self.draw("entry-delay") / 1000)
        # A barrel between the street and the house, so that the tree has a part to begin with.
        self.net.add(tag, self.small("barrel-loss"))
        self.close(tag, echo * late, tag, 0)
        return tag

    def ground_block(self, tag, piece, port):
        self.children(tag, [self.then(tag, self.small("ground-block-loss"), piece, port)])

    def entry_filter(self, tag, piece, port):
        rejection = float(self.house.parts[tag].said["rejection"].split()[0]) + self.draw("filter-margin")
        s = parts.stop(rejection, self.draw("filter-pass-loss"), self.draw("filter-delay"), self.f)
        self.children(tag, [self.then(tag, s, piece, port)])

    def splitter(self, tag, piece, port):
        said, legs = self.house.parts[tag].said, self.house.parts[tag].legs
        self.net.add(tag, self.splitter_of(legs, said))
        self.net.join(piece, port, tag, 0)
        self.children(tag, [(tag, leg) for leg in range(1, legs + 1)])

    def splitter_of(self, legs, said):
        """A splitter by its label: `said` may hold loss, band and the word."""
        if "loss" in said:
            loss = np.array([float(db.split()[0]) for db in said["loss"]]) + self.priors.draw(self.dice, "label-spread", self.draws, legs)
        else:
            loss = 10 * np.log10(legs) + self.priors.draw(self.dice, "unread-leg-excess", self.draws, legs)
        top = float(said["band"].split("-")[1].split()[0]) if "band" in said else self.draw("splitter-unknown-top")
        wide = np.all(np.asarray(top) >= MOCA_TOP)
        if said.get("says_moca"):
            between, more = "splitter-isolation-rated-for-moca", "splitter-label-optimism"
        else:
            # Without the word it may be either, with a plain no it is not.
            either = wide and "says_moca" not in said
            between, more = ("splitter-isolation-wide" if either else "splitter-isolation"), "splitter-wide-optimism"
        loss = loss + (self.draw(more) if wide else 0.0)
        return self.divider(loss, between, top)

    def divider(self, loss, between, top, tap_between=None):
        """`loss` (draw, leg) in the band, `between` the name of the isolation, or `tap_between` its figures."""
        draws, legs = loss.shape
        ramp = self.draw("splitter-ramp")
        over = np.maximum(self.f - top, 0) / ramp
        grown = np.where(over < 1, over, over**0.25)
        heavy = self.happens("splitter-heavy-above-odds")[:, None]
        extra = np.where(heavy, self.draw("splitter-heavy-above-rating"), self.draw("splitter-extra-above-rating")) * grown
        slope = self.draw("splitter-slope") * np.maximum(self.f - 1000, 0) / 1000
        leg = loss[:, None, :] + (extra + slope)[..., None]
        name = lambda what, *shape: self.priors.draw(self.dice, what, draws, *shape)
        waves = self.waves(loss)
        inside = self.apart(between, legs, waves) if tap_between is None else tap_between
        symmetric = lambda m: np.triu(m, 1) + np.triu(m, 1).swapaxes(-1, -2)
        share = np.clip(over, 0, 1)
        inside, outside = symmetric(inside), symmetric(self.apart("splitter-isolation-above-rating", legs, waves))
        apart = inside[:, None] + share[..., None, None] * (outside - inside)[:, None]
        back_in, back_out = name("splitter-return-loss", legs + 1), name("splitter-return-loss-above-rating", legs + 1)
        back = back_in[:, None] + share[..., None] * (back_out - back_in)[:, None]
        return parts.divider(leg, apart, back, name("splitter-delay", legs + 1), self.f, self.dice)

    def waves(self, loss):
        """By how many dB more than a splitter's figure gets from each leg to each other, or none where every pair has a figure of its
        own. Documented is the root mean square over the pairs and phases: what the input does not excite comes back out of the legs
        as waves of unknown phases, one fewer than legs, by no pair the same. Two legs have one pair, and exactly the figure.
        """
        draws, legs = loss.shape
        if "isolation-of-each-pair" in self.priors:
            return None
        excited = parts.amplitude(loss)[..., None]
        others = np.linalg.qr(np.concatenate([excited, self.dice.normal(size=(draws, legs, legs - 1))], -1))[0][..., 1:]
        between = (others * parts.phases(self.dice, draws, 1, legs - 1)) @ others.swapaxes(-1, -2)
        usual = ((others**2) @ (others**2).swapaxes(-1, -2))[:, *np.triu_indices(legs, 1)].mean(axis=1)
        return 10 * np.log10(np.abs(between) ** 2 / usual[:, None, None])

    def apart(self, what, legs, waves):
        """Isolation of each pair of legs, dB."""
        if waves is None:
            return self.priors.draw(self.dice, what, self.draws, legs, legs)
        return self.draw(what)[..., None] - waves

    def tap(self, tag, piece, port):
        said = self.house.parts[tag].said
        tapped = float(said["tap_loss"].split()[0]) + self.draw("label-spread")
        through = -10 * np.log10(1 - 10 ** (-tapped / 10)) + self.draw("tap-through-excess")
        apart = np.broadcast_to((tapped + self.draw("tap-directivity"))[..., None], (self.draws, 2, 2))
        top = float(said["band"].split("-")[1].split()[0])
        self.net.add(tag, self.divider(np.concatenate([through, tapped], 1), None, top, apart))
        self.net.join(piece, port, tag, 0)
        self.children(tag, [(tag, 1), (tag, 2)])

    def amplifier(self, tag, piece, port):
        said, legs = self.house.parts[tag].said, self.house.parts[tag].legs
        if "moca_bypass" in said:
            has = np.full(self.draws, said["moca_bypass"])
        else:
            has = self.happens("amplifier-bypass-not-named" if "gain" in said else "amplifier-bypass-unread")
        self.has_bypass &= has
        ports = []
        modem = None
        if said["modem_port"]:
            self.net.add(f"{tag} front", self.housing(2, has))
            self.net.join(piece, port, f"{tag} front", 0)
            piece, port, modem = f"{tag} front", 1, (f"{tag} front", 2)
        # A by-pass works both ways alike; without it the core is closed to the band both ways.
        through = np.where(has[:, None], self.draw("amplifier-bypass-loss"), self.draw("amplifier-opaque"))
        core = parts.core(through, through, self.draw("amplifier-return-loss"), self.draw("amplifier-delay"), self.f, self.phase(), self.phase())
        piece, port = self.then(f"{tag} core", core, piece, port)
        if legs == 1:
            ports = [(piece, port)]
        else:
            self.net.add(f"{tag} back", self.housing(legs, has))
            self.net.join(piece, port, f"{tag} back", 0)
            ports = [(f"{tag} back", leg) for leg in range(1, legs + 1)]
        self.children(tag, ports + ([modem] if modem else []))

    def housing(self, legs, has):
        """A splitter in the housing: made for MoCA where there is a by-pass, else for the amplifier's own band (to 1002 MHz)."""
        stages = max(int(np.ceil(np.log2(legs))), 1)
        one = self.priors.draw(self.dice, "amplifier-stage", self.draws, stages).sum(1)
        loss = np.repeat(one[:, None], legs, 1)
        top = np.where(has, 2000.0, 1002.0)[:, None]
        return self.divider(loss, "splitter-isolation-wide", top)

    # Outlets.

    def node(self):
        """An adapter: not 75 ohm, a little way behind its socket."""
        gap = parts.line(self.f, 0.0, self.draw("adapter-delay") / 1000 * parts.LIGHT, 1.0, parts.REFERENCE)
        echo = parts.mismatch(self.draw("adapter-return-loss"), self.phase())
        turn = gap[..., 1, 0]
        return parts.two_port(echo[..., 0, 0] * turn**2, echo[..., 1, 0] * turn, echo[..., 1, 1])

    def outlet(self, tag, piece, port):
        said = self.house.parts[tag].said
        piece, port = self.then(f"{tag} plate", self.small("wall-plate-loss"), piece, port)
        device = self.draw("device-reflection") * self.phase() if said["plugged"] else np.ones((self.draws, 1))
        if "adapter" not in said:
            self.close(tag, device, piece, port)
            return
        if said["plugged"]:
            self.net.add(f"{tag} shared", self.splitter_of(2, {"loss": ["3.7 dB"] * 2, "band": "5-1675 MHz", "says_moca": True}))
            self.net.join(piece, port, f"{tag} shared", 0)
            self.close(tag, device, f"{tag} shared", 2)
            piece, port = f"{tag} shared", 1
        self.wanted[tag] = self.then(f"{tag} node", self.node(), piece, port)
