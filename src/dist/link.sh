#!/bin/sh
# Lays a folder of models anew with its links, relative to each other: link.sh FROM TO. jpackage copies
# what a link to a file names, 24 MB for each graph, and makes an empty folder of a link to one.
set -e
rm -rf "$2"
cp -a "$1" "$2"
from=$(realpath "$1")
to=$(realpath "$2")
find "$to" -type l -lname '/*' | while read -r link; do
  named=$(realpath "$link")
  case "$named" in
    "$from"/*) ln -sfr "$to/${named#"$from"/}" "$link" ;;
    *) echo "$link names $named, which is not of the folder" >&2; exit 1 ;;
  esac
done
