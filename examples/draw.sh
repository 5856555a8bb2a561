#!/bin/sh
# Draws every example as SVG, PNG and PDF beside its text; or the patterns named, beside theirs.
#
#   sh examples/draw.sh [PATTERN.txt …]
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/examples/prepare.sh"
prepare "$for_drawing" "$top/.build" "-DWHORL_TESTS=OFF" whorl-command
[ $# -gt 0 ] || set -- "$top"/examples/*.txt
status=0
for pattern in "$@"; do
  name=${pattern%.*}
  for ending in svg png pdf; do
    "$top/.build/src/whorl" chart "$pattern" -o "$name.$ending" || status=$?
  done
  [ ! -e "$name.svg" ] || say "drew $name.svg, .png and .pdf"
done
exit $status
