#!/usr/bin/env python3
"""Teaches the acoustic model to hear through crying: the stock network on clean sound teaches a copy
that hears the same sound beside cries and other noise. README.md beside this says with what and how well.

Writes OUT/NAME.npz for each recipe: float32 differences from the stock weights, an array a block.
Two runs with the same seeds, data and machine give the same weights but for rounding.

usage: train.py MODEL CRIES OUT --recipes FILE --seconds N [--speech FOLDER=SHARE ...]
"""
import argparse
import json
import math
import os
import time

import numpy as np
import torch
import torch.nn.functional as F

from kaldi import AcousticModel, IvectorExtractor
from network import EVERY, Features, Ivectors, Network
from sound import Ward, read_cries, read_speech

SILENCE_PHONES = range(1, 11)  # conf/model.conf: endpoint.silence-phones
SHARPNESS = 3.0  # the outputs of a chain model are nearly flat, and so is their divergence
DEV = 10  # every tenth recording of the first folder and every tenth cry checks and does not teach


class Student:
    """A copy of the network with its own optimiser and a running mean of its weights."""

    def __init__(self, model, recipe, device):
        self.recipe = recipe
        self.net = Network(model).to(device)
        self.keys = list(self.net.names)
        self.weights = [self.net.get_parameter(key) for key in self.keys]
        self.start = [weight.detach().clone() for weight in self.weights]
        self.momentum = [torch.zeros_like(weight) for weight in self.weights]
        self.second = [torch.zeros((), device=device) for _ in self.weights]
        self.mean = [weight.detach().clone() for weight in self.weights]
        self.log = []

    def step(self, target, features, ivectors, same, step, pace):
        found = self.net(features, ivectors)
        divergence, square = distance(target, found)
        weight = torch.where(same, self.recipe["clean"], 1.0)
        weight = weight / weight.sum()
        loss = (weight * (divergence + self.recipe["square"] * square)).sum()
        gradient = list(torch.autograd.grad(loss, self.weights))
        with torch.no_grad():
            self._update(gradient, step, pace)
            self.log.append(torch.stack([mean_of(divergence, same), mean_of(divergence, ~same)]))

    def _update(self, gradient, step, pace):
        """Adam with one second moment for each block, so that a block keeps the shape of its gradient."""
        norm = torch.sqrt(sum(each.square() for each in torch._foreach_norm(gradient)))
        gradient = torch._foreach_mul(gradient, (2.0 / (norm + 1e-9)).clamp(max=1.0))
        torch._foreach_lerp_(self.momentum, gradient, 0.1)
        self.second = [0.99 * v + 0.01 * g.square().mean() for v, g in zip(self.second, gradient)]
        first, second = 1 - 0.9 ** (step + 1), 1 - 0.99 ** (step + 1)
        rate = self.recipe["rate"] * pace / first
        for weight, momentum, v in zip(self.weights, self.momentum, self.second):
            weight -= rate * momentum / ((v / second).sqrt() + 1e-8)
        torch._foreach_lerp_(self.mean, self.weights, 1 - min(0.999, (step + 1) / (step + 10)))

    def differences(self):
        return [mean - start for mean, start in zip(self.mean, self.start)]


def distance(target, found):
    """Of each example: divergence of the sharpened outputs, and mean square of the raw ones."""
    wanted = F.log_softmax(SHARPNESS * target, 2)
    divergence = (wanted.exp() * (wanted - F.log_softmax(SHARPNESS * found, 2))).sum(2).mean(1)
    return divergence, (target - found).square().mean((1, 2))


def mean_of(values, chosen):
    return (values * chosen).sum() / chosen.sum().clamp(min=1)


class Lesson:
    """Turns sound into what teacher and student are given."""

    def __init__(self, folder, model, device):
        self.features = Features().to(device)
        self.ivectors = Ivectors(IvectorExtractor(os.path.join(folder, "ivector"))).to(device)
        self.teacher = Network(model).to(device).requires_grad_(False)
        silent = set().union(*(model.outputs_of_phones.get(phone, set()) for phone in SILENCE_PHONES))
        self.silent = torch.zeros(2192, dtype=torch.bool, device=device)
        self.silent[sorted(silent)] = True

    @torch.no_grad()
    def __call__(self, clean, heard, whole, unweighed):
        """whole: the voice is known from before; unweighed: silence counts like speech in the student's
        i-vector, as where the recogniser takes a cry for speech."""
        x = self.features(clean)
        first = self.teacher(x, torch.zeros(*x.shape[:2], 30, device=x.device))
        quiet = self.silent[first.argmax(2)].repeat_interleave(EVERY, 1)[:, : x.shape[1]]
        weights = torch.where(quiet, 1e-3, 1.0)
        target = self.teacher(x, self.ivectors(x, weights, whole))
        y = self.features(heard)
        given = torch.where(unweighed[:, None], torch.ones_like(weights), weights)
        return target, y, self.ivectors(y, given, whole), ~quiet[:, ::EVERY]


