#!/usr/bin/env python3
"""Fits the weights of sureness.yaml on what SurenessCases printed, and prints how well they hold.

Fitted on the fitted halves of voices, cries, readers and authors, held against the others. Needs
numpy.

usage: sureness.py CASES
"""
import json
import re
import sys

import numpy as np

FIT = {
    "fit-natural": "all", "fit-natural-talk": "all", "fit-phrases": "all", "fit-chat": "all",
    "off-script": "train",
}
TALK = re.compile("chat|talk|off-script")
THREEFOLD = 3  # in free wordings alone: any talk is heard in them
NAMES = {
    "phrases": ["share", "support", "added", "nowhere", "single"],
    "freely": ["share", "support", "states", "phrases"],
}
# Of phrases those that fit, of free wordings those where phrases do not, however well any words fit.
KINDS = {"phrases": {"phrases"}, "freely": {"freely", "badly"}}
BANDS = ((0, 0.5), (0.5, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 0.98), (0.98, 2))


def table(cases):
    return np.array([[1.0] + one["features"] for one in cases])


def fitted(cases, weight):
    of = table(cases)
    right = np.array([one["right"] for one in cases], float)
    mean, spread = of[:, 1:].mean(0), of[:, 1:].std(0) + 1e-9
    of[:, 1:] = (of[:, 1:] - mean) / spread
    weights = np.zeros(of.shape[1])
    for _ in range(80):
        chance = 1 / (1 + np.exp(-of @ weights))
        slope = of.T @ (weight * (chance - right)) + np.r_[0, weights[1:]]
        bend = (of * (weight * chance * (1 - chance))[:, None]).T @ of
        weights -= np.linalg.solve(bend + np.eye(len(weights)), slope)
    factors = weights[1:] / spread
    return np.r_[weights[0] - (factors * mean).sum(), factors]


def main():
    with open(sys.argv[1], encoding="utf-8") as lines:
        cases = [json.loads(line) for line in lines]
    for kind, names in NAMES.items():
        of = [one for one in cases if one["kind"] in KINDS[kind]]
        fit = [one for one in of if FIT.get(one["set"]) == one["split"]]
        held = [one for one in of if FIT.get(one["set"]) != one["split"]]
        threefold = [kind == "freely" and TALK.search(one["set"]) for one in fit]
        weights = fitted(fit, np.where(threefold, THREEFOLD, 1.0))
        print(kind, dict(zip(["base"] + names, weights.round(3).tolist())))
        chance = 1 / (1 + np.exp(-table(held) @ weights))
        right = np.array([one["right"] for one in held])
        for low, high in BANDS:
            taken = (chance >= low) & (chance < high)
            print("  %.2f: %d of %d held-out statements right" % (low, right[taken].sum(), taken.sum()))


main()
