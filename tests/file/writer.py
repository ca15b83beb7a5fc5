#!/usr/bin/env python3
"""Writes a survey file with everything in it, and beside it what a reader must find there.

Written from docs/file.md alone, with the standard library only: every field, every word that a field may say, every question
and every reply, a photo, notes, something removed, something forgotten, a disagreement, members of a later release. The ids and
times are always the same, so the same files come out again.
With a fourth word it says the questions too that came after the first kept files; with "guesses" those too that came after
the files kept then; with "without" also what kind of work is not wanted, which came after those; with "print" also what was
read in a photo and adapters that change places, which came after that.
Usage: writer.py FORMAT FILE.lwk FILE.json [later | guesses | without | print]
"""
import hashlib
import json
import sys
import uuid
import zipfile

FORMAT, FILE, TOLD = int(sys.argv[1]), sys.argv[2], sys.argv[3]
LATER = len(sys.argv) > 4
PRINT = sys.argv[4:] == ["print"]
WITHOUT = PRINT or sys.argv[4:] == ["without"]
GUESSES = WITHOUT or sys.argv[4:] == ["guesses"]
SPACE = uuid.UUID("6f1c5f0e-2b1e-5a52-8d39-3c1f0a4f7d11")
PICTURE = open("core/facts/tests/pictures/grey.jpg", "rb").read()
STARTED_MS = 1_790_000_000_000

VERSIONS = ["1.1", "2.0", "2.0 bonded", "2.5"]
CABLES = ["six", "fifty_nine", "seven", "eleven", "unknown"]
CONNECTORS = ["compression", "crimp", "push_on", "twist_on", "corroded", "hand_tight", "bad_joint", "unknown"]
KINDS = ["entry", "ground_block", "entry_filter", "splitter", "tap", "amplifier", "barrel", "outlet", "terminator",
         "high_pass_filter", "satellite_combiner", "pad", "power_inserter", "unknown"]
DEVICES = ["tv", "tv_box", "modem", "moca_gateway", "satellite_receiver", "fibre_box", "power_supply", "other"]
SERVICES = ["cable_tv", "cable_internet", "antenna_tv", "satellite_tv", "provider_network", "fibre_link",
            "power_over_coax"]


def named(name):
    """A UUID that is the same in every run."""
    return str(uuid.uuid5(SPACE, name))


class Facts:
    def __init__(self):
        self.lines, self.live, self.act, self.by = [], {}, named("act 1"), named("author 1")
        self.kinds, self.said = {}, set()

    def say(self, subject, field, value, over="live", **others):
        number = len(self.lines)
        ms = STARTED_MS + number
        tail = hashlib.sha256(str(number).encode()).hexdigest()
        fact = f"{ms:012x}"
        fact = f"{fact[:8]}-{fact[8:]}-7{tail[:3]}-8{tail[3:6]}-{tail[6:18]}"
        live = self.live.setdefault((subject, field), [])
        replaced = list(live) if over == "live" else over
        line = {"act": self.act, "by": self.by, "field": field, "id": fact, "over": sorted(replaced),
                "subject": subject, **others}
        if "forgotten" not in others:
            line["value"] = value
        self.lines.append(line)
        self.live[subject, field] = [id for id in live if id not in replaced] + [fact]
        self.said.add(field)
        return fact

    def new(self, kind, name, /, **fields):
        subject = named(f"{kind} {name}")
        assert subject not in self.kinds, name
        self.kinds[subject] = kind
        self.say(subject, "is", kind)
        for field, value in fields.items():
            self.say(subject, field, value)
        return subject


facts = Facts()
survey = named("survey")
facts.kinds[survey] = "survey"
facts.say(survey, "is", "survey")
facts.say(survey, "name", "Everything, invented")
facts.say(survey, "place", "Nowhere 1, an invented street")
facts.say(survey, "internet", {"down_mbps": 500, "up_mbps": 50})
for shared, ownership in [(True, "rented"), (False, "own")]:
    facts.say(survey, "building", {"ownership": ownership, "shared": shared})
for version in VERSIONS:
    facts.say(survey, "network", {"version": version})
facts.say(survey, "network", {"ethernet_mbps": 2500, "version": "2.5"})
if GUESSES:
    facts.say(survey, "network", {"ethernet_mbps": 2500, "owned": 2, "version": "2.5"})
facts.say(named("author 1"), "name", "The first")
facts.say(named("author 2"), "name", "The second")

