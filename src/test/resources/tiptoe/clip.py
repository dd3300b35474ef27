"""Says a text by a synthetic voice and writes it as a WAV of 16 kHz.

Needs flite, espeak-ng, festival's text2wave, pico2wave or what the voices asked for are of, and sox.
"""

import os
import subprocess

# Limits and weights of decisions are fitted on "fit", figures are reported on "held" and "fresh". What teaches
# the acoustic model is of none of them (models/adapt/speech.py, dictate.py; kal and ked taught crying alone), and
# nothing was ever fitted to the kinds of voices that are fresh: a small statistical synthesiser and diphones.
VOICES = {
    "fit": [
        "flite:kal", "rhv:clb", "esp:mb-hu1-en", "fest:ked_diphone", "fest:don_diphone", "esp:mb-ro1-en",
    ],
    "held": [
        "flite:awb", "flite:slt", "esp:en-us+f3", "esp:en-gb-x-rp", "esp:en-gb-scotland",
        "fest:cmu_us_slt_arctic_hts",
    ],
    "fresh": [
        "pico:en-GB", "esp:mb-en1", "pico:en-US", "esp:mb-us1", "esp:mb-us2", "esp:mb-us3",
    ],
}


def write(name, voice, text, tail):
    """Writes name.wav; voice is an engine and its voice such as esp:en-us, tail is silence in s."""
    engine, _, voice_name = voice.partition(":")
    raw = name + ".raw.wav"
    if engine == "flite":
        subprocess.run(["flite", "-voice", voice_name, "-t", text, "-o", raw], check=True)
    elif engine == "esp":
        subprocess.run(["espeak-ng", "-v", voice_name, "-s", "150", "-w", raw, text], check=True)
    elif engine == "rhv":
        subprocess.run(["RHVoice-test", "-p", voice_name, "-o", raw], input=text.encode(), check=True)
    elif engine == "pico":
        subprocess.run(["pico2wave", "-l", voice_name, "-w", raw, text], check=True)
    else:
        voiced = ["text2wave", "-eval", f"(voice_{voice_name})", "-o", raw]
        subprocess.run(voiced, input=text.encode(), check=True)
    ends = ["silence", "1", "0.01", "0.5%", "reverse"]
    subprocess.run(
        ["sox", "-R", raw, "-r", "16000", "-b", "16", "-c", "1", name + ".wav", "norm", "-6"]
        + ends + ends + ["pad", "0.3", str(tail)],
        check=True,
    )
    os.remove(raw)
