#!/usr/bin/env python3
"""Speaks the natural sentences of an author into a folder: one WAV and one text file a sentence.

The text file holds the sentence and what it states. Each sentence is said by one of the voices in
turn. Needs flite, espeak-ng and sox.

usage: speak.py AUTHOR FOLDER
"""
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(HERE, "../.."))
import clip

VOICES = ["flite:rms", "flite:slt", "flite:awb", "flite:kal", "esp:en-us"]


def main():
    author, folder = sys.argv[1:]
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(HERE, author + ".txt"), encoding="utf-8") as rows:
        said = [row.strip() for row in rows if row.strip() and not row.startswith("#")]
    for number, row in enumerate(said):
        voice = VOICES[number % len(VOICES)]
        name = os.path.join(folder, f"{number:03d}-" + voice.replace(":", "_"))
        clip.write(name, voice, row.split("=>")[0].strip(), 1.2)
        with open(name + ".txt", "w", encoding="utf-8") as out:
            out.write(row + "\n")


main()