# One part of every kind, each behind the one before where it passes anything on.
parts = {kind: facts.new("part", kind, kind=kind, tag=kind[:2].upper() + "1") for kind in KINDS}
runs = [facts.new("run", cable, cable=cable, tag=f"R{number}") for number, cable in enumerate(CABLES)]
entry, splitter, outlet, tap, amplifier = (parts[kind] for kind in ["entry", "splitter", "outlet", "tap", "amplifier"])
facts.say(entry, "feed", "nothing")
facts.say(parts["ground_block"], "feed", {"from": {"part": entry, "port": 1, "run": None}})
facts.say(splitter, "feed", {"from": {"part": parts["ground_block"], "port": 1, "run": runs[0]}})
facts.say(outlet, "feed", {"from": {"part": splitter, "port": 1, "run": runs[1]}})
facts.say(amplifier, "feed", {"from": {"part": splitter, "port": 2, "run": runs[2]}})
facts.say(splitter, "where", "behind the shelf")
facts.say(splitter, "label", "4-WAY SPLITTER 5-1000MHz 7.5dB")
facts.say(splitter, "rating", {
    "band": {"high_mhz": 1000, "low_mhz": 5}, "doubtful": True, "isolation_db": 25, "leg_losses_db": [3.5, 7.5, 7.5],
    "legs": 3, "passes_on": False, "power_pass": True, "return_loss_db": 18, "says_moca": False})
facts.say(amplifier, "rating", {
    "gain_db": 15, "legs": 2, "moca_bypass": True, "modem_port": True, "return_gain_db": -2, "return_high_mhz": 42})
facts.say(tap, "rating", {"tap_db": 12})
facts.say(parts["entry_filter"], "rating", {"rejection_db": 40, "stop_band": {"high_mhz": 1675, "low_mhz": 1125}})
for port, end in enumerate(["capped", "open", "loose_end", "another_home"], 3):
    facts.say(splitter, f"end.{port}", end)
office = facts.new("room", "office", name="Office", wish={"down_mbps": 900, "up_mbps": 300.5})
facts.new("room", "den", name="Den", served_from=outlet)
facts.say(outlet, "room", office)
facts.say(outlet, "plugged", [])
facts.say(outlet, "plugged", DEVICES)
facts.say(outlet, "adapter", {"bridge": False})
facts.say(outlet, "adapter", {"bridge": True, "ethernet_mbps": 1000, "version": "2.0"})
facts.say(outlet, "behind_adapter", {"pieces": ["run", "switch"]})
facts.say(outlet, "behind_adapter", {"mbps": 100, "pieces": []})
for value in ["splitter", "through_port"]:
    facts.say(outlet, "sharing", value)
for value in [False, True]:
    facts.say(outlet, "device_filter", value)
for value in ["cable", "antenna", "satellite", "fibre_box", "unknown"]:
    facts.new("part", f"entry of {value}", kind="entry", entry_kind=value)
for value in ["connected", "cut_off", "unknown"]:
    facts.new("part", f"entry {value}", kind="entry", entry_state=value)

for known in ["measured", "paced", "guessed"]:
    facts.new("run", known, length={"high_metres": 14, "known": known, "low_metres": 9.5, "metres": 12})
for number, value in enumerate(CONNECTORS):
    facts.new("run", f"connector {number}", connector_near=value, connector_far=CONNECTORS[-1 - number])

services = {kind: facts.new("service", kind, kind=kind, entry=entry) for kind in SERVICES}
facts.say(services["cable_tv"], "top_mhz", 1002)
for value in ["analog", "digital", "both"]:
    facts.say(services["cable_tv"], "signal", value)
for generation in ["3.0", "3.1", "4.0"]:
    facts.say(services["cable_internet"], "modem", {"generation": generation})
facts.say(services["cable_internet"], "modem", {"generation": "4.0", "upstream_top_mhz": 684})
for value in [False, True]:
    facts.say(services["cable_internet"], "drops_out", value)
for value in ["en50494", "en50607"]:
    facts.say(services["satellite_tv"], "single_cable", value)
facts.say(services["provider_network"], "other_network",
          {"bands": [{"high_mhz": 1675, "low_mhz": 1125}], "nodes": 3, "version": "2.0"})
facts.say(services["power_over_coax"], "power", {"from": parts["power_inserter"], "to": amplifier})

