#!/usr/bin/env python3
"""Speaks the natural sentences of an author into a folder: one WAV and one text file a sentence.

The text file holds the sentence and what it states. Each sentence is said by one of the voices in
turn. Needs flite, espeak-ng and sox.

usage: speak.py AUTHOR FOLDER
"""
import os
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
VOICES = ["flite:rms", "flite:slt", "flite:awb", "flite:kal", "esp:en-us"]


def speak(name, voice, text):
    engine, _, voice_name = voice.partition(":")
    raw = name + ".raw.wav"
    if engine == "flite":
        subprocess.run(["flite", "-voice", voice_name, "-t", text, "-o", raw], check=True)
    else:
        subprocess.run(["espeak-ng", "-v", voice_name, "-s", "150", "-w", raw, text], check=True)
    ends = ["silence", "1", "0.01", "0.5%", "reverse"]
    subprocess.run(
        ["sox", "-R", raw, "-r", "16000", "-b", "16", "-c", "1", name + ".wav", "norm", "-6"]
        + ends + ends + ["pad", "0.3", "1.2"],
        check=True,
    )
    os.remove(raw)


def main():
    author, folder = sys.argv[1:]
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(HERE, author + ".txt"), encoding="utf-8") as rows:
        said = [row.strip() for row in rows if row.strip() and not row.startswith("#")]
    for number, row in enumerate(said):
        voice = VOICES[number % len(VOICES)]
        name = os.path.join(folder, f"{number:03d}-" + voice.replace(":", "_"))
        speak(name, voice, row.split("=>")[0].strip())
        with open(name + ".txt", "w", encoding="utf-8") as out:
            out.write(row + "\n")


main()
