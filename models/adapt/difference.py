#!/usr/bin/env python3
"""Makes the file of differences that the product ships, and puts one into a model file.

The file begins with lines of text, `key value`:

    tiptoe-differences 1
    stock SHA-256 of the final.mdl that it belongs to
    adapted SHA-256 of the final.mdl that comes of it
    block BEGIN ROWS COLUMNS NAME FIELD     (for each block)
    (an empty line)

and, deflated, for each block in this order a scale for each row (float32, little-endian) and the
differences as bytes with a sign, row by row. BEGIN is the byte of final.mdl at which the block's
float32 numbers begin; a new number is the old one + scale * difference, each rounded to float32.

usage: difference.py make STOCK.mdl OUT SHARE RUN.npz...     (the mean of the runs, times SHARE)
       difference.py apply STOCK.mdl DIFFERENCES OUT.mdl
"""
import hashlib
import sys
import zlib

import numpy as np

from kaldi import AcousticModel

MAGIC = "tiptoe-differences 1"


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def quantised(difference):
    """A scale for each row, and whole numbers from -127 to 127."""
    rows = difference.reshape(len(difference), -1) if difference.ndim > 1 else difference.reshape(1, -1)
    scale = (np.abs(rows).max(1) / 127).astype("<f4")
    whole = np.rint(rows / np.where(scale > 0, scale, 1)[:, None]).clip(-127, 127).astype("i1")
    return scale, whole


def changed(old, scale, whole):
    return (old.reshape(whole.shape) + (scale[:, None] * whole.astype("<f4"))).astype("<f4")


def make(stock, out, share, runs):
    model = AcousticModel(stock)
    files = [np.load(run) for run in runs]
    lines, body, new = [], [], {}
    for (name, field), old in model.weights().items():
        mean = np.mean([find(file, name, field).astype("f4") for file in files], 0) * np.float32(share)
        scale, whole = quantised(mean)
        new[name, field] = changed(old, scale, whole).reshape(old.shape)
        begin = model.begin(name, field)
        lines.append(f"block {begin} {whole.shape[0]} {whole.shape[1]} {name} {field}")
        body += [scale.tobytes(), whole.tobytes()]
    head = [MAGIC, f"stock {sha256(model.data)}", f"adapted {sha256(model.with_weights(new))}"]
    with open(out, "wb") as file:
        file.write(("\n".join(head + lines) + "\n\n").encode("ascii"))
        file.write(zlib.compress(b"".join(body), 9))


def find(file, name, field):
    """A run's block; those of older runs end in W or b."""
    key = f"{name}|{field}"
    return file[key if key in file.files else f"{name}|{'b' if field == '<BiasParams>' else 'W'}"]


def apply(stock, differences, out):
    with open(stock, "rb") as file:
        data = bytearray(file.read())
    with open(differences, "rb") as file:
        head, _, body = file.read().partition(b"\n\n")
    lines = head.decode("ascii").split("\n")
    keys = dict(line.split(" ", 1) for line in lines[1:3])
    if lines[0] != MAGIC or keys["stock"] != sha256(data):
        raise ValueError(f"expected the model with SHA-256 {keys['stock']}, found {sha256(data)}")
    body, at = zlib.decompress(body), 0
    for line in lines[3:]:
        begin, rows, columns = map(int, line.split()[1:4])
        scale = np.frombuffer(body, "<f4", rows, at)
        whole = np.frombuffer(body, "i1", rows * columns, at + 4 * rows).reshape(rows, columns)
        at += rows * (4 + columns)
        old = np.frombuffer(bytes(data[begin : begin + 4 * rows * columns]), "<f4")
        data[begin : begin + 4 * rows * columns] = changed(old, scale, whole).tobytes()
    if keys["adapted"] != sha256(data):
        raise ValueError(f"expected to make SHA-256 {keys['adapted']}, made {sha256(data)}")
    with open(out, "wb") as file:
        file.write(data)


if __name__ == "__main__":
    if sys.argv[1] == "make":
        make(sys.argv[2], sys.argv[3], float(sys.argv[4]), sys.argv[5:])
    else:
        apply(*sys.argv[2:5])
