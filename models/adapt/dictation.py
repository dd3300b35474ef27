#!/usr/bin/env python3
"""Teaches the adapted network dictation: what was said is to be likely among all that could have been said
(`sequence.py`), in quiet and beside cries, while the stock network goes on teaching ordinary speech (`train.py`).

Writes OUT/NAME.npz as train.py does: differences from the stock weights.

usage: dictation.py MODEL CRIES OUT --from WEIGHTS.mdl --spelling FOLDER --dictated FOLDER --texts FILE
       --speech FOLDER=SHARE … --seconds N [--rate R] [--weight W] [--seed N] [--name NAME]
"""
import argparse
import math
import os
import random
import time

import numpy as np
import torch

from kaldi import AcousticModel
from sequence import Anything, Said, Spelling
from sound import Shelf, Ward, active_level, read_cries, read_speech, read_wav, scaled
from train import Lesson, Student, distance, split

MARGIN = 1600  # samples: what is said is at least this much shorter than the window
SAME, SQUARE = 12.0, 3  # as `clean` and `square` of recipe a: clean speech is to stay as it is
DOUBTFUL = 0.06  # of what was spoken, the share that the network itself hears least as the text: said wrong


class Dictated:
    """What was spoken, with the ways to say each text."""

    def __init__(self, folder, spelling, ward):
        rows = [line.rstrip("\n").split("\t") for line in open(f"{folder}/spoken.tsv", encoding="utf-8")]
        rows = [(name, text) for name, text in rows if spelling.knows(text)]
        sounds = [read_wav(f"{folder}/{name}.wav") for name, _ in rows]
        kept = [k for k, sound in enumerate(sounds) if 4000 < len(sound) < 1.25 * ward.n]
        graphs = {text: spelling.graph(text) for text in {rows[k][1] for k in kept}}
        self.graphs = [graphs[rows[k][1]] for k in kept]
        # short and long graphs are not put into one batch, or padding would cost more than what is said
        self.order = sorted(range(len(kept)), key=lambda k: len(self.graphs[k][0]))
        self.shelf = Shelf([[sounds[k] for k in kept]], [1.0], ward.n, ward.chance, ward.device)
        self.ward = ward

    def batch(self, which, plain=False):
        """Sound of these rows, each whole within the window."""
        r, count = self.ward.chance, len(which)
        clip = torch.tensor(which, device=self.ward.device)
        speed = torch.ones(count, device=self.ward.device) if plain else r.speed(count, 0.84, 1.2, 0.7)
        speed = torch.maximum(speed, self.shelf.length[clip] / (self.ward.n - MARGIN))
        sound = self.shelf.take(clip, r.uniform(count), speed, False)
        return sound, [self.graphs[k] for k in which]

    def mixed(self, which, clean):
        """As Ward.batch: the share `clean` stays so, the rest is beside the sounds of a ward."""
        r, ward, count = self.ward.chance, self.ward, len(which)
        sound, graphs = self.batch(which)
        floor = r.normal(count, ward.n) * r.uniform(count, 1, low=0.3, high=4)
        sound = ward._microphone(sound) + floor
        same = r.uniform(count) < clean
        loud = active_level(sound) * 10 ** (-r.uniform(count, low=3, high=20) / 20)
        heard = ward._room(sound + scaled(ward._noises(count)) * loud[:, None])
        heard = torch.where(same[:, None], sound, heard)
        peak = heard.abs().amax(1, keepdim=True)
        return sound, torch.where(peak > 30000, heard * 30000 / peak, heard), graphs


def doubt(net, lesson, dictated, anything, size=96):
    """Of each row, how much less likely its text is than anything, in nats a frame, in quiet."""
    found = np.zeros(len(dictated.order))
    none = torch.zeros(size, dtype=torch.bool, device=dictated.ward.device)
    with torch.no_grad():
        for begin in range(0, len(found), size):
            rows = dictated.order[begin : begin + size]
            sound, graphs = dictated.batch(rows, plain=True)
            sound = sound + dictated.ward.chance.normal(len(rows), dictated.ward.n)
            _, x, ivectors, _ = lesson(sound, sound, none[: len(rows)], none[: len(rows)])
            outputs = net(x, ivectors)
            gap = anything.score(outputs) - Said(graphs, x.device).score(outputs)
            found[rows] = (gap / outputs.shape[1]).cpu().numpy()
    return found


def check(label, student, lesson, sets, anything, differences):
    """Of voices and cries that do not teach: nats a frame that the text lacks, at each level of crying."""
    net, device = student.net, student.weights[0].device
    before = [weight.detach().clone() for weight in student.weights]
    columns = []
    with torch.no_grad():
        for weight, start, difference in zip(student.weights, student.start, differences):
            weight.copy_(start + difference)
        for name, clean, heard, graphs in sets:
            none = torch.zeros(len(clean), dtype=torch.bool, device=device)
            _, x, ivectors, _ = lesson(clean, heard, none, none)
            outputs = net(x, ivectors)
            gap = (anything.score(outputs) - Said(graphs, device).score(outputs)) / outputs.shape[1]
            columns.append(f"{name} {gap.mean():.4f}")
        for weight, old in zip(student.weights, before):
            weight.copy_(old)
    print(f"{label:<24}", " | ".join(columns), flush=True)


