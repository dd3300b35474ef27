#!/usr/bin/env python3
"""Prints word-shares.txt: words and pairs of words of the language model that comes with the stock model.

Its graph/Gr.fst is of OpenFst's type "ngram" (Sorensen and Allauzen, Interspeech 2011): states are the
nodes of a tree of contexts, kept as bits. Of the 25,000 pairs of words kept, all are among the 5,000
likeliest words and those of the file WORDS, which need not be among these. Needs numpy.

usage: word_shares.py GR.FST WORDS
"""
import math
import re
import struct
import sys

import numpy as np

WORDS = 5000
PAIRS = 25000
SAYABLE = re.compile(r"[a-z][a-z']+|[ai]")
UNSEEMLY = re.compile(r"(god)?damn|.*(bitch|shit|fuck)|asshole|dick(s|'s)?$|cunt|whore|nigg|faggot|bastard|pussy|cock(s)?$|tits")


def symbols(data, at):
    at += 8 + struct.unpack_from("<i", data, at + 4)[0]
    size = struct.unpack_from("<q", data, at + 8)[0]
    at += 16
    found = {}
    for _ in range(size):
        length = struct.unpack_from("<i", data, at)[0]
        word = data[at + 4 : at + 4 + length].decode()
        at += 4 + length
        found[struct.unpack_from("<q", data, at)[0]] = word
        at += 8
    return found, at


def read(name):
    """Shares of words, of words behind each word, and each word's factor for the others."""
    data = open(name, "rb").read()
    at = 4
    for _ in range(2):
        at += 4 + struct.unpack_from("<i", data, at)[0]
    flags = struct.unpack_from("<i", data, at + 4)[0]
    states = struct.unpack_from("<q", data, at + 24)[0]
    at += 40
    words = {}
    for flag in (1, 2):
        if flags & flag:
            found, at = symbols(data, at)
            words = words or found
    while struct.unpack_from("<Q", data, at)[0] != states:
        at += 1
    _, futures, finals = struct.unpack_from("<QQQ", data, at)
    at += 24

    def bits(count):
        nonlocal at
        size = (count + 63) // 64 * 8
        one = np.unpackbits(np.frombuffer(data, np.uint8, size, at), bitorder="little")[:count]
        at += size
        return one

    def numbers(count, kind):
        nonlocal at
        one = np.frombuffer(data, kind, count, at)
        at += 4 * count
        return one

    contexts, followers = bits(2 * states + 1), bits(futures + states + 1)
    bits(states)
    context_words, follower_words = numbers(states + 1, np.int32), numbers(futures, np.int32)
    back_off = numbers(states + 1, np.float32)
    numbers(finals, np.float32)
    costs = numbers(futures, np.float32)
    parents = np.searchsorted(np.flatnonzero(contexts == 0), np.flatnonzero(contexts == 1)) - 1
    ends = np.flatnonzero(followers == 0)

    def behind(state):
        low, high = ends[state] - state, ends[state + 1] - state - 1
        pairs = zip(follower_words[low:high], costs[low:high])
        return {words[word]: math.exp(-cost) for word, cost in pairs if word in words}

    pairs, rest = {}, {}
    for state in np.flatnonzero(parents == 0):
        word = words.get(context_words[state])
        if state and word:
            pairs[word] = behind(state)
            rest[word] = math.exp(-back_off[state])
    return behind(0), pairs, rest


def main():
    shares, pairs, rest = read(sys.argv[1])
    likely = sorted((-share, word) for word, share in shares.items() if SAYABLE.fullmatch(word) and not UNSEEMLY.match(word))
    top = [word for _, word in likely][:WORDS]
    known = set(top) | set(open(sys.argv[2], encoding="utf-8").read().split())
    known = {word for word in known if not UNSEEMLY.match(word)}
    telling = []
    for first in known & set(pairs):
        for second in known & set(pairs[first]):
            chance, else_ = pairs[first][second], rest[first] * shares.get(second, 1)
            if chance > else_:
                gain = shares[first] * chance * math.log(chance / else_)
                telling.append((gain, first, second, chance))
    behind = {}
    for _, first, second, chance in sorted(telling, reverse=True)[:PAIRS]:
        behind.setdefault(first, []).append((chance, second))
    for word in sorted(set(top) | set(behind)):
        if word in shares:
            parts = [word, str(max(1, round(shares[word] * 1e6)))]
            for chance, second in sorted(behind.get(word, []), reverse=True):
                parts += [second, str(max(1, round(chance * 1e4)))]
            print(" ".join(parts))


main()
