"""Makes houses from a seed, and writes them as sheets (docs/sheet.md). All of it is invented."""
import json
import random
from dataclasses import dataclass, field

LABELS = {2: [3.5] * 2, 3: [3.5, 7.0, 7.0], 4: [7.0] * 4}
BOUGHT = {2: [3.7] * 2, 3: [3.7, 7.3, 7.3], 4: [7.3] * 4}
FITTINGS = ["compression"] * 9 + ["unknown"] * 3 + ["hand_tight", "twist_on", "corroded"]


@dataclass
class Run:
    series: str
    metres: float | None
    known: str
    near: str
    far: str


@dataclass
class Part:
    tag: str
    kind: str
    feed: str | None = None
    port: int = 1
    run: Run | None = None
    legs: int = 0
    said: dict = field(default_factory=dict)
    ends: dict = field(default_factory=dict)


@dataclass
class House:
    name: str
    version: str
    parts: dict
    classes: set

    def fed(self, tag):
        return [part for part in self.parts.values() if part.feed == tag]

    def adapters(self):
        """Outlets with adapters, the bridge first."""
        outlets = [part for part in self.parts.values() if "adapter" in part.said]
        return sorted(outlets, key=lambda part: not part.said["adapter"].get("bridge", False))

    def sheet(self):
        lines = ["[survey]", f'name = "{self.name}"', f'network = {{ version = "{self.version}" }}', ""]
        for part in self.parts.values():
            if part.kind == "outlet":
                lines += ["[[room]]", f'name = "{part.said["room"]}"', ""]
        for part in self.parts.values():
            lines += ["[[part]]", *(f"{key} = {toml(what)}" for key, what in self.told(part).items()), ""]
        return "\n".join(lines)

    def told(self, part):
        told = {"tag": part.tag, "kind": part.kind}
        if part.feed is not None:
            told |= {"from": part.feed, "cable": part.run.series, "connectors": {"near": part.run.near, "far": part.run.far}}
            if part.run.metres is not None:
                told["length"] = f"{part.run.metres:.1f} m {part.run.known}"
            above = self.parts[part.feed]
            if above.legs + above.said.get("modem_port", False) > 1:
                told["port"] = "modem" if above.kind == "amplifier" and part.port > above.legs else part.port
        if part.legs:
            told["legs"] = part.legs
        return told | part.said | ({"ends": part.ends} if part.ends else {})


def toml(what):
    if isinstance(what, dict):
        return "{ " + ", ".join(f"{key} = {toml(inner)}" for key, inner in what.items()) + " }"
    return json.dumps(what)


