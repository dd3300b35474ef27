#!/bin/sh
# Packs a Debian package again with the links that jpackage has copied; run under fakeroot.
set -e
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dpkg-deb -R "$1" "$work/tree"
sh "$2" "$3" "$work/tree/opt/tiptoe/lib/app/models"
size=$(du -k --apparent-size -s "$work/tree/opt" | cut -f1)
sed -i "s/^Installed-Size:.*/Installed-Size: $size/" "$work/tree/DEBIAN/control"
# the voice of spoken answers; nothing else needs it
sed -i "/^Maintainer:/a Recommends: espeak-ng" "$work/tree/DEBIAN/control"
dpkg-deb -b "$work/tree" "$work/packed.deb" >/dev/null
mv -f "$work/packed.deb" "$1"