MEASURED = [
    {"what": "level", "mhz": 600, "dbmv": 3.5}, {"what": "error_ratio", "mhz": 600, "db": 36},
    {"what": "modem_sends", "dbmv": 44}, {"what": "throughput", "down_mbps": 940, "up_mbps": 938},
    {"what": "phy_rate", "mbps": 3400}, {"what": "round_trip", "ms": 4},
    {"what": "power", "sent_dbm": -3, "received_dbm": -45}, {"what": "nodes_seen", "count": 3},
    {"what": "packet_loss", "percent": 0.5, "under_load": True},
    {"what": "link", "state": "none"}, {"what": "link", "state": "comes_and_goes"}, {"what": "link", "state": "steady"},
    {"what": "swings", "low_mbps": 100, "high_mbps": 800, "with_heat_or_hour": True},
]
readings = [facts.new("reading", str(number), measured=value, about=outlet) for number, value in enumerate(MEASURED)]
facts.say(readings[0], "port", 1)
for reach in ["internet", "house", "adapter_page"]:
    facts.say(readings[3], "how", {"over_radio": False, "reach": reach})
facts.say(readings[3], "how", {"over_radio": True, "reach": "internet", "socket_mbps": 1000})

facts.new("note", "1", text="Found as “left” by ‘somebody’.\nTwo lines.", about=splitter)
digest = hashlib.sha256(PICTURE).hexdigest()
image = {"bytes": len(PICTURE), "ext": "jpg", "height": 16, "sha256": digest, "width": 16}
for role in ["before", "after", "label", "place"]:
    facts.new("photo", role, image=image, of=splitter, role=role)
facts.new("photo", "of a camera", image=image, file_name="DSC 0001 “splitter”.JPG", taken="2026-05-31T14:05:09",
          **({"print": "4-WAY 5-1002MHz"} if PRINT else {}))

MEASUREMENT = "# MHz S RI R 75\n5 0 0 0.9 0 0.9 0 0 0\n"
measurement = facts.new("measurement", "1", ports=2, digest=hashlib.sha256(MEASUREMENT.encode()).hexdigest())
for number, start in enumerate(range(0, len(MEASUREMENT), 24)):
    facts.say(measurement, f"text.{number}", MEASUREMENT[start:start + 24])
facts.say(parts["barrel"], "measurement", measurement)

CHANGES = [
    {"add_entry_filter": {"behind": entry}}, {"move_entry_filter": {"behind": entry, "filter": parts["entry_filter"]}},
    {"swap_entry_filter": {"filter": parts["entry_filter"]}}, {"swap_splitter": {"legs": 3, "splitter": splitter}},
    {"remove_splitter": {"splitter": splitter}}, {"merge_splitters": {"legs": 4, "lower": tap, "upper": splitter}},
    {"cap": {"part": splitter, "port": 3}}, {"swap_amplifier": {"amplifier": amplifier}},
    {"remove_amplifier": {"amplifier": amplifier}}, {"replace_run": {"to": outlet}}, {"renew_connectors": {"to": outlet}},
    {"filter_at_device": {"outlet": outlet}}, {"modem_own_line": {"outlet": outlet}}, {"share_outlet": {"outlet": outlet}},
    {"join_loose": {"part": tap, "port": 3, "to": splitter}}, {"move_bridge": {"from": outlet, "to": outlet}},
    {"use_outlet_nearby": {"outlet": outlet, "room": office}}, {"new_run": {"from": splitter, "room": office}},
    {"newer_adapter": {"outlet": outlet}}, {"look_at_part": {"outlet": outlet, "part": splitter}},
    {"look_at_run": {"outlet": outlet, "to": outlet}},
    *({"check_at_outlet": {"check": check, "outlet": outlet}}
      for check in ["adapter", "short_cable", "network_cable", "other_adapter", "measure"]),
]
if PRINT:
    CHANGES.append({"exchange_adapters": {"outlet": outlet, "with": outlet}})
OUTCOMES = [{"end": "done"}, {"end": "could_not"}, {"end": "put_back", "others_fine": True}]
for number, change in enumerate(CHANGES):
    facts.new("work", str(number), change=change, outcome=OUTCOMES[number % len(OUTCOMES)])

