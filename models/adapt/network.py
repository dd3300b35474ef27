"""Features, i-vectors and network of the acoustic model in PyTorch, for batches of equally long sound."""
import numpy as np
import torch
import torch.nn.functional as F

FRAME, SHIFT = 400, 160  # samples at 16 kHz
EVERY = 3  # frames an output
BLOCK = 10  # frames between two i-vectors


class Features(torch.nn.Module):
    """40 cepstra as `conf/mfcc.conf` says, without dither. Sound in the range of 16-bit numbers."""

    def __init__(self, bands=40, low=20.0, high=7600.0, lifter=22.0):
        super().__init__()
        mel = lambda hertz: 1127.0 * np.log(1.0 + hertz / 700.0)
        width = (mel(high) - mel(low)) / (bands + 1)
        bins = mel(np.arange(256) * 16000 / 512)[:, None]
        left = mel(low) + np.arange(bands)[None] * width
        rise, fall = (bins - left) / width, (left + 2 * width - bins) / width
        bank = np.clip(np.minimum(rise, fall), 0, None)
        k = np.arange(bands)
        cosine = np.sqrt(2.0 / bands) * np.cos(np.pi / bands * np.outer(k, k + 0.5))
        cosine[0] = np.sqrt(1.0 / bands)
        cosine *= (1 + 0.5 * lifter * np.sin(np.pi * k / lifter))[:, None]
        window = (0.5 - 0.5 * np.cos(2 * np.pi / (FRAME - 1) * np.arange(FRAME))) ** 0.85
        for name, value in (("bank", bank), ("cosine", cosine.T), ("window", window)):
            self.register_buffer(name, torch.tensor(np.array(value), dtype=torch.float32))

    def forward(self, sound):
        frames = sound.unfold(1, FRAME, SHIFT)
        frames = frames - frames.mean(2, keepdim=True)
        before = torch.cat([frames[:, :, :1], frames[:, :, :-1]], 2)
        spectrum = torch.fft.rfft((frames - 0.97 * before) * self.window, 512)[:, :, :256]
        power = spectrum.real**2 + spectrum.imag**2
        return torch.log((power @ self.bank).clamp(min=1.1920929e-07)) @ self.cosine


class Ivectors(torch.nn.Module):
    """Kaldi's online i-vectors: what is known of the voice from the frames so far."""

    KEPT, SMALLEST, SCALE, MOST = 5, 0.025, 0.1, 100.0
    WINDOW, GLOBAL = 600, 200

    def __init__(self, extractor):
        super().__init__()
        self.offset = float(extractor.offset)
        groups, size, dim = extractor.linear.shape
        self.groups, self.size, self.dim = groups, size, dim
        for name, value in (
            ("transform", extractor.lda[:, :-1].T),
            ("shift", extractor.lda[:, -1]),
            ("mean", extractor.mean),
            ("constants", extractor.constants),
            ("means", extractor.means_by_variance.T),
            ("precisions", extractor.precisions.T),
            ("linear", extractor.linear.reshape(groups * size, dim)),
            ("quadratic", extractor.quadratic.reshape(groups, dim * dim)),
        ):
            self.register_buffer(name, torch.tensor(np.array(value), dtype=torch.float32))

    def splice(self, x):
        padded = F.pad(x.transpose(1, 2), (3, 3), mode="replicate").transpose(1, 2)
        return padded.unfold(1, 7, 1).transpose(2, 3).flatten(2) @ self.transform + self.shift

    def normalise(self, x):
        total = torch.cumsum(x.double(), 1)
        window = total.clone()
        window[:, self.WINDOW :] -= total[:, : -self.WINDOW]
        n = torch.arange(1, x.shape[1] + 1, device=x.device).clamp(max=self.WINDOW).double()
        prior = (self.WINDOW - n).clamp(0, self.GLOBAL)[:, None]
        return (x - (window + prior * self.mean) / (n[:, None] + prior)).float()

    def posteriors(self, x):
        y = self.splice(self.normalise(x))
        score = self.constants + y @ self.means - 0.5 * (y**2) @ self.precisions
        best, index = score.topk(self.KEPT, 2)
        p = torch.softmax(best, 2)
        p = torch.where(p >= self.SMALLEST, p, torch.zeros_like(p))
        return torch.zeros_like(score).scatter(2, index, p / p.sum(2, keepdim=True))

    def forward(self, x, weights, whole):
        """x: cepstra; weights: of each frame, 0.001 for silence; whole: of each example, whether the
        voice is known from the beginning. Gives an i-vector for each frame."""
        batch, length, _ = x.shape
        pad = -length % BLOCK
        weight = F.pad(weights * self.SCALE, (0, pad)).unflatten(1, (-1, BLOCK))
        p = F.pad(self.posteriors(x), (0, 0, 0, pad)).unflatten(1, (-1, BLOCK)) * weight[..., None]
        raw = F.pad(self.splice(x), (0, 0, 0, pad)).unflatten(1, (-1, BLOCK))
        first = torch.einsum("bktg,bktd->bkgd", p, raw).flatten(2) @ self.linear
        first, count = first.cumsum(1), weight.sum(2).cumsum(1)
        second = (p.sum(2).cumsum(1) @ self.quadratic).unflatten(2, (self.dim, self.dim))
        last = whole[:, None, None]
        first = torch.where(last, first[:, -1:], first)
        count = torch.where(whole[:, None], count[:, -1:], count)
        second = torch.where(last[..., None], second[:, -1:], second)
        prior = count.clamp(min=self.MOST) / self.MOST
        second = second + prior[..., None, None] * torch.eye(self.dim, device=x.device)
        first = first.clone()
        first[..., 0] += prior * self.offset
        found = torch.linalg.solve(second, first.unsqueeze(-1)).squeeze(-1)
        found = torch.cat([found[..., :1] - self.offset, found[..., 1:]], 2)
        return found.repeat_interleave(BLOCK, 1)[:, :length]


