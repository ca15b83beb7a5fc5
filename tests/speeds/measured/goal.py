"""A goal, and what was measured of it; a program run with its time and memory told."""
import os
import signal
import subprocess
import tempfile
from dataclasses import dataclass


@dataclass
class Row:
    """One goal: reached at `goal` or more where `at_least`, else at `goal` or less."""

    what: str
    wish: str
    goal: float
    figure: float | None
    unit: str
    at_least: bool = False
    # What is said behind the figure, or in its place where there is none.
    instead: str = ""


def release(name):
    """A program that tests/speed built."""
    return os.path.join(os.environ["CARGO_TARGET_DIR"], "release", name)


def run(*command, seconds=600, one_core=True):
    """What a program prints, and its peak of memory in MB; nothing where it takes longer than so many seconds."""
    command = ["taskset", "-c", str(min(os.sched_getaffinity(0))), *command] if one_core else list(command)
    with tempfile.TemporaryFile("w+") as out:
        child = subprocess.Popen(command, stdout=out, stderr=subprocess.STDOUT, text=True)
        # A wait that times out leaves the child to be waited for, with what it took.
        signal.signal(signal.SIGALRM, lambda *_: child.kill())
        signal.alarm(seconds)
        _, status, used = os.wait4(child.pid, 0)
        signal.alarm(0)
        child.returncode = os.waitstatus_to_exitcode(status)
        out.seek(0)
        said = out.read()
    if child.returncode == -signal.SIGKILL:
        return None, used.ru_maxrss / 1024
    if child.returncode:
        raise SystemExit(f"{' '.join(command)} failed:\n{said}")
    return said, used.ru_maxrss / 1024
