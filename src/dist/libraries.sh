#!/bin/sh
# Copies the system's libraries that drawing a page needs beside those of the runtime, which look
# there first, so that a bare system can do without. Sound is left to the system: its library belongs
# to the drivers and settings of the machine.
set -e
cd "$1"
for own in libfontmanager.so liblcms.so libjavajpeg.so; do
  [ -f "$own" ] || continue
  LD_LIBRARY_PATH=.:server ldd "$own" | awk '$2 == "=>" && $3 ~ "^/" { print $3 }' |
    while read -r library; do
      name=$(basename "$library")
      case "$name" in
        libc.so* | libm.so* | libdl.so* | libpthread.so* | librt.so* | libstdc++.so* | libgcc_s.so*) ;;
        *) [ -e "$name" ] || cp -L "$library" "$name" ;;
      esac
    done
done
# The symbols of the virtual machine serve who debugs it; 4 MB.
if command -v strip >/dev/null; then
  strip --strip-unneeded server/libjvm.so
fi