class Network(torch.nn.Module):
    """The network up to the output of the recogniser, batch norms fixed as they are in recognition."""

    LAYERS = range(2, 13)

    def __init__(self, model):
        super().__init__()
        self.left, self.right = model.left, model.right
        self.offsets = {}
        self.names = {}
        for key, value in model.weights().items():
            name = "_".join(key).replace("-", "_").replace(".", "_").strip("<>").replace("<", "")
            self.names[name] = key
            self.register_parameter(name, torch.nn.Parameter(torch.tensor(np.array(value))))
        self.by_key = {key: name for name, key in self.names.items()}
        for k in self.LAYERS:
            for part in ("linear", "affine"):
                name = f"tdnnf{k}.{part}"
                self.offsets[name] = model.components[name]["<TimeOffsets>"]
        for name, fields in model.components.items():
            if "<StatsMean>" in fields and "xent" not in name and "<TargetRms>" in fields:
                for part, value in zip(("mean", "scale"), model.normaliser(name)):
                    self.register_buffer(self._buffer(name, part), torch.tensor(value))

    @staticmethod
    def _buffer(name, part):
        return f"norm_{part}_" + name.replace(".", "_").replace("-", "_")

    def _norm(self, x, name):
        mean, scale = (getattr(self, self._buffer(name, part)) for part in ("mean", "scale"))
        return (x - mean) * scale

    def weight(self, name, field):
        return getattr(self, self.by_key[name, field])

    def _affine(self, x, name):
        return F.linear(x, self.weight(name, "<LinearParams>"), self.weight(name, "<BiasParams>"))

    def _shifted(self, x, name, step, bias):
        """A layer over two points of time; step: frames between two rows of x."""
        offsets = [offset // step for offset in self.offsets[name]]
        weight = self.weight(name, "<LinearParams>")
        if len(offsets) == 1:
            y = F.linear(x, weight)
        else:
            span = offsets[1] - offsets[0]
            early, late = weight.chunk(2, 1)
            y = F.linear(x[:, :-span], early) + F.linear(x[:, span:], late)
        return y + self.weight(name, "<BiasParams>") if bias else y

    def forward(self, x, ivectors):
        """x: cepstra of each frame, ivectors: of each frame. Gives an output every third frame."""
        length = x.shape[1]
        outputs = (length + EVERY - 1) // EVERY
        after = (outputs - 1) * EVERY + self.right - (length - 1)
        edge = lambda y: F.pad(y.transpose(1, 2), (self.left, after), mode="replicate").transpose(1, 2)
        x, ivectors = edge(x), edge(ivectors)[:, 2:-2]
        centre = x[:, 2:-2]
        slope, bend = x[:, 3:-1] - x[:, 1:-3], x[:, :-4] + x[:, 4:] - 2 * centre
        h = self._norm(torch.cat([centre, slope, bend], 2), "delta")
        h = self._affine(torch.cat([h, ivectors], 2), "tdnn1.affine")
        h = self._norm(F.relu(h), "tdnn1.batchnorm")
        begin, step = 2 - self.left, 1
        for k in self.LAYERS:
            if k == 5:  # from here on, nothing needs the frames between
                h = h[:, (-begin) % EVERY :: EVERY]
                begin, step = begin + (-begin) % EVERY, EVERY
            name = f"tdnnf{k}"
            low, high = self.offsets[name + ".linear"], self.offsets[name + ".affine"]
            y = self._shifted(h, name + ".linear", step, False)
            y = self._norm(F.relu(self._shifted(y, name + ".affine", step, True)), name + ".batchnorm")
            first = -(min(low + [0]) + min(high + [0])) // step
            h = 0.75 * h[:, first : first + y.shape[1]] + y
            begin += first * step
        h = h[:, -begin // step :][:, :outputs]
        h = F.linear(h, self.weight("prefinal-l", "<Params>"))
        h = self._norm(F.relu(self._affine(h, "prefinal-chain.affine")), "prefinal-chain.batchnorm1")
        h = F.linear(h, self.weight("prefinal-chain.linear", "<Params>"))
        return self._affine(self._norm(h, "prefinal-chain.batchnorm2"), "output.affine")
