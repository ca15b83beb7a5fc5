"""The machine, as far as it bears on speed; and what one of its cores can do, for the roofline."""
import os
import platform
import time

import numpy as np


def told():
    """In general words: no maker and no model."""
    flags = ""
    try:
        with open("/proc/cpuinfo") as file:
            flags = next((line for line in file if line.startswith(("flags", "Features"))), "")
    except OSError:
        pass
    sets = [("avx512f", "AVX-512"), ("avx2", "AVX2"), ("asimd", "NEON"), ("sse2", "SSE2")]
    taken = next((name for flag, name in sets if f" {flag}" in flags), "no known vector instructions")
    cores, load = len(os.sched_getaffinity(0)), os.getloadavg()[0]
    busy = "nothing else ran" if load < 0.5 else f"other work ran beside it (load {load:.1f} as it began)"
    return f"{cores} core{'s' if cores > 1 else ''} of {platform.machine()} with {taken}; {busy}"


def least(work, times=9):
    """The least time that something takes, in seconds: what the machine can do when nothing is in its way."""
    taken = []
    for _ in range(times):
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return min(taken)


def peak_operations():
    """Products and sums a second that one core does at best: multiplying large matrices by a library made for it."""
    n = 1200
    a, b = np.random.default_rng(1).random((2, n, n))
    return 2 * n**3 / least(lambda: a @ b)


def memory(read_bytes, written_bytes):
    """Bytes a second that one core reads and writes, of so many each."""
    source, target = np.ones(max(read_bytes // 8, 1)), np.ones(max(written_bytes // 8, 1))
    return read_bytes / least(lambda: source.sum()), written_bytes / least(lambda: target.fill(2.0))