def check_sets(folder, spelling, ward):
    dictated = Dictated(folder, spelling, ward)
    rows = list(range(min(96, len(dictated.graphs))))
    sound, graphs = dictated.batch(rows, plain=True)
    sound = sound + ward.chance.normal(len(rows), ward.n)
    loud = active_level(sound)[:, None]
    cry = scaled(ward._cry(len(rows)))
    yield "quiet", sound, sound, graphs
    for ratio in (10, 5):
        yield f"{ratio} dB", sound, sound + cry * loud * 10 ** (-ratio / 20), graphs


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("model"), parser.add_argument("cries"), parser.add_argument("out")
    parser.add_argument("--from", dest="begin", required=True)
    parser.add_argument("--spelling", required=True), parser.add_argument("--dictated", required=True)
    parser.add_argument("--texts", required=True)
    parser.add_argument("--speech", action="append", required=True, metavar="FOLDER=SHARE")
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--steps", type=int, default=20000)
    parser.add_argument("--batch", type=int, default=64, help="dictated texts a step")
    parser.add_argument("--others", type=int, default=40, help="stretches of ordinary speech a step")
    parser.add_argument("--window", type=float, default=5.0)
    parser.add_argument("--rate", type=float, default=1e-4)
    parser.add_argument("--weight", type=float, default=2.0, help="of what was said, against the stock network")
    parser.add_argument("--clean", type=float, default=0.4)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--name", default="d")
    args = parser.parse_args()
    began = time.time()
    os.makedirs(args.out, exist_ok=True)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.backends.cuda.matmul.allow_tf32 = True
    model = AcousticModel(os.path.join(args.model, "am/final.mdl"))
    kinds = [each.rpartition("=")[::2] for each in args.speech]
    speech = [read_speech(folder) for folder, _ in kinds]
    kept, speech[0] = split(speech[0])
    kept_cries, cries = split(read_cries(args.cries))
    lesson = Lesson(args.model, model, device)
    ward = Ward(speech, [float(share) for _, share in kinds], cries, args.window, args.seed, device)
    student = Student(model, {"rate": args.rate}, device)
    with torch.no_grad():
        for key, weight in zip(student.keys, student.weights):
            weight.copy_(torch.tensor(AcousticModel(args.begin).weights()[student.net.names[key]]))
        student.mean = [weight.detach().clone() for weight in student.weights]
    spelling = Spelling(args.spelling, model.tuples)
    texts = [line.strip() for line in open(args.texts, encoding="utf-8")]
    anything = Anything(spelling, [each for each in texts if spelling.knows(each)], device)
    dictated = Dictated(args.dictated, spelling, ward)
    sets = list(check_sets(args.dictated + "-check", spelling, Ward([kept], [1.0], kept_cries, args.window, 7, device)))
    print(f"{len(dictated.graphs)} texts, {len(anything.first)} pairs, {time.time() - began:.0f} s", flush=True)
    doubts = doubt(student.net, lesson, dictated, anything)
    limit = np.quantile(doubts, 1 - DOUBTFUL)
    print("doubts", np.round(np.quantile(doubts, [0, 0.1, 0.5, 0.9, 0.94, 1]), 3), flush=True)
    order = [k for k in dictated.order if doubts[k] < limit]
    check("before", student, lesson, sets, anything, student.differences())
    shown, chance = 0.2, random.Random(args.seed)
    for step in range(args.steps):
        done = max(step / args.steps, (time.time() - began) / args.seconds)
        if done >= 1:
            break
        pace = max(0.01, min(1, (step + 1) / 50) * (0.5 + 0.5 * math.cos(math.pi * done)))
        near, last = 8 * args.batch, max(0, len(order) - 8 * args.batch)
        begin = min(max(chance.randrange(-near, last + near), 0), last)  # the ends are drawn as often as the rest
        rows = chance.sample(order[begin : begin + near], args.batch)
        r = ward.chance
        with torch.no_grad():
            clean, heard, graphs = dictated.mixed(rows, args.clean)
            known, unweighed = r.uniform(args.batch) < 0.5, r.uniform(args.batch) < 0.25
            _, x, ivectors, _ = lesson(clean, heard, known, unweighed)
            first, second, same = ward.batch(args.others)
            known, unweighed = r.uniform(args.others) < 0.5, r.uniform(args.others) < 0.25
            target, y, others, _ = lesson(first, second, known, unweighed)
        outputs = student.net(torch.cat([x, y]), torch.cat([ivectors, others]))
        mine, theirs = outputs[: args.batch], outputs[args.batch :]
        gap = (anything.score(mine) - Said(graphs, device).score(mine)) / mine.shape[1]
        divergence, square = distance(target, theirs)
        weight = torch.where(same, SAME, 1.0)
        weight = weight / weight.sum()
        held = (weight * (divergence + SQUARE * square)).sum()
        gradient = list(torch.autograd.grad(args.weight * gap.mean() + held, student.weights))
        with torch.no_grad():
            student._update(gradient, step, pace)
            student.log.append(torch.stack([gap.mean().detach(), held.detach()]))
        if step in (5, 100) or done >= shown:
            shown += 0.2 if done >= shown else 0
            means = torch.stack(student.log[-300:]).mean(0).tolist()
            print("gap %.4f held %.4f" % tuple(means), end=" ")
            check(f"step {step + 1}, {time.time() - began:.0f} s", student, lesson, sets, anything, student.differences())
    print(f"{step} steps in {time.time() - began:.0f} s", flush=True)
    blocks = {
        "|".join(student.net.names[key]): each.cpu().numpy()
        for key, each in zip(student.keys, student.differences())
    }
    np.savez(os.path.join(args.out, f"{args.name}-{args.seed}.npz"), **blocks)


if __name__ == "__main__":
    main()
