"""What is not known, as ranges: those that our project documents, and the peer's own.

A range is (low, likely, high), drawn as a triangle. `Priors` holds one set; `documented` reads core/coax/src/estimates.rs as the
example `estimates` prints it, `own` lays the peer's own table over it.
"""
import json

import numpy as np

# Documented in words or as figures without a range, and what only the peer's own ranges know.
DEFAULTS = {
    # Chance that the channels of a bonded network share one power.
    "power-shared-odds": (0.0, 0.0, 0.0),
    # Net of PHY rate.
    "mac-share-2.0": (400 / 700, 400 / 700, 400 / 700),
    "mac-share-2.0-pair": (500 / 700, 500 / 700, 500 / 700),
    # Loss of a MoCA or satellite splitter at 1.4 GHz beyond its label, dB.
    "splitter-label-optimism": (0.0, 0.0, 0.0),
    "splitter-wide-optimism": (0.0, 0.0, 0.0),
}

# The peer's own, chosen before any result was seen. Marks: P common practice, no source; M from memory; S a source, named.
OWN = {
    # cable
    "cable-six-spread": (0.97, 1.02, 1.12, "S stranded 6-series sheets lose 28 % more than the usual ones; most houses do not have them"),
    "cable-fifty-nine-k1": (0.245, 0.262, 0.30, "M 59 series, with age"),
    "cable-impedance": (72.0, 75.0, 78.0, "P"),
    "unknown-run-length": (3.0, 12.0, 35.0, "P"),
    "length-measured": (-0.03, 0.02, 0.08, "P slack is left in the wall"),
    "length-paced": (-0.15, 0.05, 0.30, "P the same, and corners"),
    "length-guessed": (-0.30, 0.05, 0.60, "P people guess short"),
    "loose-end-length": (1.0, 6.0, 25.0, "P"),
    # joints
    "condition-sound": (0.02, 0.08, 0.3, "P at 1.4 GHz, each connector"),
    "condition-unsure": (0.02, 0.2, 1.5, "P"),
    "condition-hand-tight": (0.1, 0.5, 4.0, "P"),
    "condition-twist-on": (0.2, 1.2, 6.0, "P"),
    "condition-corroded": (0.5, 2.5, 12.0, "P"),
    "joint-return-loss": (16.0, 23.0, 32.0, "P"),
    "wall-plate-loss": (0.2, 0.4, 1.0, "S 0.2 to 0.5 dB are the trade's; old plates were not made for 1.4 GHz (P)"),
    # splitters
    "label-spread": (-0.3, 0.1, 0.7, "P"),
    "splitter-label-optimism": (0.0, 0.4, 1.2, "P a label gives one figure, the top of the band is the worst"),
    "splitter-wide-optimism": (0.0, 0.8, 2.5, "P parts for a dish lose more there than in the TV band"),
    "splitter-isolation": (18.0, 24.0, 32.0, "P at least 20 in band is the trade's"),
    "splitter-isolation-rated-for-moca": (12.0, 16.5, 24.0, "S US 11,895,435 B2: less than about 16 dB is the target"),
    "splitter-isolation-wide": (14.0, 21.0, 32.0, "P"),
    "splitter-return-loss": (10.0, 15.0, 20.0, "P 10 to 14 dB above 1 GHz, 18 to 20 below"),
    "splitter-extra-above-rating": (0.5, 2.5, 8.0, "P 1 to 5 dB, and more above 1.4 GHz"),
    "splitter-heavy-above-odds": (0.2, 0.2, 0.2, "P one old one in five"),
    "splitter-heavy-above-rating": (8.0, 14.0, 25.0, "P 10 to 25 dB"),
    "isolation-of-each-pair": (1.0, 1.0, 1.0, "P each pair throws its own; where documented, a splitter's figure is the root mean square"),
    "splitter-isolation-above-rating": (8.0, 17.0, 32.0, "P the bridge resistor of a splitter fails first"),
    "splitter-return-loss-above-rating": (5.0, 9.0, 14.0, "P"),
    # filter, amplifier, ends
    "filter-margin": (0.0, 4.0, 12.0, "P"),
    "entry-return-loss": (4.0, 14.0, 28.0, "P a tap on the pole, not made for the band"),
    "amplifier-opaque": (30.0, 50.0, 75.0, "P"),
    "amplifier-bypass-loss": (1.0, 3.5, 8.0, "P"),
    "amplifier-bypass-unread": (0.25, 0.25, 0.25, "P"),
    "device-reflection": (0.3, 0.7, 0.97, "P"),
    "cap-reflection": (0.0, 0.05, 0.15, "P"),
    "unseen-port-open": (0.7, 0.7, 0.7, "P"),
    # link
    "adapter-return-loss": (5.5, 10.0, 17.0, "S at least 5 dB: MoCA 1.1 Reference Specification"),
    "transmit-power": (-1.0, 4.0, 7.5, "S TR-181: a 2.5 beacon up to +7 dBm; lower end M"),
    "power-shared-odds": (0.25, 0.25, 0.25, "P nobody says whether channels share one amplifier's power"),
    "noise-figure": (6.0, 9.0, 13.0, "M a tuner behind a band filter"),
    "ingress": (-15.0, -3.0, 10.0, "P"),
    "gap": (2.5, 3.5, 5.5, "M LDPC of rate 0.85"),
    "gap-1x": (5.0, 6.0, 7.0, "M 9.8 dB without a code, less 3 to 4.5 for Reed-Solomon"),
    "margin": (0.0, 1.5, 3.0, "P"),
    "snr-cap-1x": (30.0, 34.0, 38.0, "M"),
    "snr-cap-2x": (36.0, 40.0, 44.0, "M 1024-QAM needs about 35"),
    "subcarrier-spread": (0.5, 1.5, 3.0, "P"),
    "subcarriers-even-in-db": (1.0, 1.0, 1.0, "P where documented, the noise is even in power over the spread"),
    "mac-position": (0.0, 0.3, 1.0, "P"),
    "least-received": (-80.0, -72.0, -64.0, "M what a channel needs for its preamble"),
    "phy-full-1x": (265.0, 285.0, 304.0, "S 275 published; testers show up to 304 (M)"),
    "mac-position-1-1": (0.2, 0.7, 1.0, "S between Table 1-2 and 175 of 275"),
    "mac-share-2.0": (0.50, 0.57, 0.62, "S about 400 of 700"),
    "mac-share-2.0-pair": (0.62, 0.70, 0.75, "S about 500 of 700"),
    "mac-share-2.5": (0.62, 0.69, 0.72, "S about 2500 of 3500"),
}


class Priors:
    def __init__(self, table):
        self.table = table

    def __contains__(self, name):
        return name in self.table

    def with_others(self, others):
        return Priors({**self.table, **others})

    def at_likely(self):
        return Priors({name: (likely,) * 3 for name, (_, likely, _) in self.table.items()})

    def likely(self, name):
        return self.table[name][1]

    def draw(self, dice, name, *shape):
        low, likely, high = self.table[name]
        return dice.triangular(low, likely, high, shape) if high > low else np.full(shape, float(likely))


def documented(printed):
    """`printed` is what the example `estimates` says."""
    said = {name: (e["low"], e["likely"], e["high"]) for name, e in json.loads(printed).items()}
    # Documented as what a length may be in times of what was said; here the share by which it may be off.
    for known in ("length-measured", "length-paced", "length-guessed"):
        said[known] = tuple(times - 1 for times in said[known])
    # 2.5: from 2,250 to the published 2,500 of 3,500.
    said["mac-share-2.5"] = tuple((2250 + 250 * position) / 3500 for position in said["mac-position-2-5"])
    return Priors({**DEFAULTS, **said})


def own(documented_priors):
    return documented_priors.with_others({name: entry[:3] for name, entry in OWN.items()})
