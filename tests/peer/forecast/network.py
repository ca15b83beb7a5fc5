"""Joins parts by scikit-rf's `connect_s`, and checks that by its `Circuit` on a few frequencies."""
import numpy as np
import skrf
from skrf.circuit import Circuit
from skrf.network import connect_s


class Piece:
    """A multiport whose ports have names. Its matrix holds draws and frequencies as one axis."""

    def __init__(self, s, ports):
        self.s, self.ports = s, list(ports)

    def joined(self, port, other, its):
        k, l = self.ports.index(port), other.ports.index(its)
        mine = self.ports[:k] + self.ports[k + 1 :]
        its_rest = other.ports[:l] + other.ports[l + 1 :]
        s = connect_s(self.s, k, other.s, l)
        if len(other.ports) == 2 and len(self.ports) > 2:
            # connect_s puts the far port of a two-port where the joined port was.
            return Piece(s, self.ports[:k] + its_rest + self.ports[k + 1 :])
        return Piece(s, mine + its_rest)

    def named(self, names):
        return Piece(self.s, [names.get(port, port) for port in self.ports])

    def between(self, ports):
        at = np.array([self.ports.index(port) for port in ports])
        return self.s[:, at[:, None], at[None, :]]


class Network:
    """Parts of a house, (draw, frequency, port, port) each, and which ports are joined."""

    def __init__(self, draws, points):
        self.draws, self.points = draws, points
        self.pieces, self.joints = {}, []

    def add(self, name, s):
        shape = (self.draws, self.points, *s.shape[-2:])
        self.pieces[name] = np.broadcast_to(s, shape).reshape(-1, *s.shape[-2:])
        return name

    def join(self, a, i, b, j):
        """Port `i` of `a`, already part of the tree, to port `j` of `b`."""
        self.joints.append((a, i, b, j))

    def solved(self, root, wanted):
        """The matrix between the wanted ports ((name, port) each): (draw, frequency, wanted, wanted)."""
        below = {}
        for a, i, b, j in self.joints:
            below.setdefault(a, []).append((i, b, j))

        def branch(name):
            piece = Piece(self.pieces[name], [(name, port) for port in range(self.pieces[name].shape[1])])
            for i, b, j in below.get(name, []):
                piece = piece.joined((name, i), branch(b), (b, j))
            return piece

        s = branch(root).between(wanted)
        return s.reshape(self.draws, self.points, len(wanted), len(wanted))

    def by_circuit(self, wanted, samples):
        """The same of a few (draw, frequency) samples by scikit-rf's Circuit, whose algorithm is another."""
        axis = skrf.Frequency.from_f(np.arange(1, len(samples) + 1) * 1e9, unit="hz")
        parts = {name: skrf.Network(frequency=axis, s=s[samples], z0=75, name=name) for name, s in self.pieces.items()}
        nodes = [[(parts[a], i), (parts[b], j)] for a, i, b, j in self.joints]
        for number, (name, port) in enumerate(wanted):
            nodes.append([(Circuit.Port(axis, f"port{number}", z0=75), 0), (parts[name], port)])
        return Circuit(nodes).s_external
