#!/usr/bin/env python3
"""Speaks texts for `dictation.py` into a folder: 16 kHz mono WAV files and `spoken.tsv`, a name and a text a line.

No voice that figures are reported on speaks: see HELD_OUT in speech.py. MBROLA's diphones here are those of other
languages, speaking English; the check's voices speak into FOLDER-check and teach nothing.

Needs what speech.py needs, festival's rab_diphone, espeak-ng's mbrola with the voices named below, RHVoice with
its English voices.

usage: dictate.py FOLDER COUNT SEED TEXTS RESPELLED
"""
import concurrent.futures
import os
import random
import re
import subprocess
import sys

from speech import ACCENTS, HELD_OUT, VARIANTS

MBROLA = "af1 de2 fr1 fr4 gr2 pl1 sw2".split()
RHVOICE = ["alan", "bdl"]
CHECK = ["rhv:clb", "esp:mb-hu1-en"]
SHARES = {"rhvoice": 0.27, "mbrola": 0.29, "flite": 0.12, "festival": 0.12, "espeak": 0.20}


def respellings(file):
    """From a word to what the other voices, and what espeak-ng, are given instead."""
    found = {}
    for line in open(file, encoding="utf-8"):
        if not line.startswith("#"):
            word, others, espeak = (part.strip() for part in line.split("|"))
            found[word] = [word if one == "-" else one for one in (others, espeak)]
    return found


def voice_of(chance):
    kind = chance.choices(list(SHARES), list(SHARES.values()))[0]
    if kind == "rhvoice":
        return "rhv:" + chance.choice(RHVOICE)
    if kind == "mbrola":
        return f"esp:mb-{chance.choice(MBROLA)}-en"
    if kind == "flite":
        return chance.choice(["flite:rms", "flite:rms", "flite:kal16"])
    if kind == "festival":
        return "fest:rab_diphone"
    return f"esp:{chance.choice(ACCENTS)}+{chance.choice(VARIANTS)}"


def speak(name, voice, text, pace, pitch, gain):
    engine, _, kind = voice.partition(":")
    raw = name + ".raw.wav"
    if engine == "rhv":
        words = ["RHVoice-test", "-p", kind, "-r", str(round(100 * pace / 150)), "-o", raw]
        subprocess.run(words, input=text.encode(), check=True)
    elif engine == "esp":
        subprocess.run(["espeak-ng", "-v", kind, "-s", str(pace), "-p", str(pitch), "-w", raw, text], check=True)
    elif engine == "fest":
        eval_ = f"(begin (voice_{kind}) (Parameter.set 'Duration_Stretch {150 / pace:.2f}))"
        subprocess.run(["text2wave", "-eval", eval_, "-o", raw], input=text.encode(), check=True)
    else:
        stretch = f"duration_stretch={150 / pace:.2f}"
        subprocess.run(["flite", "-voice", kind, "--setf", stretch, "-t", text, "-o", raw], check=True)
    ends = ["silence", "1", "0.01", "0.5%", "reverse"]
    subprocess.run(
        ["sox", "-R", raw, "-r", "16000", "-b", "16", "-c", "1", name + ".wav", "norm", str(gain)] + ends + ends,
        check=True,
    )
    os.remove(raw)


def main():
    folder, count, seed, texts, respelled = sys.argv[1:]
    chance = random.Random(int(seed))
    with open(texts, encoding="utf-8") as lines:
        texts = [line.strip() for line in lines]
    instead = respellings(respelled)
    with concurrent.futures.ThreadPoolExecutor() as pool:
        for into, number in ((folder, int(count)), (folder + "-check", 200)):
            os.makedirs(into, exist_ok=True)
            jobs = []
            for k in range(number):
                voice = chance.choice(CHECK) if into != folder else voice_of(chance)
                assert voice not in HELD_OUT
                text = chance.choice(texts)
                engine = 1 if voice.startswith("esp:") else 0
                said = re.sub(r"[a-z']+", lambda w: instead.get(w[0], [w[0]] * 2)[engine], text)
                name = f"{k:05d}-" + re.sub(r"[:+]", "_", voice)
                options = chance.randint(125, 180), chance.randint(35, 65), -3 - chance.randint(0, 9)
                jobs.append((name, text, pool.submit(speak, os.path.join(into, name), voice, said, *options)))
            with open(os.path.join(into, "spoken.tsv"), "w", encoding="utf-8") as out:
                for name, text, job in jobs:
                    if job.exception():
                        print(name, job.exception(), file=sys.stderr)
                    else:
                        out.write(f"{name}\t{text}\n")


if __name__ == "__main__":
    main()
