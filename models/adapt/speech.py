#!/usr/bin/env python3
"""Speaks the synthetic part of the training speech into a folder: 16 kHz mono WAV files.

Phrases come from the utterance tables, only those whose SHA-256 puts them into the half that limits
are fitted on (`fit/speak.py`), so that phrases held out there are not learnt here. Ordinary sentences
come from the text files given. No voice named in HELD_OUT speaks.

Needs flite, festival with the voices kal_diphone and ked_diphone, espeak-ng and sox.

usage: speech.py FOLDER MINUTES SEED TEXT...
"""
import glob
import hashlib
import os
import random
import re
import subprocess
import sys
import wave

HERE = os.path.dirname(os.path.abspath(__file__))
TABLES = os.path.join(HERE, "../../src/test/resources/tiptoe/language/utterances/*.txt")

# The voices of the halves and clips that figures are reported on; never trained on.
HELD_OUT = {
    "flite:awb", "flite:slt", "esp:en-us+f3", "esp:en-gb-x-rp", "esp:en-gb-scotland",
    "esp:mb-en1", "esp:mb-us1", "esp:mb-us2", "esp:mb-us3", "pico:en-GB", "pico:en-US",
}

ACCENTS = ["en-us", "en-gb", "en-029", "en-us-nyc", "en-gb-x-gbclan", "en-gb-x-gbcwmd"]
VARIANTS = """Alex Alicia Andrea Andy Annie Denis Diogo Gene Henrique Hugo Jacky Lee Marco Mario Michael Mike
adam anika antonio belinda benjamin boris caleb david ed edward f1 f2 f4 f5 grandma grandpa iven iven2 iven3
john linda m1 m2 m3 m4 m5 m6 m7 m8 marcelo max michel miguel norbert pablo paul pedro quincy rob robert sandro
shelby steph steph2 steph3 travis victor zac""".split()
OTHERS = ["flite:rms", "flite:rms", "flite:kal16", "flite:kal", "fest:kal_diphone", "fest:ked_diphone"]
SHARE_OF_OTHERS = 0.45


def is_fitted(text):
    """Whether a text is of the half that may be learnt from."""
    return hashlib.sha256(text.encode()).digest()[0] % 2 == 0


def all_phrases():
    found = {}
    for table in sorted(glob.glob(TABLES)):
        for line in open(table, encoding="utf-8"):
            said, arrow, meaning = line.strip().partition("=>")
            said = said.strip()
            if arrow and meaning.strip() != "-" and len(said.split()) >= 2:
                found[said] = None
    return list(found)


def phrases():
    return [each for each in all_phrases() if is_fitted(each)]


def held_out_phrases():
    return {each for each in all_phrases() if not is_fitted(each)}


def sentences(files):
    found = {}
    for name in files:
        text = re.sub(r"\s+", " ", open(name, encoding="utf-8", errors="ignore").read())
        for one in re.split(r"(?<=[.?!]) |%", text):
            if re.fullmatch(r"[A-Z][A-Za-z,;' -]{25,140}[.?!]", one):
                found[one] = None
    return list(found)


def speak(voice, text, raw, pace, pitch):
    engine, _, name = voice.partition(":")
    if engine == "esp":
        subprocess.run(
            ["espeak-ng", "-v", name, "-s", str(pace), "-p", str(pitch), "-w", raw, text], check=True
        )
    elif engine == "flite":
        stretch = f"duration_stretch={150 / pace:.2f}"
        subprocess.run(["flite", "-voice", name, "--setf", stretch, "-t", text, "-o", raw], check=True)
    else:
        subprocess.run(
            ["text2wave", "-eval", f"(voice_{name})", "-o", raw], input=text.encode(), check=True
        )


def main():
    folder, minutes, seed = sys.argv[1], float(sys.argv[2]), int(sys.argv[3])
    os.makedirs(folder, exist_ok=True)
    rng = random.Random(seed)
    kinds = [phrases(), sentences(sys.argv[4:])]
    print("phrases", len(kinds[0]), "sentences", len(kinds[1]))
    seconds = 0.0
    number = 0
    while seconds < minutes * 60:
        if rng.random() < SHARE_OF_OTHERS:
            voice = rng.choice(OTHERS)
        else:
            voice = f"esp:{rng.choice(ACCENTS)}+{rng.choice(VARIANTS)}"
        assert voice not in HELD_OUT
        phrase = rng.random() < 0.55
        text = ", ".join(rng.sample(kinds[0], 3)) if phrase else rng.choice(kinds[1])
        base = os.path.join(folder, f"{number:04d}-" + re.sub(r"[:+]", "_", voice))
        speak(voice, text, base + ".raw.wav", rng.randint(120, 185), rng.randint(30, 70))
        subprocess.run(
            ["sox", "-R", base + ".raw.wav", "-r", "16000", "-b", "16", "-c", "1", base + ".wav"]
            + ["norm", str(-3 - rng.randint(0, 9))],
            check=True,
        )
        os.remove(base + ".raw.wav")
        with wave.open(base + ".wav") as made:
            seconds += made.getnframes() / 16000
        number += 1
    print("clips", number, "minutes", round(seconds / 60, 1))


if __name__ == "__main__":
    main()
