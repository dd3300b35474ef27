#!/usr/bin/env python3
"""Fits the weights of sureness.yaml on what HearAll heard, and prints how well they hold.

A statement of the fitted halves is right where it is among those that were said: the text beside a
recording or, for natural sentences, name.key. Needs numpy.

usage: sureness.py KEPT SETS
"""
import glob
import json
import os
import re
import sys

import numpy as np

FILLER = "[unk]"
FIT = {"fit-natural": "all", "fit-phrases": "all", "fit-chat": "all", "off-script": "train"}
HELD = {
    "held-natural": "all", "held-phrases": "all", "held-chat": "all", "held-talk": "all",
    "off-script": "held-out",
}
TALK = re.compile("chat|talk|off-script")
TENFOLD = 10  # in free wordings alone: any talk is heard in them
MARGIN = 0.5
HEARD_FREELY = 0.05
KNOWN = 0.3
PHRASES = ["share", "support", "added", "nowhere", "single"]
FREELY = ["share", "support", "in-phrases"]
LIMITS = {
    "accepted-from": -10, "contested-from": -18, "unsure-from": -14, "rival-within": 1.5,
    "free-seconds": 1.2, "free-better-by": 3.0,
}


def key(meaning):
    where, value = meaning[2:].split()[:2]
    number = re.fullmatch(r"-?\d+(\.\d+)?", value)
    return where.replace(".", "/") + "=" + ("num:%g" % float(value) if number else value)


def stated(way, surely=False):
    meanings = way["means"]
    if surely:
        meanings = [] if way["withheld"] else way.get("sure", []) if way["uncovered"] else meanings
    return [key(one) for one in meanings if one[:2] in ("S ", "C ")]


def said(row, sets):
    name = os.path.join(sets, row["set"], row["file"][:-4] + ".key")
    if os.path.exists(name):
        line = open(name, encoding="utf-8").read().strip()
        return set() if line == "none" else {one.strip() for one in line.split(";")}
    if TALK.search(row["set"]):
        return set()
    return {one for line in row["said"] for one in stated(line)}


def is_said(one, all_said):
    sideless = {re.sub("/(left|right)=", "=", other) for other in all_said}
    return one in all_said or one in sideless


def seconds(words):
    return sum(word[2] - word[1] for word in words)


def share(heard, one, surely=False):
    ways = heard["ways"]
    margins = [0] + [rival[1] for rival in heard.get("rivals", [])]
    weights = np.exp(-MARGIN * np.array(margins[: len(ways)]))
    holds = np.array([one in stated(way, surely) for way in ways])
    return float((weights * holds).sum() / weights.sum())


def accepted(heard):
    """Whether the limits of verifier.yaml take the phrases."""
    phrase = [word for word in heard["words"] if word[0] != FILLER]
    if not phrase or len(phrase) < len(heard["words"]):
        return False
    support = heard.get("support")
    free = heard.get("free")
    best = heard["ways"][0]
    others = []
    if support is not None:
        contested = free and heard["end"] - heard["start"] >= LIMITS["free-seconds"]
        if support < LIMITS["contested-from" if contested else "accepted-from"]:
            return False
        others = [
            way for rival, way in zip(heard["rivals"], heard["ways"][1:])
            if rival[1] <= LIMITS["rival-within"]
        ]
        if free and free["support"] > support + LIMITS["free-better-by"]:
            others.append(free["ways"][0])
    return not best["uncovered"] and all(way["means"] == best["means"] for way in others)


def of_phrases(heard):
    """The statements of phrases and what speaks for each."""
    free = heard.get("free")
    all_stated = stated(heard["ways"][0])
    support = heard.get("support", -20) / max(0.3, seconds(heard["words"]))
    freely = {one: share(free, one) if free else 0 for one in all_stated}
    step = {one: re.split("[/=]", one)[0] for one in all_stated}
    for one in all_stated:
        beside = [freely[other] for other in all_stated if step[other] != step[one]]
        missing = freely[one] < HEARD_FREELY
        known = bool(beside) and max(beside) > KNOWN
        yield one, {
            "share": share(heard, one),
            "support": support,
            "added": float(missing and known),
            "nowhere": float(missing and bool(beside) and not known),
            "single": float(missing and not beside),
        }


def of_free_wordings(heard):
    free = heard.get("free")
    if not free or not free["ways"]:
        return
    support = free["support"] / max(0.1, seconds(free["words"]))
    strict = stated(heard["ways"][0]) if heard.get("ways") else []
    for one in dict.fromkeys(stated(free["ways"][0], True)):
        yield one, {
            "share": share(free, one, True),
            "support": support,
            "in-phrases": float(one in strict),
        }


def cases(rows, halves, sets, freely):
    features, right, weight = [], [], []
    for row in rows:
        if halves.get(row["set"]) == row["split"]:
            all_said = said(row, sets)
            for heard in row["heard"]:
                if accepted(heard) != freely:
                    for one, found in of_free_wordings(heard) if freely else of_phrases(heard):
                        features.append(found)
                        right.append(is_said(one, all_said))
                        weight.append(TENFOLD if freely and TALK.search(row["set"]) else 1)
    return features, np.array(right, float), np.array(weight, float)


def fitted(features, right, weight, names):
    table = np.array([[1.0] + [one[name] for name in names] for one in features])
    mean, spread = table[:, 1:].mean(0), table[:, 1:].std(0) + 1e-9
    table[:, 1:] = (table[:, 1:] - mean) / spread
    weights = np.zeros(table.shape[1])
    for _ in range(80):
        chance = 1 / (1 + np.exp(-table @ weights))
        slope = table.T @ (weight * (chance - right)) + np.r_[0, weights[1:]]
        bend = (table * (weight * chance * (1 - chance))[:, None]).T @ table
        weights -= np.linalg.solve(bend + np.eye(len(weights)), slope)
    factors = weights[1:] / spread
    return np.r_[weights[0] - (factors * mean).sum(), factors]


def main():
    kept, sets = sys.argv[1:]
    rows = [json.loads(line) for name in glob.glob(kept + "/*.jsonl") for line in open(name)]
    for freely, names in ((False, PHRASES), (True, FREELY)):
        weights = fitted(*cases(rows, FIT, sets, freely), names)
        print("freely" if freely else "phrases", dict(zip(["base"] + names, weights.round(3).tolist())))
        features, right, weight = cases(rows, HELD, sets, freely)
        table = np.array([[1.0] + [one[name] for name in names] for one in features])
        chance = 1 / (1 + np.exp(-table @ weights))
        for low, high in ((0, 0.5), (0.5, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 0.98), (0.98, 2)):
            taken = (chance >= low) & (chance < high)
            print("  %.2f: %d of %d held-out statements right" % (low, right[taken].sum(), taken.sum()))


main()