class Maker:
    def __init__(self, name, plain):
        self.dice, self.name, self.plain = random.Random(name), name, plain
        self.parts, self.classes, self.free = {}, set(), []

    def run(self, least, most):
        dice = self.dice
        series = dice.choice(["6"] * 7 + ["59"] * 2 + ["unknown"])
        known = dice.choice(["measured", "paced", "guessed"])
        metres = None if dice.random() < 0.08 and most > 5 else round(dice.uniform(least, most), 1)
        near, far = dice.choice(FITTINGS), dice.choice(FITTINGS)
        if not {near, far} <= {"compression", "unknown"}:
            self.classes.add("poor connectors")
        return Run(series, metres, known, near, far)

    def put(self, kind, feed, least, most, **more):
        count = sum(part.kind == kind for part in self.parts.values()) + 1
        tag = {"entry": "E", "ground_block": "G", "entry_filter": "F", "splitter": "S", "tap": "T", "amplifier": "A", "outlet": "O"}[kind]
        tag += str(count)
        at, port = feed if feed else (None, 1)
        self.parts[tag] = Part(tag, kind, at, port, self.run(least, most) if feed else None, **more)
        return tag

    def splitter(self, feed, least, most, make):
        dice = self.dice
        legs = dice.choice((2, 3, 3, 4))
        if make == "rated":
            said = {"loss": [f"{db} dB" for db in BOUGHT[legs]], "band": "5-1675 MHz", "says_moca": True}
        elif make == "wide":
            said = {"loss": [f"{db} dB" for db in LABELS[legs]], "band": dice.choice(("5-2300 MHz", "5-2400 MHz"))}
            said |= dice.choice(({}, {"says_moca": False}))
        elif make == "unread":
            said = {}
        else:
            said = {"loss": [f"{db} dB" for db in LABELS[legs]], "band": dice.choice(("5-900 MHz", "5-1000 MHz", "5-1000 MHz", "5-1002 MHz"))}
        self.classes.add({"rated": "rated splitter", "wide": "wide splitter"}.get(make, "old splitter"))
        tag = self.put("splitter", feed, least, most, legs=legs, said=said)
        return [(tag, port) for port in range(1, legs + 1)]

    def amplifier(self, feed):
        dice = self.dice
        legs = dice.choice((1, 2, 4))
        said = {"modem_port": dice.random() < 0.4}
        kind = dice.choice(("with", "with", "without", "not said", "nothing read"))
        if self.plain and kind in ("not said", "nothing read"):
            kind = "with"
        if kind != "nothing read":
            said |= {"gain": "12 dB", "band": "54-1002 MHz", "return_gain": "0 dB", "return_top": "42 MHz"}
        if kind in ("with", "without"):
            said["moca_bypass"] = kind == "with"
        self.classes |= {"amplifier", f"amplifier {kind}"}
        tag = self.put("amplifier", feed, 0.5, 4, legs=legs, said=said)
        return [(tag, port) for port in range(1, legs + 1 + said["modem_port"])]

    def make(self):
        dice = self.dice
        version = dice.choice(("2.5", "2.5", "2.5", "2.0 bonded", "2.0", "1.1", "1.1"))
        make = dice.choice(("rated", "old", "old", "wide", "unread", "each"))
        self.put("entry", None, 0, 0, said={"service": "cable", "state": "connected"})
        feed = ("E1", 1)
        if dice.random() < 0.6:
            feed = (self.put("ground_block", feed, 1, 6), 1)
        if dice.random() < 0.6:
            said = {"band": "5-1002 MHz", "stop_band": "1125-1675 MHz", "rejection": dice.choice(("40 dB", "70 dB"))}
            feed = (self.put("entry_filter", feed, 0.3, 1, said=said), 1)
        else:
            self.classes.add("no filter")
        free = [feed]
        if dice.random() < 0.3:
            free = self.amplifier(free.pop())
        if dice.random() < 0.08:
            tag = self.put("tap", free.pop(), 0.5, 3, legs=2, said={"tap_loss": "9 dB", "band": "5-1000 MHz"})
            free += [(tag, 1), (tag, 2)]
            self.classes.add("tap")
        splitters = dice.choice((1, 2, 2, 3))
        for number in range(splitters):
            at = free.pop(dice.randrange(len(free)))
            this = dice.choice(("rated", "old", "wide")) if make == "each" else make
            free += self.splitter(at, 0.5 if number == 0 else 0.3, 3 if number == 0 else 12, this)
        if splitters > 1:
            self.classes.add("cascade")
        dice.shuffle(free)
        self.outlets(free, version)
        return House(self.name, version, self.parts, self.classes | {f"version {version}"})

    def outlets(self, free, version):
        dice = self.dice
        count = min(len(free), dice.choice((3, 4, 4, 5, 6)))
        adapters = min(count, dice.choice((2, 3, 3, 4)))
        older = dice.randrange(1, adapters) if adapters > 1 and version == "2.5" and dice.random() < 0.15 else None
        for number in range(count):
            said = {"room": f"Room {number + 1}"}
            if number < adapters:
                said["adapter"] = {"bridge": True} if number == 0 else {}
                if number == older:
                    said["adapter"] = {"version": "1.1", "ethernet": "1 Gb/s"}
                    self.classes.add("mixed versions")
                if dice.random() < (0.6 if number == 0 else 0.3):
                    said |= {"plugged": ["modem" if number == 0 else "tv"], "sharing": "splitter"}
                else:
                    said["plugged"] = []
            else:
                said["plugged"] = dice.choice((["tv"], ["tv_box"], []))
            self.put("outlet", free[number], 4, 28, said=said)
        for at, port in free[count:]:
            part = self.parts[at]
            end = dice.choice(("open", "open", "capped", "loose_end", None))
            if part.kind == "amplifier" and port > part.legs:
                end = None
            if end:
                part.ends[port] = end
        if self.parts and any(end != "capped" for part in self.parts.values() for end in part.ends.values()):
            self.classes.add("open ends")


def house(seed, number, plain=False):
    """The same seed and number make the same house. A plain one has no amplifier of which nobody knows the by-pass."""
    return Maker(f"{'plain' if plain else 'house'} {seed} {number}", plain).make()
