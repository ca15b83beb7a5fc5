#!/usr/bin/env python3
"""Adds up levels of random houses by hand, now and when the work list is done, and compares them with what the command tells.

    levels.py LEGWORK [HOUSES] [SEED]

Writes each house as a sheet, reads the sheet back by itself, adds decibels along the way to each TV and modem, does the
steps of the work list to its own reading of the house and adds up again. No level of ours goes into it; of our output it
reads only which steps are done, where.

Straight addition knows no echoes. So every free output here is capped and something is plugged in at every outlet, cables are measured, and only
frequencies from 100 to 800 MHz are looked at, away from the edges of filters. What is left of echoes, and of the spread of
what labels leave open, has to stay within MOST_DIFFERENCE. The way back is added up at 5 and 39 MHz.

It also holds that no list takes a service from inside what its device needs to outside without a word at a step.
"""
import json
import math
import os
import random
import re
import subprocess
import sys
import tempfile
import tomllib

MOST_DIFFERENCE = 0.6
BAND = (100.0, 800.0)
UP = (5.0, 39.0)

# 6-series cable, dB for 100 ft: a vendor's support article on the loss of 6-series cable, typical values at the middle of TV
# channels 2, 13, 14 and 51 and at 950 MHz. Below them, for the way back, 0.58 dB at 5 MHz (from memory).
SIX = [(5, 0.58), (57, 1.5), (213, 3.0), (473, 4.5), (695, 5.6), (950, 6.4)]
# Small parts, dB, the middle of what they are thought to take (common practice, no source).
ENTRY, GROUND_BLOCK, PLATE, CONNECTORS, FILTER = 0.27, 0.23, 0.33, 0.07, 0.6
# Splitters to buy: labels of 5-1675 MHz parts; from four legs on common practice, no source.
BOUGHT = {2: [3.7] * 2, 3: [3.7, 7.3, 7.3], 4: [7.3] * 4, 6: [9.5] * 6, 8: [11.0] * 8}
# What the devices need, dBmV: SCTE 40 and ATSC A/74 from memory, DOCSIS for the modem; what a modem sends at most.
NEEDS = {"cable_tv": (-12.0, 15.0), "antenna_tv": (-34.25, None), "cable_internet": (-15.0, 15.0), "sends": (None, 50.0)}