QUESTIONS = {
    "uses": ["yes", "no", "unsure"], "modem-age": ["unsure"], "plan": ["unsure"],
    "depends": [["phone", "alarm", "medical"], ["nothing"], ["unsure"]], "rooms": ["yes"], "wish": ["yes", "unsure"],
    "ways-in": ["yes"], "joined": ["unsure"], "ground-block": ["yes", "no", "unsure"],
    "entry-filter": ["yes", "no", "unsure"], "label": ["unsure"], "label-read": ["yes"], "legs": ["unsure"],
    "by-pass": ["unsure"], "powered": ["plug", "coax", "off", "unsure"], "cables": ["six", "fifty_nine", "seven", "eleven", "differ", "unsure"],
    "cable": ["unsure"], "length": ["unsure"], "connectors": ["good", "some", "unsure", "yes"], "plugged": ["unsure"],
    "more-outlets": ["no", "unsure"], "fed-by": ["unsure"], "router-at": ["yes", "none", "unsure"],
    "router-speaks": ["yes", "no", "unsure"], "adapters": ["25", "20-bonded", "20", "11", "none", "unsure"],
    "drops-out": ["no", "unsure"], "adapters-placed": ["yes", "no"], "private-password": ["yes", "no", "none", "unsure"],
    "still-fine": ["yes", "no", "nothing", "unsure"], "others-fine": ["yes", "no", "nothing", "unsure"],
    "handover-report": ["yes"], "handover-file": ["yes"],
}
# What came after the first kept files.
if LATER:
    QUESTIONS["ports"] = ["yes", "unsure"]
if GUESSES:
    QUESTIONS["fed-by"] = ["unsure", "guessed", "yes"]
if WITHOUT:
    QUESTIONS["without"] = [["new-cable", "heights"], ["nothing"]]
OF = {"modem-age": services["cable_internet"], "drops-out": services["cable_internet"], "wish": office, "joined": entry,
      "ground-block": entry, "entry-filter": entry, "label": splitter, "label-read": splitter, "legs": splitter,
      "by-pass": amplifier, "powered": amplifier, "cable": runs[4], "length": runs[4], "plugged": outlet, "fed-by": tap}
for question, replies in QUESTIONS.items():
    for reply in replies:
        facts.say(OF.get(question, survey), f"asked.{question}", reply)

# Somebody else, who had not seen all of it.
facts.act, facts.by = named("act 2"), named("author 2")
facts.say(splitter, "where", "in the attic", over=[])
gone = facts.new("part", "removed", kind="barrel", tag="B9")
seen = [facts.live[gone, field][0] for field in ["is", "kind", "tag"]]
facts.say(gone, "removed", {"seen": sorted(seen)})
back = facts.new("part", "brought back", kind="barrel", tag="B8")
seen = [facts.live[back, field][0] for field in ["is", "kind", "tag"]]
facts.say(back, "removed", {"seen": sorted(seen)})
facts.say(back, "removed", None)
owner = facts.say(survey, "owner", None, forgotten=True)
facts.say(survey, "forget", {"facts": [owner]})
facts.say(entry, "a.later-release", {"of": ["a later", "release"], "says": 1.5}, certainty="a member of a later release")
facts.say(tap, "tag", None)

header = {"core": "writer.py", "facts": len(facts.lines), "file": "legwork", "format": FORMAT, "left_out": [],
          "survey": survey}
dumped = [json.dumps(line, sort_keys=True, separators=(",", ":"), ensure_ascii=False) for line in [header, *facts.lines]]
entries = {
    "bagit.txt": b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n",
    "data/facts.jsonl": "".join(line + "\n" for line in dumped).encode(),
    f"data/photos/{digest}.jpg": PICTURE,
}
sums = {name: hashlib.sha256(content).hexdigest() for name, content in entries.items()}
payload = [name for name in entries if name.startswith("data/")]
size = sum(len(entries[name]) for name in payload)
entries["bag-info.txt"] = f"External-Identifier: {survey}\nPayload-Oxum: {size}.{len(payload)}\n".encode()
entries["manifest-sha256.txt"] = "".join(f"{sums[name]}  {name}\n" for name in sorted(payload)).encode()
tags = {name: hashlib.sha256(entries[name]).hexdigest() for name in ["bag-info.txt", "bagit.txt", "manifest-sha256.txt"]}
entries["tagmanifest-sha256.txt"] = "".join(f"{digest}  {name}\n" for name, digest in tags.items()).encode()
with zipfile.ZipFile(FILE, "w") as zipped:
    for name, content in entries.items():
        info = zipfile.ZipInfo(f"survey/{name}")
        info.compress_type, info.create_system = zipfile.ZIP_DEFLATED, 0
        zipped.writestr(info, content)

there = {subject: kind for subject, kind in facts.kinds.items() if subject != gone}
told = {
    "facts": dumped[1:],
    "records": {kind: list(there.values()).count(kind) for kind in sorted(set(there.values()))},
    "removed": [gone],
    "disagreements": [[splitter, "where", ["behind the shelf", "in the attic"]]],
    "forgotten": [owner],
}
with open(TOLD, "w") as file:
    json.dump(told, file, ensure_ascii=False, indent=1)
    file.write("\n")
