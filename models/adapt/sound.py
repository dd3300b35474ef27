"""Speech and the sounds of a ward, mixed anew for every batch on the device that trains."""
import glob
import math
import os
import wave

import numpy as np
import torch
import torch.nn.functional as F

RATE = 16000
CRY_RATE = 8000


def read_wav(path):
    with wave.open(path) as file:
        if (file.getframerate(), file.getnchannels(), file.getsampwidth()) != (RATE, 1, 2):
            raise ValueError(f"expected 16 kHz, mono, 16 bit in {path}")
        return np.frombuffer(file.readframes(file.getnframes()), "<i2").astype("f4")


def read_speech(folder):
    """The recordings of a folder in the order of their names."""
    found = [read_wav(path) for path in sorted(glob.glob(os.path.join(folder, "*.wav")))]
    found = [each for each in found if len(each) > RATE // 2]
    if not found:
        raise ValueError(f"expected WAV files in {folder}, found none")
    return found


def read_cries(path):
    """Cries of 8 kHz, µ-law, from an npz file with `data` (int8) and `lens`; as pairs of sound at 16 kHz:
    what was recorded, and its mirror image above 4 kHz, which stands for what 8 kHz cannot hold."""
    file = np.load(path)
    code = file["data"].astype("f4") / 127.0
    linear = np.sign(code) * (np.power(256.0, np.abs(code)) - 1) / 255.0 * 32767
    ends = np.cumsum(file["lens"])
    cries = [linear[end - length : end] for end, length in zip(ends, file["lens"])]
    return [_doubled(cry) for cry in cries if cry.std() > 1]


def _doubled(x):
    stuffed = np.zeros(2 * len(x), "f4")
    stuffed[::2] = 2 * x
    spectrum = np.fft.rfft(stuffed)
    low = spectrum.copy()
    low[len(spectrum) // 2 :] = 0
    return [np.fft.irfft(each, len(stuffed)).astype("f4") for each in (low, spectrum - low)]


class Shelf:
    """Recordings on the device, from which stretches are taken by chance."""

    def __init__(self, recordings, shares, samples, chance, device):
        """recordings: lists of arrays, one a kind; shares: of the stretches that come from each kind."""
        clips = [clip for kind in recordings for clip in kind]
        odds = [
            share * len(clip) / sum(map(len, kind))
            for kind, share in zip(recordings, shares)
            for clip in kind
        ]
        self.length = torch.tensor([len(clip) for clip in clips], device=device)
        self.begin = torch.cumsum(self.length, 0) - self.length
        self.sound = torch.from_numpy(np.concatenate(clips)).to(device)
        self.odds = torch.tensor(odds, device=device)
        self.samples, self.chance, self.device = samples, chance, device

    def choose(self, count):
        return torch.multinomial(self.odds, count, replacement=True, generator=self.chance.generator)

    def take(self, clip, at, speed, around):
        """clip: which; at: 0 to 1, where from; speed: 1 leaves it as it is; around: whether what is too
        short goes round, else it has silence about it."""
        length = self.length[clip].double()[:, None]
        need = self.samples * speed.double()[:, None]
        spare = at.double()[:, None] * (length - need)
        first = torch.where(length > need, spare, at.double()[:, None] * length if around else spare)
        where = first + torch.arange(self.samples, device=self.device) * speed.double()[:, None]
        last = length - 2
        if around:
            where = where % last
        inside = (where >= 0) & (where < last)
        where = torch.minimum(where.clamp(min=0), last)
        whole = where.floor()
        part = (where - whole).float()
        index = whole.long() + self.begin[clip][:, None]
        return (self.sound[index] * (1 - part) + self.sound[index + 1] * part) * inside


class Chance:
    """Random numbers of one seed on the device."""

    def __init__(self, seed, device):
        self.device = device
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)

    def uniform(self, *shape, low=0.0, high=1.0):
        return torch.rand(*shape, generator=self.generator, device=self.device) * (high - low) + low

    def normal(self, *shape):
        return torch.randn(*shape, generator=self.generator, device=self.device)

    def speed(self, count, low, high, share):
        drawn = self.uniform(count, low=low, high=high)
        return torch.where(self.uniform(count) < share, drawn, torch.ones_like(drawn))


def active_level(x):
    """RMS over the stretches of 20 ms that are within 25 dB of the loudest."""
    power = x.unfold(1, 320, 320).square().mean(2)
    active = power > power.amax(1, keepdim=True) * 10**-2.5
    return ((power * active).sum(1) / active.sum(1).clamp(min=1)).sqrt() + 1e-3


def scaled(x):
    return x / (x.std(1, keepdim=True) + 1e-3)


class Ward:
    """Makes batches of clean speech and of the same speech beside the sounds of a ward.

    The shares of the noises: cries 0.72, the rest in equal parts white and coloured noise, hum, beeps
    and other people; a tenth of the cries has another noise beside them."""

    OTHERS = ("white", "coloured", "hum", "beeps", "people")
    CRIES, CLEAN, SPEECHLESS = 0.72, 0.45, 0.07

    def __init__(self, speech, shares, cries, seconds, seed, device):
        self.n = int(seconds * RATE)
        self.chance, self.device = Chance(seed, device), device
        self.speech = Shelf(speech, shares, self.n, self.chance, device)
        self.low = Shelf([[cry[0] for cry in cries]], [1.0], self.n, self.chance, device)
        self.high = Shelf([[cry[1] for cry in cries]], [1.0], self.n, self.chance, device)
        self.time = torch.arange(self.n, device=device) / RATE

    def _talk(self, count, low, high, share):
        speed = self.chance.speed(count, low, high, share)
        return self.speech.take(self.speech.choose(count), self.chance.uniform(count), speed, False)

    def _cry(self, count):
        r = self.chance
        clip, at, speed = self.low.choose(count), r.uniform(count), r.speed(count, 0.88, 1.14, 0.5)
        bright = 10 ** (r.uniform(count, 1, low=-20, high=-2) / 20) * (r.uniform(count, 1) < 0.4)
        return self.low.take(clip, at, speed, True) + bright * self.high.take(clip, at, speed, True)

    def _noise(self, kind, count):
        r, t = self.chance, self.time
        if kind == "white":
            return r.normal(count, self.n)
        if kind == "coloured":
            spectrum = torch.fft.rfft(r.normal(count, self.n))
            bins = torch.arange(spectrum.shape[1], device=self.device).clamp(min=30).float()
            return torch.fft.irfft(spectrum / bins ** r.uniform(count, 1, low=0.4, high=1.0), self.n)
        if kind == "hum":
            mains = torch.tensor([50.0, 60.0, 100.0, 120.0], device=self.device)
            drawn = torch.randint(4, (count, 1), generator=r.generator, device=self.device)
            base = mains[drawn] * r.uniform(count, 1, low=0.99, high=1.01)
            tones = 0.05 * r.normal(count, self.n)
            for k in range(1, 12):
                phase = 2 * math.pi * (base * k * t + r.uniform(count, 1))
                tones = tones + r.uniform(count, 1) / k * torch.sin(phase)
            return tones
        if kind == "beeps":
            on = (t + r.uniform(count, 1)) % r.uniform(count, 1, low=0.3, high=1.5)
            tone = torch.sin(2 * math.pi * r.uniform(count, 1, low=400, high=3500) * t)
            return tone * (on < r.uniform(count, 1, low=0.05, high=0.3)) + 1e-3 * r.normal(count, self.n)
        people = 0.1 * r.normal(count, self.n)
        for k in range(6):
            loud = r.uniform(count, 1, low=0.3) * (r.uniform(count, 1) < (1 if k < 3 else 0.5))
            people = people + self._talk(count, 1, 1, 0) * loud
        return people

    def _noises(self, count):
        noise, drawn = self._cry(count), self.chance.uniform(count)
        share = (1 - self.CRIES) / len(self.OTHERS)
        for k, kind in enumerate(self.OTHERS):
            begin = self.CRIES + k * share
            rows = torch.nonzero((drawn >= begin) & (drawn < begin + share))[:, 0]
            if len(rows):
                noise[rows] = self._noise(kind, len(rows))
            begin = k * self.CRIES / 10 / len(self.OTHERS)
            rows = torch.nonzero((drawn >= begin) & (drawn < begin + self.CRIES / 10 / len(self.OTHERS)))[:, 0]
            if len(rows):
                beside = self.chance.uniform(len(rows), 1, low=0.1, high=0.6)
                noise[rows] = scaled(noise[rows]) + beside * scaled(self._noise(kind, len(rows)))
        return noise

    def _microphone(self, x):
        """Two of three through a smooth random equaliser and level, for teacher and student alike."""
        r, count = self.chance, len(x)
        curve = F.interpolate(
            r.normal(count, 1, 9) * 4, size=self.n // 2 + 1, mode="linear", align_corners=True
        )[:, 0].clamp(-10, 8)
        y = torch.fft.irfft(torch.fft.rfft(x) * 10 ** (curve / 20), self.n)
        y = y * 10 ** (r.uniform(count, 1, low=-14, high=4) / 20)
        return torch.where(r.uniform(count, 1) < 0.67, y, x)

    def _room(self, x):
        """One of seven with the reverberation of a small room."""
        r = self.chance
        rows = torch.nonzero(r.uniform(len(x)) < 0.15)[:, 0]
        if not len(rows):
            return x
        t = torch.arange(8000, device=self.device) / RATE
        decay = torch.exp(-6.9 * t / r.uniform(len(rows), 1, low=0.1, high=0.45))
        echo = r.normal(len(rows), 8000) * decay * r.uniform(len(rows), 1, low=0.005, high=0.04)
        echo[:, 0] = 1
        size = self.n + 8000
        x = x.clone()
        x[rows] = torch.fft.irfft(torch.fft.rfft(x[rows], size) * torch.fft.rfft(echo, size), size)[:, : self.n]
        return x

    def batch(self, count):
        """Clean sound, what the student hears of it, and for which examples both are the same."""
        r = self.chance
        clean = self._microphone(self._talk(count, 0.84, 1.2, 0.7))
        floor = r.normal(count, self.n)
        speechless = r.uniform(count) < self.SPEECHLESS
        quiet = floor * r.uniform(count, 1, low=1, high=30)
        clean = torch.where(speechless[:, None], quiet, clean + floor * r.uniform(count, 1, low=0.3, high=4))
        same = ~speechless & (r.uniform(count) < self.CLEAN)
        noise = self._noises(count)
        level = torch.exp(r.uniform(count, low=math.log(100), high=math.log(5000)))
        level = torch.where(speechless, level, active_level(clean))
        ratio = r.uniform(count, low=-2, high=20)
        ratio = torch.where(speechless, torch.zeros_like(ratio), ratio)
        loud = level * 10 ** (-ratio / 20)
        heard = self._room(clean + scaled(noise) * loud[:, None])
        gain = 10 ** (r.uniform(count, 1, low=-12, high=6) / 20)
        heard = heard * torch.where(r.uniform(count, 1) < 0.5, gain, torch.ones_like(gain))
        heard = torch.where(same[:, None], clean, heard)
        peak = heard.abs().amax(1, keepdim=True)
        return clean, torch.where(peak > 30000, heard * 30000 / peak, heard), same

    def fixed(self, count, ratio):
        """Speech as it is with cries so many decibels below; None: without."""
        clean = self._talk(count, 1, 1, 0) + self.chance.normal(count, self.n)
        if ratio is None:
            return clean, clean
        loud = active_level(clean) * 10 ** (-ratio / 20)
        return clean, clean + scaled(self._cry(count)) * loud[:, None]
