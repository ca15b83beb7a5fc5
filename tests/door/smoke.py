"""The door from Python: the first steps of a survey, a refused deed, a photo slot, a drawing, a file handed on and taken
in on another phone, the app put aside, ended and opened again. Everything by the bindings, as Kotlin and Swift have it.

    python3 tests/door/smoke.py FOLDER    where FOLDER holds door.py and the library
"""
import os
import sys
import tempfile
import threading

sys.path.insert(0, sys.argv[1])
import door as d  # noqa: E402


def settings(home, language="en-GB", unit=d.FirstLength.METRES):
    return d.Settings(home=home, language=language, first_length=unit)


class Watcher(d.DrawAgain):
    def __init__(self):
        self.told = threading.Event()

    def draw_again(self):
        self.told.set()


class Hand:
    """Touches only what stands on the screen, and waits for long work by being told of it."""

    def __init__(self, home, token=None, language="en-GB"):
        self.watcher = Watcher()
        self.door = d.Door(settings(home, language), token, self.watcher)
        self.screen = self.settled(self.door.screen())

    def settled(self, screen):
        while self.door.work() is not None:
            assert self.watcher.told.wait(30), "nobody said that long work is over"
            self.watcher.told.clear()
            screen = self.door.screen()
        return self.door.screen()

    def keys(self):
        found = []
        for block in self.screen.blocks:
            block = block.block
            found += [block.key] if getattr(block, "key", None) else []
            for row in getattr(block, "rows", []):
                found += [row.key] if row.key else []
        return found

    def act(self, deed):
        self.screen = self.settled(self.door.act(deed))
        return self.screen

    def press(self, key):
        assert key in self.keys(), (key, self.keys(), self.screen.name)
        return self.act(d.Deed.PRESS(key=key))


def main():
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as two:
        hand = Hand(one)
        assert hand.screen.name == "surveys" and not hand.screen.back, hand.screen
        hand.press("new")
        hand.act(d.Deed.WRITE(key="name", words="Mill House"))
        before = hand.screen
        # What the screen does not offer changes nothing.
        assert hand.act(d.Deed.PRESS(key="no such key")) == before
        # The app is ended while somebody types.
        token = hand.door.token()
        del hand.door
        hand = Hand(one, token)
        assert hand.screen.name == "new-survey" and hand.screen.place == before.place, hand.screen
        assert [b.block.text for b in hand.screen.blocks if b.is_WRITING()] == ["Mill House"], hand.screen
        hand.press("make")
        assert hand.screen.name == "ask-whose", hand.screen.name
        choice = next(b.block for b in hand.screen.blocks if b.is_CHOICE())
        assert choice.options and all(option.aloud.label for option in choice.options)
        hand.act(d.Deed.PICK(key=choice.key, picked=[choice.options[0].key]))
        token = hand.door.suspend()
        shown = hand.settled(hand.door.resume())
        assert shown.place == hand.screen.place
        del hand.door
        hand = Hand(one, token)
        assert hand.screen.place == shown.place, (hand.screen, shown)
        hand.press("overview") if "overview" in hand.keys() else hand.act(d.Deed.BACK())
        # An error is said in words, or is for the log.
        try:
            hand.door.small_photo("no such photo")
            raise AssertionError("a photo that is not there")
        except d.DoorError.Trouble as error:
            assert error.said, error
        # Handed to somebody else.
        for _ in range(10):
            keys = hand.keys()
            if hand.screen.name != "share-pack":
                hand.press(next(key for key in ("pack", "more", "overview") if key in keys))
        assert hand.screen.name == "share-pack", hand.screen.name
        press = next(b.block for b in hand.screen.blocks if b.is_PRESS() and b.block.need)
        assert press.need.is_FILE_TO_SHARE(), press
        file = os.path.join(one, press.need.name)
        hand.act(d.Deed.FILE(key=press.key, file=file))
        assert os.path.getsize(file) > 100
        other = Hand(two, language="en-US")
        other.screen = other.settled(other.door.receive(file))
        assert other.screen.name == "sent", other.screen.name
        other.press("take")
        assert other.screen.name == "overview" and "Mill House" in other.screen.trail + [other.screen.title]
        # One that is no such file is a notice, and no error.
        broken = os.path.join(two, "broken.lwk")
        with open(broken, "wb") as out:
            out.write(b"PK\x03\x04 and nothing else")
        other.screen = other.settled(other.door.receive(broken))
        assert [n.role for n in other.screen.notices] == [d.NoticeRole.PROBLEM], other.screen.notices
        # The bar of a room, as marks.
        bar = d.RowBar(scale_end=2500.0, low=400.0, likely=900.0, high=1400.0, wish=1000.0, measured=None, capped=False,
                       after=None, words="400 to 1400 Mb/s")
        assert len(d.bar_drawn(bar).marks) > 3
        # Where what reads print is to lie: looked at only once a photo is.
        assert other.door.read_print_with(os.path.join(two, "no-model")) == other.door.screen()
        turned = other.door.settle(settings(two, language="ar-XB"))
        assert turned.right_to_left
    print("the door from Python: passed")


main()
