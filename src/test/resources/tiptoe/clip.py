"""Says a text by a synthetic voice and writes it as a WAV of 16 kHz.

Needs flite, espeak-ng, festival's text2wave, pico2wave or what the voices asked for are of, and sox.
"""

import os
import subprocess


def write(name, voice, text, tail):
    """Writes name.wav; voice is an engine and its voice such as esp:en-us, tail is silence in s."""
    engine, _, voice_name = voice.partition(":")
    raw = name + ".raw.wav"
    if engine == "flite":
        subprocess.run(["flite", "-voice", voice_name, "-t", text, "-o", raw], check=True)
    elif engine == "esp":
        subprocess.run(["espeak-ng", "-v", voice_name, "-s", "150", "-w", raw, text], check=True)
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
