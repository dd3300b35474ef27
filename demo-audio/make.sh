#!/usr/bin/env bash
# Speaks script.txt with flite and joins it to one WAV file (16 kHz, 16 bit, mono) and one text file
# for each part. Needs flite and sox, both in Debian.
set -euo pipefail
cd "$(dirname "$0")"
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
number=1000
# flite speaks American English and guesses the words it does not know; these it can say.
respell="s/centimetres/centimeters/; s/anus/aynus/; s/patent/paytent/; s/ortolani/orto lonny/
s/fontanelle/fontanell/"
rm -f ./*.wav ./[0-9]*.txt
while IFS='|' read -r part voice pause text; do
  case "$part" in '#'* | '') continue ;; esac
  number=$((number + 1))
  spoken=$(echo "$text" | sed "$respell")
  flite -voice "$voice" -t "$spoken" -o "$scratch/said.wav"
  sox "$scratch/said.wav" -r 16000 -b 16 -c 1 "$scratch/$part-$number.wav" norm -6 pad 0.2 "$pause"
  # Talk that is not for the record stands in parentheses.
  [ "$voice" = awb ] && text="($text)"
  echo "$text" >>"$part.txt"
done <script.txt
for text in [0-9]*.txt; do
  part=${text%.txt}
  # Room noise far below the voice: no microphone gives digital silence.
  sox "$scratch/$part"-*.wav "$scratch/joined.wav"
  length=$(soxi -D "$scratch/joined.wav")
  sox -R -n -r 16000 -b 16 -c 1 "$scratch/room.wav" synth "$length" pinknoise vol 0.002
  sox -R -m "$scratch/joined.wav" "$scratch/room.wav" -b 16 "$part.wav" vol 2
done
