"""Reads what the acoustic model is made of: the network in `am/final.mdl` (Kaldi, binary nnet3) and the
i-vector extractor in `ivector/`. Every block of numbers keeps its place in the file, so that a changed
network is the old file with other numbers in it."""
import os
import struct

import numpy as np

INTEGERS = {"<Dim>", "<BlockDim>", "<RankIn>", "<RankOut>", "<UpdatePeriod>", "<TimePeriod>"}
WEIGHTS = ("<LinearParams>", "<BiasParams>", "<Params>")
PRE_TRAINING_BRANCH = ("prefinal-xent", "output-xent")  # not part of what the recogniser evaluates


class Reader:
    """Kaldi's binary format: tokens that end in a blank, numbers and matrices with their kind before them."""

    def __init__(self, data, at=0):
        self.data, self.at = data, at

    def token(self):
        end = self.data.index(b" ", self.at)
        text = self.data[self.at : end].decode("latin1")
        self.at = end + 1
        return text

    def expect(self, token):
        found = self.token()
        if found != token:
            raise ValueError(f"expected {token} before byte {self.at}, found {found}")

    def _number(self, code, kind):
        if self.data[self.at] != code:
            raise ValueError(f"expected a number of {code} bytes at {self.at}")
        value = struct.unpack_from(kind, self.data, self.at + 1)[0]
        self.at += 1 + code
        return value

    def int32(self):
        return self._number(4, "<i")

    def real(self):
        return self._number(8, "<d") if self.data[self.at] == 8 else self._number(4, "<f")

    def ints(self):
        count = self.int32()
        self.at += 4 * count
        return list(struct.unpack_from(f"<{count}i", self.data, self.at - 4 * count))

    def array(self):
        """A matrix, a vector or a packed lower triangle, with the byte that it begins at."""
        kind = self.token()
        number = np.dtype("<f4" if kind[0] == "F" else "<f8")
        if kind[1:] == "M":
            shape = (self.int32(), self.int32())
        elif kind[1:] == "V":
            shape = (self.int32(),)
        elif kind[1:] == "P":
            rows = self.int32()
            shape = (rows * (rows + 1) // 2,)
        else:
            raise ValueError(f"expected a matrix at {self.at}, found {kind}")
        count, begin = int(np.prod(shape)), self.at
        self.at += count * number.itemsize
        return np.frombuffer(self.data, number, count, begin).reshape(shape), begin


class AcousticModel:
    """`final.mdl`: which outputs are silence, and the components of the network."""

    def __init__(self, path):
        with open(path, "rb") as file:
            self.data = file.read()
        reader = Reader(self.data, 2)
        self.tuples = self._transitions(reader)
        self.outputs_of_phones = {}
        for phone, forward, loop in self.tuples:
            self.outputs_of_phones.setdefault(phone, set()).update({forward, loop})
        reader.expect("<Nnet3>")
        reader.at = self.data.index(b"\n\n", reader.at) + 2
        reader.expect("<NumComponents>")
        self.components = {}
        for _ in range(reader.int32()):
            reader.expect("<ComponentName>")
            name = reader.token()
            self.components[name] = self._component(reader)
        reader.expect("</Nnet3>")
        reader.expect("<LeftContext>")
        self.left = reader.int32()
        reader.expect("<RightContext>")
        self.right = reader.int32()

    @staticmethod
    def _component(reader):
        end = "</" + reader.token()[1:]
        fields = {}
        while True:
            token = reader.token()
            if token == end:
                return fields
            head = reader.data[reader.at : reader.at + 3]
            if token == "<TimeOffsets>":
                fields[token] = reader.ints()
            elif token in ("<RankInOut>", "<AlphaInOut>"):
                read = reader.int32 if token == "<RankInOut>" else reader.real
                fields[token] = (read(), read())
            elif head[:1] == b"<":
                fields[token] = True
            elif head in (b"FM ", b"FV ", b"DM ", b"DV "):
                fields[token] = reader.array()
            elif head[:1] in b"TF":
                fields[token] = head[:1] == b"T"
                reader.at += 1
            else:
                fields[token] = reader.int32() if token in INTEGERS else reader.real()

    @staticmethod
    def _transitions(reader):
        """Of each transition tuple: its phone and the outputs of the network for entering and staying."""
        reader.expect("<TransitionModel>")
        reader.expect("<Topology>")
        reader.ints()
        reader.ints()
        count = reader.int32()
        split = count == -1
        for _ in range(reader.int32() if split else count):
            for _ in range(reader.int32()):
                reader.int32()
                if split:
                    reader.int32()
                for _ in range(reader.int32()):
                    reader.int32()
                    reader.real()
        reader.expect("</Topology>")
        kind = reader.token()
        tuples = []
        for _ in range(reader.int32()):
            phone, _, forward = (reader.int32() for _ in range(3))
            tuples.append((phone, forward, reader.int32() if kind == "<Tuples>" else forward))
        reader.expect("</" + kind[1:])
        reader.expect("<LogProbs>")
        reader.array()
        reader.expect("</LogProbs>")
        reader.expect("</TransitionModel>")
        return tuples

    def weights(self):
        """Every block that is trained: (component, field) to array; those of no use left out."""
        return {
            (name, field): fields[field][0]
            for name, fields in self.components.items()
            for field in WEIGHTS
            if field in fields and fields[field][0].size and not name.startswith(PRE_TRAINING_BRANCH)
        }

    def begin(self, name, field):
        """The byte of the file at which a block's numbers begin."""
        return self.components[name][field][1]

    def normaliser(self, name):
        """Mean and scale of a batch norm, as it is used in recognition."""
        fields = self.components[name]
        variance = np.maximum(fields["<StatsVar>"][0].astype("f8"), 0)
        scale = fields["<TargetRms>"] / np.sqrt(variance + fields["<Epsilon>"])
        return fields["<StatsMean>"][0].astype("f4"), scale.astype("f4")

    def with_weights(self, changed):
        """The file's bytes with other numbers in the blocks named."""
        data = bytearray(self.data)
        for (name, field), new in changed.items():
            old, begin = self.components[name][field]
            new = np.ascontiguousarray(new, old.dtype)
            if new.shape != old.shape or not np.isfinite(new).all():
                raise ValueError(f"expected finite numbers of shape {old.shape} for {name} {field}")
            data[begin : begin + new.nbytes] = new.tobytes()
        return bytes(data)


class IvectorExtractor:
    """The arrays of `ivector/`: Kaldi's online extractor with a diagonal mixture model."""

    def __init__(self, folder):
        def reader(name):
            with open(os.path.join(folder, name), "rb") as file:
                return Reader(file.read(), 2)

        self.lda = reader("final.mat").array()[0].astype("f8")
        with open(os.path.join(folder, "global_cmvn.stats"), encoding="ascii") as file:
            rows = [line.replace("[", "").replace("]", "").split() for line in file]
        stats = np.array([row for row in rows if row], "f8")
        self.mean = stats[0, :-1] / stats[0, -1]
        mixture = reader("final.dubm")
        mixture.expect("<DiagGMM>")
        mixture.expect("<GCONSTS>")
        self.constants = mixture.array()[0]
        mixture.expect("<WEIGHTS>")
        mixture.array()
        mixture.expect("<MEANS_INVVARS>")
        self.means_by_variance = mixture.array()[0]
        mixture.expect("<INV_VARS>")
        self.precisions = mixture.array()[0]
        extractor = reader("final.ie")
        extractor.expect("<IvectorExtractor>")
        extractor.expect("<w>")
        extractor.array()
        extractor.expect("<w_vec>")
        extractor.array()
        extractor.expect("<M>")
        factors = np.array([extractor.array()[0] for _ in range(extractor.int32())])
        extractor.expect("<SigmaInv>")
        size = factors.shape[1]
        lower = np.tril_indices(size)
        precision = np.zeros((len(factors), size, size))
        for each in precision:
            each[lower] = extractor.array()[0]
            each += np.tril(each, -1).T
        extractor.expect("<IvectorOffset>")
        self.offset = extractor.real()
        self.linear = precision @ factors
        self.quadratic = np.swapaxes(factors, 1, 2) @ self.linear
