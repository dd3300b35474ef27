#!/bin/sh
# Keeps the loaded classes of the program in a file beside it, which the next starts read instead of
# loading them one by one. Java checks that file against the place and the jars it was made for, and
# does without where they differ; so this is run where the program is to stay.
set -e
app=$(cd "$(dirname "$0")" && pwd -P)
java=$app/../runtime/bin/java
path=$(sed -n "s#^app.classpath=\$APPDIR#$app#p" "$app/tiptoe.cfg" | paste -sd: -)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$java" -XX:ArchiveClassesAtExit="$work/tiptoe.jsa" -XX:+UseSerialGC -Xlog:disable \
  -Djna.library.path="$app/native" -Djna.boot.library.path="$app/native" \
  -Djava.awt.headless=true -cp "$path" tiptoe.cli.Tiptoe \
  exam --from "$app/demo-audio/05-hips.wav" --fast --plain --keep-audio never --data "$work/data" \
  >/dev/null 2>&1
mv -f "$work/tiptoe.jsa" "$app/tiptoe.jsa"
chmod 644 "$app/tiptoe.jsa"