def sheet_of(dice):
    """A random house as a sheet."""
    antenna = dice.random() < 0.4
    lines = ["[survey]", 'name = "A house of the dice"', ""]
    parts, rooms, readings = [], [], []

    def part(tag, kind, feed=None, metres=None, **more):
        said = {"tag": tag, "kind": kind, **more}
        if feed is not None:
            said.update({"from": feed[0], "cable": "6", "connectors": "compression", "length": f"{metres:.1f} m measured"})
            if feed[1]:
                said["port"] = feed[1]
        parts.append(said)

    part("E1", "entry", service="antenna" if antenna else "cable", state="connected")
    feed = ("E1", 0)
    if dice.random() < 0.5:
        part("G1", "ground_block", feed, dice.uniform(0.5, 3))
        feed = ("G1", 0)
    if dice.random() < 0.3:
        part("F1", "entry_filter", feed, 0.3, band="5-1002 MHz", stop_band="1125-1675 MHz", rejection="40 dB")
        feed = ("F1", 0)
    legs = []
    for tag in ("S1", "S2", "S3")[: dice.choice((1, 2, 2, 3))]:
        count = dice.choice((2, 2, 3, 4))
        loss = {2: [3.5] * 2, 3: [3.5, 7.0, 7.0] if dice.random() < 0.5 else [5.5] * 3, 4: [7.0] * 4}[count]
        at = legs.pop(dice.randrange(len(legs))) if legs else feed
        top = dice.choice((1000, 1675, 2300))
        metres = dice.choice((0.3, dice.uniform(2, 12)))
        part(tag, "splitter", at, metres, legs=count, loss=[f"{db} dB" for db in loss], band=f"5-{top} MHz")
        legs += [(tag, port) for port in range(1, count + 1)]
    dice.shuffle(legs)
    used = legs[: dice.randint(2, 5)]
    free = [leg for leg in legs if leg not in used]
    for tag, port in free:
        split = next(said for said in parts if said["tag"] == tag)
        split.setdefault("ends", {})[port] = "capped"
    modem = None if antenna else dice.randrange(len(used))
    bridge = dice.randrange(len(used)) if modem is None or dice.random() < 0.3 else modem
    for number, at in enumerate(used):
        tag, room = f"O{number + 1}", f"Room {number + 1}"
        plugged = ["modem"] if number == modem else dice.choice((["tv"], ["tv"], ["other"]))
        more = {"room": room, "plugged": plugged}
        wish = None
        if number == bridge:
            more["adapter"] = {"bridge": True}
        elif dice.random() < 0.7:
            more["adapter"], wish = {}, dice.choice((200, 900, 2000))
        part(tag, "outlet", at, dice.uniform(3, 30), **more)
        rooms.append((room, wish))
        if plugged != ["other"] and dice.random() < 0.35:
            level = dice.uniform(-33, -10) if antenna else dice.uniform(-12, 8)
            readings.append((tag, f'level = "{level:.1f} dBmV"\nfrequency = "{dice.choice((183, 447, 603, 711))} MHz"'))
        if number == modem and dice.random() < 0.6:
            readings.append((tag, f'modem_sends = "{dice.uniform(38, 49):.1f} dBmV"'))
    if dice.random() < 0.8:
        level = dice.uniform(-27, -8) if antenna else dice.uniform(-3, 14)
        for mhz in (BAND[0], 350, 603, BAND[1]):
            readings.append(("E1", f'level = "{level - dice.uniform(0, 3) * mhz / 800:.1f} dBmV"\nfrequency = "{mhz} MHz"'))
    for room, wish in rooms:
        lines += ["[[room]]", f'name = "{room}"', *([f'wish = "{wish} Mb/s"'] if wish else []), ""]
    for said in parts:
        lines += ["[[part]]", *(f"{name} = {value(what)}" for name, what in said.items()), ""]
    for tag, what in readings:
        lines += ["[[reading]]", f'at = "{tag}"', what, ""]
    return "\n".join(lines)


def value(what):
    if isinstance(what, dict):
        return "{ " + ", ".join(f"{name} = {value(inner)}" for name, inner in what.items()) + " }" if what else "{}"
    return json.dumps(what)


def number(text):
    return float(text.split()[0])


