#!/usr/bin/env python3
"""Speaks what HearAll hears into a folder: one WAV and one text file a clip.

Of the utterance tables the half of the phrases that teaches nothing, by their SHA-256: 360 in the
voices that figures are reported on, held and fresh ones, 360 others in those that fit. The ward talk of chat.txt
by halves. Needs what clip.py needs for its voices.

usage: speak.py FOLDER
"""
import glob
import hashlib
import os
import random
import re
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(HERE, "../.."))
import clip

TABLES = os.path.join(HERE, "../../language/utterances/*.txt")

def respellings():
    """From a word to what flite and festival, and what espeak-ng, are given instead."""
    found = {}
    for line in open(os.path.join(HERE, "respell.txt"), encoding="utf-8"):
        if not line.startswith("#"):
            word, others, espeak = (part.strip() for part in line.split("|"))
            found[word] = [word if one == "-" else one for one in (others, espeak)]
    return found


RESPELLED = respellings()


def half(text):
    return "fit" if hashlib.sha256(text.encode()).digest()[0] % 2 == 0 else "held"


def phrases():
    found = {}
    for table in sorted(glob.glob(TABLES)):
        for line in open(table, encoding="utf-8"):
            said, arrow, meaning = line.strip().partition("=>")
            said = said.strip()
            plain = re.fullmatch(r"[a-z ,']+", said) and 2 <= len(said.split()) <= 12
            if arrow and meaning.strip() != "-" and plain:
                found[said] = None
    return list(found)


def speak(folder, number, voice, text):
    os.makedirs(folder, exist_ok=True)
    name = os.path.join(folder, f"{number:04d}-" + re.sub(r"[:+]", "_", voice))
    engine = 1 if voice.startswith("esp:") else 0
    said = re.sub(
        r"[a-z']+", lambda word: RESPELLED.get(word[0], [word[0]] * 2)[engine], text
    )
    clip.write(name, voice, said, 0.7)
    with open(name + ".txt", "w", encoding="utf-8") as out:
        out.write(text + "\n")


def main():
    root = sys.argv[1]
    halves = {"fit": [], "held": []}
    for phrase in phrases():
        halves[half(phrase)].append(phrase)
    shuffle = random.Random(7).shuffle
    for texts in halves.values():
        shuffle(texts)
    kept_out = halves["held"]
    parts = {"held": kept_out[:360], "fresh": kept_out[:360], "fit": kept_out[360:720]}
    for name, texts in parts.items():
        voices = clip.VOICES[name]
        for number, text in enumerate(texts):
            speak(f"{root}/{name}-phrases", number, voices[number % len(voices)], text)
    with open(os.path.join(HERE, "chat.txt"), encoding="utf-8") as chat:
        for number, text in enumerate(line.strip() for line in chat):
            voices = clip.VOICES[half(text)]
            for turn in range(2):
                voice = voices[(number + turn * 3) % len(voices)]
                speak(f"{root}/{half(text)}-chat", number, voice, text)


main()
