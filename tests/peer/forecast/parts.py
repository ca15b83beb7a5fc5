"""Scattering matrices of parts at 75 ohm, many draws at once: arrays of (draw, frequency, port, port).

Written from shared textbook facts: transmission lines, matched pads, lossless mismatches (Pozar, "Microwave Engineering").
Frequencies `f` are in MHz; what is drawn comes as (draw, 1) and is spread over the frequencies by numpy.
"""
import numpy as np

REFERENCE = 75.0
LIGHT = 299.792458  # m/us, so that MHz times metres over it is a number of waves
TRIES = 12


def amplitude(db):
    return 10.0 ** (-np.asarray(db) / 20.0)


def two_port(s11, s21, s22, s12=None):
    s12 = s21 if s12 is None else s12
    s11, s12, s21, s22 = np.broadcast_arrays(s11, s12, s21, s22)
    return np.stack([np.stack([s11, s12], -1), np.stack([s21, s22], -1)], -2).astype(complex)


def one_port(reflection):
    return np.asarray(reflection, dtype=complex)[..., None, None]


def phases(dice, *shape):
    return np.exp(2j * np.pi * dice.random(shape))


def line(f, db, metres, velocity, ohm):
    """A uniform line that loses `db` over its length, of `ohm` between 75-ohm ports."""
    e = amplitude(db) * np.exp(-2j * np.pi * f * metres / (LIGHT * velocity))
    r = (ohm - REFERENCE) / (ohm + REFERENCE)
    bottom = 1 - r * r * e * e
    return two_port(r * (1 - e * e) / bottom, (1 - r * r) * e / bottom, r * (1 - e * e) / bottom)


def mismatch(return_loss_db, phase, db=0.0):
    """A lossless step that sends back `return_loss_db`, with a matched pad of `db` behind it."""
    r, pad = amplitude(return_loss_db), amplitude(db)
    return two_port(r * phase, np.sqrt(1 - r * r) * pad, -r * np.conj(phase) * pad * pad)


def stop(db, kept_db, delay_ns, f):
    """A filter in its stop band: `db` through, of the rest all comes back but for `kept_db`."""
    t = amplitude(db)
    r = np.sqrt(np.maximum(10 ** (-np.asarray(kept_db) / 10) - t * t, 0))
    turn = np.exp(-2j * np.pi * f * delay_ns / 1000)
    # A lossless symmetric two-port sends back and through in quadrature.
    return two_port(r * turn, 1j * t * turn, r * turn)


def core(db_down, db_up, return_loss_db, delay_ns, f, phase_in, phase_out):
    """An amplifier's core in the MoCA band: what gets through, each way, and a poor match at both ends."""
    turn = np.exp(-2j * np.pi * f * delay_ns / 1000)
    r = amplitude(return_loss_db)
    # Reflections of a part that passes much cannot be as large as the label says: at most what power is left.
    r = np.minimum(r, np.sqrt(np.maximum(1 - np.maximum(amplitude(db_down), amplitude(db_up)) ** 2, 0)) * 0.999)
    return two_port(r * phase_in, amplitude(db_down) * turn, r * phase_out, amplitude(db_up) * turn)


def divider(leg_db, between_db, return_db, delays_ns, f, dice):
    """A splitter or tap. `leg_db` (draw, frequency, leg); `between_db` (draw, frequency, leg, leg); `return_db` (draw, frequency,
    port). Phases of echoes and of what passes between legs are thrown until the whole gives out no more power than it takes in;
    where that does not come about, echoes are shrunk until it does.
    """
    draws, points, legs = leg_db.shape
    main = np.zeros((draws, points, legs + 1, legs + 1), dtype=complex)
    main[:, :, 0, 1:] = main[:, :, 1:, 0] = amplitude(leg_db)
    rest = np.zeros_like(main)
    rest[:, :, 1:, 1:] = amplitude(between_db)
    ports = np.arange(legs + 1)
    rest[:, :, ports, ports] = amplitude(return_db)
    few = slice(None, None, max(points // 6, 1))
    turn = symmetric_phases(dice, draws, legs + 1)
    over = np.flatnonzero(strongest(main[:, few] + turn * rest[:, few]) > 1)
    for _ in range(TRIES):
        if not len(over):
            break
        turn[over] = symmetric_phases(dice, len(over), legs + 1)
        over = over[strongest(main[over, few] + turn[over] * rest[over, few]) > 1]
    rest = turn * rest
    share = passive_share(main[:, few], rest[:, few])
    delay = np.exp(-2j * np.pi * f[None, :, None] * delays_ns[:, None, :] / 1000)
    return (main + share[:, None, None, None] * rest) * delay[..., :, None] * delay[..., None, :]


def symmetric_phases(dice, draws, ports):
    """What goes from one port to another turns the same both ways."""
    turn = phases(dice, draws, 1, ports, ports)
    upper = np.triu(turn)
    return upper + np.triu(turn, 1).swapaxes(-1, -2)


def passive_share(main, rest):
    """How much of `rest` each draw can keep."""
    share = np.ones(len(main))
    over = np.flatnonzero(strongest(main + rest) > 1)
    low, high = np.zeros(len(over)), np.ones(len(over))
    for _ in range(6 if len(over) else 0):
        half = (low + high) / 2
        above = strongest(main[over] + half[:, None, None, None] * rest[over]) > 1
        low, high = np.where(above, low, half), np.where(above, half, high)
    share[over] = low
    return share


def strongest(s):
    return np.linalg.norm(s, ord=2, axis=(-2, -1)).max(axis=1)
