#!/usr/bin/env python3
"""Speaks natural sentences into a folder, for HearAll: a WAV, a text and a key a sentence.

The text file holds the sentence with what it states, the key what it states alone. What states
nothing (=> -) is spoken into FOLDER-talk, without either. Each sentence is said by one of the
voices of clip.py in turn. Needs what that needs for them; Pico and MBROLA are under Debian's non-free.

usage: speak.py fit|held|fresh FOLDER AUTHOR.txt…
"""
import concurrent.futures
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(HERE, "../.."))
import clip


def rows(file):
    with open(file, encoding="utf-8") as lines:
        return [line.strip() for line in lines if line.strip() and not line.startswith("#")]


def speak(folder, number, voice, author, row):
    said, arrow, key = (part.strip() for part in row.partition("=>"))
    talk = not arrow or key in ("-", "none")
    into = folder + "-talk" if talk else folder
    os.makedirs(into, exist_ok=True)
    name = os.path.join(into, f"{author}-{number:03d}-" + voice.replace(":", "_").replace("+", "_"))
    clip.write(name, voice, said, 1.2)
    if not talk:
        for ending, text in ((".txt", row), (".key", key)):
            with open(name + ending, "w", encoding="utf-8") as out:
                out.write(text + "\n")


def main():
    half, folder, *authors = sys.argv[1:]
    voices = clip.VOICES[half]
    with concurrent.futures.ThreadPoolExecutor() as pool:
        for file in authors:
            author = os.path.basename(file).removesuffix(".txt").replace("-", "")
            for number, row in enumerate(rows(file)):
                voice = voices[number % len(voices)]
                pool.submit(speak, folder, number, voice, author, row).add_done_callback(
                    lambda done: done.result()
                )


main()
