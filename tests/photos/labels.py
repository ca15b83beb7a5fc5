"""Labels of parts that nobody makes: their rows of text, every number on them, and what they state.

All is drawn at random from what such labels commonly carry; no row is of any real part. A number is a pair of a unit and a value
without a sign; `states` holds what the label states by the names of the label reader's members.
"""

LOW = ["5", "5", "5", "47", "54", "85", "950"]
HIGH = {
    "5": ["42", "65", "85", "862", "1000", "1002", "1006", "1218", "1675", "1794", "2300", "2400"],
    "47": ["862", "1006"],
    "54": ["1002", "1218"],
    "85": ["862", "1218"],
    "950": ["2150", "2300"],
}
LOSS = {2: ["3.5", "3.7", "4", "4.2"], 3: ["5.5", "5.8", "6"], 4: ["6.9", "7", "7.2", "7.5", "8"], 6: ["9", "9.5", "10"],
        8: ["10.5", "11", "11.5", "12"]}
OTHER = ["PoE filter", "IN", "POWER IN", "Amplifier", "EMI SHIELDED", "INDOOR USE ONLY", "ZINC DIE CAST", "HIGH PASS FILTER", "CATV",
         "DC POWER PASS", "SATELLITE"]


class Label:
    """Rows of a label in the making."""

    def __init__(self, random):
        self.random = random
        # Each row with the numbers on it.
        self.rows, self.states = [], {}
        self.waiting = []
        # One label writes the same thing in the same way throughout.
        self.gap = random.choice(["", " "])
        self.to = random.choice(["-", "-", "-", "-", "~", " - ", "–"])
        self.minus = random.choice(["-", "-", "-", "–", "- ", ""])
        self.comma = random.random() < 0.08

    def number(self, unit, value):
        """Puts a number down as one of the next row's, and says how it is written."""
        self.waiting.append([unit, float(value)])
        return value.replace(".", ",") if self.comma else value

    def band(self, low, high, unit="MHz"):
        """A range of frequencies."""
        return f"{self.number('MHz', low)}{self.to}{self.number('MHz', high)}{self.gap}{unit}"

    def decibels(self, value, minus=False):
        """A figure in decibels."""
        return f"{self.minus if minus else ''}{self.number('dB', value)}{self.gap}dB"

    def add(self, row, **states):
        """Adds a row, and what it states."""
        self.rows.append((row, self.waiting))
        self.waiting = []
        self.states |= states

    def own_band(self, word=""):
        """The band that the part is made for."""
        low = self.random.choice(LOW)
        high = self.random.choice([high for high in HIGH[low] if float(high) > 300])
        self.add(f"{word}{self.band(low, high)}", low=float(low), high=float(high))

    def other(self):
        """A row that states nothing in numbers, or a number that is no figure of the part."""
        kind = self.random.random()
        if kind < 0.25:
            volts = self.random.choice(["12", "15", "18", "24"])
            volts = self.number("V", volts)
            self.add(self.random.choice([f"{volts}V DC", f"INPUT {volts}V"]))
        elif kind < 0.45:
            self.add("75 OHM")
        elif kind < 0.6:
            self.add(f"Model {self.random.randint(100, 999)}{self.random.choice('ABGKX')}")
        else:
            self.add(self.random.choice(OTHER[:7]))


def splitter(label):
    random = label.random
    legs = random.choice([2, 2, 3, 4, 4, 6, 8])
    loss = random.choice(LOSS[legs])
    word = random.choice(["{}-WAY SPLITTER", "{} WAY SPLITTER", "{}-Way Splitter", "SPLITTER {}-WAY"])
    label.add(word.format(label.number("way", str(legs))), legs=legs)
    label.own_band()
    if legs <= 4 and random.random() < 0.3:
        for leg in range(1, legs + 1):
            label.add(f"OUT{leg} {label.decibels(loss, True)}")
        label.states["leg_losses"] = [float(loss)] * legs
    else:
        label.add(f"{random.choice(['OUT ', 'LOSS ', 'IL ', ''])}{label.decibels(loss, True)}", leg_losses=[float(loss)] * legs)
    if random.random() < 0.4:
        isolation = random.choice(["20", "22", "25", "28", "30"])
        label.add(f"ISO {label.decibels(isolation)}", isolation=float(isolation))
    if random.random() < 0.3:
        label.other()


