#!/bin/sh
# Puts links in place of what the folders of decoding graphs share with the model: jpackage copies
# what links name, three times 24 MB.
set -e
cd "$1"
model=$(echo vosk-model-*)
for file in $(find built-* -type f -path '*/*/*'); do
  same=$model/${file#*/}
  if [ -f "$same" ] && cmp -s "$file" "$same"; then
    ln -sfr "$same" "$file"
  fi
done
