"""What the peer works out of a house: draws of the whole, and the rates of each pair."""
import numpy as np

import link
import wiring

STEP = 2.5  # MHz between frequencies: echoes over up to 80 m more of cable
USUAL_PORT = {"2.5": "2.5 Gb/s"}


def frequencies(step=STEP):
    return np.arange(link.LOWEST, link.HIGHEST + step / 2, step)


def worked_out(house, priors, dice, draws, step=STEP):
    """The rates of a house over `draws` throws of everything: (its rates, whether every amplifier has a by-pass in each)."""
    f = frequencies(step)
    drawn = wiring.Wiring(house, priors, dice, draws, f)
    adapters = [part.said["adapter"] for part in drawn.adapters]
    versions = [adapter.get("version", house.version) for adapter in adapters]
    ports = [adapter.get("ethernet", USUAL_PORT.get(house.version, "1 Gb/s")) for adapter in adapters]
    channels = len(link.placements(house.version)[0])
    nodes = link.Nodes(priors, dice, draws, len(adapters), channels)
    return link.Rates(drawn.solved(), f, nodes, versions, ports, house.version)
