"""PHY and MAC rates at equal loss: our link and the peer's, all guesses at their likely values."""
import json
import subprocess

import numpy as np

import link

MOST_PHY, MOST_MAC = 0.02, 0.05
LOSSES = (0, 20, 35, 45, 50, 55, 60, 65, 70, 75, 80)


def paths(f):
    said = {f"flat {db} dB": np.full(len(f), 10 ** (-db / 10)) for db in LOSSES}
    # Two waves, the second 4 dB below the first and 12 m of foam cable longer: notches 20 MHz apart; 40 and 58 dB for the first.
    turn = np.exp(-2j * np.pi * f * 12 / (0.83 * 299.792458))
    for db in (40, 58):
        said[f"rippled from {db} dB"] = np.abs(10 ** (-db / 20) * (1 + 10 ** (-4 / 20) * turn)) ** 2
    return said


def compared(flat_rates, priors):
    """Each as (path, version, nodes, our PHY, PHY here, our MAC, MAC here)."""
    f = np.arange(link.LOWEST, link.HIGHEST + 0.1, 0.5)
    made = paths(f)
    asked = json.dumps({"mhz": f.tolist(), "paths": {name: power.tolist() for name, power in made.items()}})
    said = json.loads(subprocess.run([flat_rates], input=asked, check=True, capture_output=True, text=True).stdout)
    likely = priors.at_likely()
    rows = []
    for ours in said:
        version, nodes = ours["version"], ours["nodes"]
        thrown = link.Nodes(likely, np.random.default_rng(0), 1, 2, len(ours["centres"]))
        s = np.zeros((1, len(f), 2, 2))
        s[:, :, 0, 1] = s[:, :, 1, 0] = np.sqrt(made[ours["path"]])
        rates = link.Rates(s, f, thrown, [version] * 2, ["2.5 Gb/s"] * 2, version)
        rates.places = [ours["centres"]]
        phy = rates.phy(1, "down", 0)
        rows.append((ours["path"], version, nodes, ours["phy"], phy[0], ours["mac"], thrown.net(phy, version, nodes, len(ours["centres"]))[0]))
    return rows


def check(flat_rates, priors):
    rows = compared(flat_rates, priors)
    faults = []
    print("PHY and MAC rate at equal loss, all at likely, Mb/s: ours, peer's")
    for path, version, nodes, phy, peer_phy, mac, peer_mac in rows:
        off = abs(phy - peer_phy) / max(phy, peer_phy, 1.0)
        off_mac = abs(mac - peer_mac) / max(mac, peer_mac, 1.0)
        bad = off > MOST_PHY and abs(phy - peer_phy) > 1.0
        bad_mac = off_mac > MOST_MAC and abs(mac - peer_mac) > 1.0
        print(f"  {path:20} {version:11} {nodes} nodes  PHY {phy:7.1f} {peer_phy:7.1f}  MAC {mac:7.1f} {peer_mac:7.1f}{'  <-' if bad or bad_mac else ''}")
        if bad or bad_mac:
            faults.append(f"{path}, {version}, {nodes} nodes: PHY {phy:.1f} and {peer_phy:.1f}, MAC {mac:.1f} and {peer_mac:.1f}")
    return faults