class House:
    """A house as this script reads it off the sheet."""

    def __init__(self, text):
        said = tomllib.loads(text)
        self.parts = {}
        for part in said["part"]:
            self.parts[part["tag"]] = {
                "kind": part["kind"],
                "from": part.get("from"),
                "port": part.get("port", 1),
                "metres": number(part["length"]) if "length" in part else 0.0,
                "runs": 1 if "length" in part else 0,
                "loss": [number(db) for db in part.get("loss", [])],
                "service": part.get("service"),
                "plugged": part.get("plugged", []),
                "shared": False,
                "filter": 0,
            }
        self.levels = [(r["at"], number(r["frequency"]), number(r["level"])) for r in said.get("reading", []) if "level" in r]
        self.sends = {r["at"]: number(r["modem_sends"]) for r in said.get("reading", []) if "modem_sends" in r}

    def way(self, tag):
        """The loss between the entry and an outlet, as a function of the frequency."""
        taken = []
        while tag is not None:
            part = self.parts[tag]
            taken.append((part, None))
            above = part["from"]
            if above is not None and self.parts[above]["kind"] == "splitter":
                taken.append((self.parts[above], part["port"]))
            tag = above

        def loss(mhz):
            total = 0.0
            for part, port in taken:
                if port is not None:
                    # A label states the loss within its band, with no slope: skywarnforum.org's 3.5 and 7 dB have none.
                    total += part["loss"][port - 1]
                    continue
                total += cable(mhz) * part["metres"] / 30.48 + CONNECTORS * part["runs"] + FILTER * part["filter"]
                total += {"entry": ENTRY, "ground_block": GROUND_BLOCK, "outlet": PLATE, "entry_filter": FILTER}.get(part["kind"], 0.0)
                total += 3.7 if part["shared"] else 0.0
            return total

        return loss

    def fed(self, tag):
        return [child for child, part in self.parts.items() if part["from"] == tag]

    def below(self, tag):
        return [tag, *(inner for child in self.fed(tag) for inner in self.below(child))]

    def reseat(self, tag):
        """The strong leg to the modem, else to the longest cable, as the step says."""
        modem = lambda child: any("modem" in self.parts[at]["plugged"] for at in self.below(child))
        for port, child in enumerate(sorted(self.fed(tag), key=lambda c: (not modem(c), -self.parts[c]["metres"])), 1):
            self.parts[child]["port"] = port

    def do(self, step, legs):
        """One step, as its words ask for it."""
        at, change = step["at"]["tag"], step["change"]
        part = self.parts.get(at)
        if change == "add_entry_filter":
            for child in self.fed(at):
                self.parts[child]["from"] = "new filter"
            self.parts["new filter"] = {**self.parts[at], "kind": "entry_filter", "from": at, "port": 1, "metres": 0.3, "runs": 1}
        elif change == "swap_splitter":
            part["loss"] = BOUGHT[legs]
            self.reseat(at)
        elif change == "remove_splitter":
            (child,) = self.fed(at)
            self.parts[child].update({"from": part["from"], "port": part["port"]})
            self.parts[child]["metres"] += part["metres"]
            del self.parts[at]
        elif change == "merge_splitters":
            upper, lower = (tag for tag in re.findall(r"\bS\d\b", step["what"]))
            for child in self.fed(lower):
                self.parts[child]["from"] = upper
            del self.parts[lower]
            self.parts[upper]["loss"] = BOUGHT[legs]
            self.reseat(upper)
        elif change == "share_outlet":
            part["shared"] = True
        elif change.startswith("filter_at_"):
            part["filter"] = 1
        elif change not in ("cap", "move_bridge", "use_outlet_nearby"):
            raise NotImplementedError(f"{change}: not done by this script")


def cable(mhz):
    """dB for 100 ft. Loss is close to a power of the frequency (skin effect: its root), so it is a line on log-log paper."""
    (f0, a0), (f1, a1) = next(pair for pair in zip(SIX, SIX[1:]) if pair[1][0] >= mhz)
    return a0 * (a1 / a0) ** (math.log(mhz / f0) / math.log(f1 / f0))


def incoming(house, mhz):
    known = sorted((f, dbmv) for at, f, dbmv in house.levels if at == "E1")
    for (f0, l0), (f1, l1) in zip(known, known[1:]):
        if f0 <= mhz <= f1:
            return l0 + (l1 - l0) * (mhz - f0) / (f1 - f0)
    return None


def outside_by(needs, dbmv):
    low, high = NEEDS[needs]
    return max(low - dbmv if low is not None else 0.0, dbmv - high if high is not None else 0.0, 0.0)


class Ledger:
    def __init__(self):
        self.compared = {"now": 0, "done": 0, "sends": 0}
        self.worst = {"now": 0.0, "done": 0.0, "sends": 0.0}
        self.faults, self.steps, self.refused, self.told, self.changes = [], 0, 0, 0, {}

    def compare(self, which, what, ours, added):
        self.compared[which] += 1
        self.worst[which] = max(self.worst[which], abs(ours - added))
        if not abs(ours - added) <= MOST_DIFFERENCE:
            self.faults.append(f"{what}: {which} {ours}, added up {added:.2f}")