def tap(label):
    random = label.random
    value = random.choice(["6", "8", "9", "12", "16", "20", "24"])
    label.add(random.choice(["TAP", "DIRECTIONAL COUPLER"]))
    label.own_band()
    label.add(f"TAP {label.decibels(value, True)}", tap=float(value))
    through = random.choice(["0.8", "1.2", "1.5", "1.9", "2.5", "3.2"])
    label.add(f"{random.choice(['OUT', 'THRU'])} {label.decibels(through, True)}", leg_losses=[float(through)])
    if random.random() < 0.3:
        label.other()


def amplifier(label):
    random = label.random
    gain = random.choice(["8", "10", "12", "15", "15.5", "18", "20", "24", "30"])
    label.add(random.choice(["AMPLIFIER", "DROP AMPLIFIER", "Amplifier"]))
    low, high = random.choice([("54", "1002"), ("54", "1218"), ("85", "862"), ("85", "1218"), ("47", "862")])
    label.add(f"{random.choice(['FWD ', 'FORWARD '])}{label.band(low, high)}", low=float(low), high=float(high))
    label.add(f"GAIN {label.decibels(gain)}", gain=float(gain))
    if random.random() < 0.5:
        upper = random.choice([edge for edge in ("42", "65") if float(edge) < float(low)] or ["30"])
        label.add(f"RETURN {label.band('5', upper)}", return_low=5.0, return_high=float(upper))
    if random.random() < 0.5:
        label.other()


def entry_filter(label):
    random = label.random
    label.add(random.choice(["POE FILTER", "PoE filter", "MoCA FILTER"]))
    high = random.choice(["1002", "1002", "1006", "862"])
    label.add(f"PASS {label.band('5', high)}", low=5.0, high=float(high))
    stop = random.choice([("1125", "1675"), ("1150", "1675"), ("1125", "1650")])
    label.add(f"STOP {label.band(*stop)}", stop_low=float(stop[0]), stop_high=float(stop[1]))
    if random.random() < 0.6:
        rejection = random.choice(["35", "40", "45", "50"])
        label.add(f"REJECTION {label.decibels(rejection)}", rejection=float(rejection))
    if random.random() < 0.4:
        label.other()


def pad(label):
    value = label.random.choice(["3", "6", "8", "10", "12", "16", "20"])
    label.add(f"ATTENUATOR {label.decibels(value)}", leg_losses=[float(value)])
    label.own_band()
    label.other()


def jacket(label):
    random = label.random
    series = random.choice(["6", "6", "6", "11", "59"])
    mark = random.randint(1, 999)
    words = [random.choice([f"RG-{series}/U", f"RG{series}", f"SERIES {series}"]), random.choice(["18 AWG", "75 OHM", "COAXIAL CABLE"]),
             random.choice(["CATV", "CMR", "SWEPT TO 3 GHz", "QUAD SHIELD"])]
    if words[-1].endswith("3 GHz"):
        label.number("MHz", "3000")
    unit = random.choice(["FT", "FEET", "ft", "M", "m"])
    digits = f"{mark:0{random.choice([1, 3, 4])}d}"
    label.add(" ".join(words), cable=series)
    label.number("ft" if unit.lower().startswith("f") else "m", digits)
    label.add(f"{digits} {unit}")


def mixed(label):
    """Rows that hardly one part would carry together: nothing to lean on but the print itself."""
    random = label.random
    low = random.choice(LOW)
    label.add(label.band(low, random.choice(HIGH[low])))
    sizes = ["3.5", "4", "5.5", "6.9", "7", "7.4", "8", "9.2", "10.5", "11", "12", "15", "18", "20", "24", "30"]
    kinds = random.sample([("OUT ", True), ("IL ", False), ("TAP ", True), ("RL ", False), ("Gain ", False), ("ISO ", False)], 2)
    for word, minus in kinds:
        label.add(f"{word}{label.decibels(random.choice(sizes), minus)}")
    if random.random() < 0.5:
        label.add(random.choice(OTHER))
    else:
        label.other()
    label.states = None


KINDS = [mixed] * 6 + [splitter] * 6 + [tap] * 2 + [amplifier] * 2 + [entry_filter] * 2 + [pad] + [jacket] * 2


def draw(random):
    """A label at random."""
    label = Label(random)
    kind = random.choice(KINDS)
    kind(label)
    if kind is not jacket and random.random() < 0.5:
        order = list(range(len(label.rows)))
        random.shuffle(order)
        label.rows = [label.rows[at] for at in order]
    return kind.__name__, label