class Check:
    """Recordings and cries that do not teach."""

    RATIOS = (None, 10, 5, 0)

    def __init__(self, ward, lesson, model, device):
        none = torch.zeros(64, dtype=torch.bool, device=device)
        self.sets = [lesson(*ward.fixed(64, ratio), none, none) for ratio in self.RATIOS]
        self.probe = Network(model).to(device).requires_grad_(False)
        self.start = {key: self.probe.get_parameter(key).clone() for key in self.probe.names}

    @torch.no_grad()
    def show(self, label, differences):
        for key, difference in zip(self.probe.names, differences):
            self.probe.get_parameter(key).copy_(self.start[key] + difference)
        columns = []
        for ratio, (target, x, ivectors, speech) in zip(self.RATIOS, self.sets):
            found = self.probe(x, ivectors)
            divergence, square = (each.mean() for each in distance(target, found))
            agreed = (target.argmax(2) == found.argmax(2))[speech].float().mean()
            name = "clean" if ratio is None else f"{ratio} dB"
            columns.append(f"{name} {divergence:.3f} {square:.3f} {agreed:.3f}")
        print(f"{label:<28}", " | ".join(columns), flush=True)


def split(recordings):
    return recordings[::DEV], [one for k, one in enumerate(recordings) if k % DEV]


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("model"), parser.add_argument("cries"), parser.add_argument("out")
    parser.add_argument("--speech", action="append", required=True, metavar="FOLDER=SHARE")
    parser.add_argument("--recipes", required=True)
    parser.add_argument("--seconds", type=float, required=True, help="the time that it may take")
    parser.add_argument("--steps", type=int, default=20000, help="ends there at the latest")
    parser.add_argument("--batch", type=int, default=64)
    parser.add_argument("--window", type=float, default=4.0, help="seconds of sound an example")
    parser.add_argument("--seed", type=int, default=1)
    args = parser.parse_args()
    began = time.time()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.backends.cuda.matmul.allow_tf32 = True
    model = AcousticModel(os.path.join(args.model, "am/final.mdl"))
    kinds = [each.rpartition("=")[::2] for each in args.speech]
    speech = [read_speech(folder) for folder, _ in kinds]
    shares = [float(share) for _, share in kinds]
    kept, speech[0] = split(speech[0])
    kept_cries, cries = split(read_cries(args.cries))
    for (folder, share), each in zip(kinds, speech):
        print(os.path.basename(folder), share, len(each), f"{sum(map(len, each)) / 960000:.1f} min")
    lesson = Lesson(args.model, model, device)
    ward = Ward(speech, shares, cries, args.window, args.seed, device)
    check = Check(Ward([kept], [1.0], kept_cries, args.window, 7, device), lesson, model, device)
    with open(args.recipes, encoding="utf-8") as file:
        students = [Student(model, recipe, device) for recipe in json.load(file)]
    print(f"ready after {time.time() - began:.0f} s", flush=True)
    check.show("stock", [torch.zeros_like(each) for each in students[0].start])
    teach(args, began, students, lesson, ward, check)
    for student in students:
        name = student.recipe["name"]
        for share in (1.0, 0.7):
            check.show(f"{name} x {share}", [share * each for each in student.differences()])
        blocks = {
            "|".join(student.net.names[key]): each.cpu().numpy()
            for key, each in zip(student.keys, student.differences())
        }
        np.savez(os.path.join(args.out, f"{name}-{args.seed}.npz"), **blocks)


def teach(args, began, students, lesson, ward, check):
    shown = 0.25
    for step in range(args.steps):
        done = max(step / args.steps, (time.time() - began) / args.seconds)
        if done >= 1:
            break
        pace = max(0.01, min(1, (step + 1) / 50) * (0.5 + 0.5 * math.cos(math.pi * done)))
        with torch.no_grad():
            clean, heard, same = ward.batch(args.batch)
        r = ward.chance
        known, unweighed = r.uniform(args.batch) < 0.5, r.uniform(args.batch) < 0.25
        target, features, ivectors, _ = lesson(clean, heard, known, unweighed)
        for student in students:
            student.step(target, features, ivectors, same, step, pace)
        if step == 20 or done >= shown:
            shown += 0.25 if done >= shown else 0
            for student in students:
                means = torch.stack(student.log[-500:]).mean(0).tolist()
                print(f"{student.recipe['name']} clean %.3f noisy %.3f" % tuple(means), end=" ")
                check.show(f"step {step + 1}, {time.time() - began:.0f} s", student.differences())
    print(f"{step} steps in {time.time() - began:.0f} s", flush=True)


if __name__ == "__main__":
    main()