def look(command, text, name, ledger):
    with tempfile.TemporaryDirectory() as folder:
        paper, survey = os.path.join(folder, "house.toml"), os.path.join(folder, "house.legwork")
        with open(paper, "w") as file:
            file.write(text)
        subprocess.run([command, "sheet", paper, survey], check=True, capture_output=True)
        say = lambda *what: json.loads(subprocess.run([command, "--json", *what, survey], check=True, capture_output=True).stdout)
        levels, work = say("levels"), say("worklist")
    now, done = House(text), House(text)
    ledger.steps += len(work["steps"])
    ledger.refused += sum("outside what the device needs" in no["why"] or "more than is good" in no["why"] for no in work["refused"])
    told = {(out["outlet"]["tag"], out["service"]) for step in work["steps"] for out in step["moves_out"]}
    ledger.told += len(told)
    for step in work["steps"]:
        # The last that it names is the new one.
        legs = re.findall(r"(\d+)-way", step["what"])
        done.do(step, int(legs[-1]) if legs else None)
        ledger.changes[step["change"]] = ledger.changes.get(step["change"], 0) + 1
    for outlet in levels["outlets"]:
        tag, service = outlet["outlet"]["tag"], outlet["service"]
        what = f"{name} {tag} {service}"
        before, after = now.way(tag), done.way(tag)
        then = {down["mhz"]: down["level_dbmv"]["likely"] for down in outlet["when_done"]["down"]}
        measured = {f: dbmv for at, f, dbmv in now.levels if at == tag}
        leaves = False
        for down in outlet["down"]:
            mhz = down["mhz"]
            comes = incoming(now, mhz)
            if not BAND[0] <= mhz <= BAND[1] or (comes is None and mhz not in measured):
                continue
            # A reading here answers for the channels next to it, before what comes in does (docs/method.md).
            if mhz not in measured and any(abs(mhz - near) <= 8 for near in measured):
                continue
            if comes is not None:
                ledger.compare("now", f"{what} {mhz}", down["level_dbmv"]["likely"], comes - before(mhz))
            start = measured.get(mhz, None if comes is None else comes - before(mhz))
            added = start + before(mhz) - after(mhz)
            ledger.compare("done", f"{what} {mhz}", then[mhz], added)
            leaves |= outside_by(service, start) == 0 and outside_by(service, added) > MOST_DIFFERENCE
        if tag in now.sends:
            costs = max(after(mhz) - before(mhz) for mhz in UP)
            ledger.compare("sends", what, outlet["when_done"]["modem_sends_dbmv"]["likely"], now.sends[tag] + costs)
            leaves |= outside_by("sends", now.sends[tag]) == 0 and outside_by("sends", now.sends[tag] + costs) > MOST_DIFFERENCE
        ours = outlet["fits"] != "outside" and outlet["when_done"]["fits"] == "outside"
        if (ours or leaves) and (tag, service) not in told:
            ledger.faults.append(f"{what}: from inside to outside without a word; ours {ours}, added up {leaves}")


def main(command, houses=50, seed=1):
    ledger = Ledger()
    for at in range(houses):
        look(command, sheet_of(random.Random(f"{seed} {at}")), f"house {seed} {at}", ledger)
    for which, count in ledger.compared.items():
        print(f"{which}: {count} levels, greatest difference {ledger.worst[which]:.2f} dB")
    print(f"{ledger.steps} steps {ledger.changes}; refused for a level {ledger.refused}, kept with a word {ledger.told}")
    if ledger.faults:
        sys.exit("\n".join(ledger.faults))
    if not all(ledger.compared.values()) or not ledger.steps or not ledger.refused:
        sys.exit("nothing was compared, done or refused: these houses prove nothing")


if __name__ == "__main__":
    if not 2 <= len(sys.argv) <= 4:
        sys.exit(__doc__)
    main(sys.argv[1], *map(int, sys.argv[2:]))
