#!/usr/bin/env python3
"""Prints what dictation is taught from, one text a line: the phrases of the utterance tables' fitted half,
and stretches of at most eleven words of `said.txt`, none of them a phrase of the held-out half.

usage: texts.py > texts.txt
"""
import os
import re

from speech import HERE, held_out_phrases, phrases

SAID = os.path.join(HERE, "../../src/main/resources/tiptoe/language/said.txt")
LONGEST = 11
PHRASE_TIMES = 3  # so that they are about a third of what is said


def stretches(sentence):
    """Chunks of a sentence, joined while they are short."""
    found = []
    for chunk in sentence.split(","):
        words = chunk.split()
        if found and len(found[-1].split()) + len(words) <= LONGEST:
            found[-1] += ", " + " ".join(words)
        elif words:
            found.append(" ".join(words))
    return [each for each in found if 2 <= len(each.replace(",", "").split()) <= LONGEST]


def main():
    kept_out = held_out_phrases()
    found = dict.fromkeys(each for each in phrases() if re.fullmatch(r"[a-z ,']+", each))
    for line in open(SAID, encoding="utf-8"):
        line = line.strip()
        if re.fullmatch(r"[a-z ,'?]+", line):
            found.update(dict.fromkeys(stretches(line.replace("?", ""))))
    said = set(phrases())
    for text in found:
        parts = {text.replace(",", ""), *(chunk.strip() for chunk in text.split(","))}
        if not parts & kept_out:
            for _ in range(PHRASE_TIMES if text in said else 1):
                print(text)


if __name__ == "__main__":
    main()
