#!/usr/bin/env bash
# Speaks each text here, one clip a file, with Debian's flite (slt, rms) and espeak-ng (en-us, en-gb) in
# turn: 16 kHz, 16 bit, mono. Needs flite, espeak-ng and sox. The words flite guesses wrong are
# respelled for it; the text stays as it is.
set -euo pipefail
cd "$(dirname "$0")"
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
respell="s/centimetres/centimeters/; s/anus/aynus/; s/patent/paytent/; s/ortolani/orto lonny/
s/fontanelle/fontanell/; s/millimetres/millimeters/"
rm -f ./*.wav
for file in [0-9]*.txt; do
  name=${file%.txt}
  text=$(cat "$file")
  case $((10#$name % 4)) in
    0) flite -voice slt -t "$(echo "$text" | sed "$respell")" -o "$scratch/a.wav" ;;
    1) espeak-ng -v en-us -s 150 -w "$scratch/a.wav" "$text" ;;
    2) flite -voice rms -t "$(echo "$text" | sed "$respell")" -o "$scratch/a.wav" ;;
    3) espeak-ng -v en-gb -s 150 -w "$scratch/a.wav" "$text" ;;
  esac
  sox -R "$scratch/a.wav" -r 16000 -b 16 -c 1 "$name.wav" norm -6 silence 1 0.01 0.5% reverse \
    silence 1 0.01 0.5% reverse pad 0.2 0.4
done
