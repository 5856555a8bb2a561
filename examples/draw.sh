#!/bin/sh
# Draws every example as SVG, PNG and PDF beside its text, and steps of the hazelnut; or the patterns named,
# beside theirs.
#
#   sh examples/draw.sh [PATTERN.txt …]
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/examples/prepare.sh"
prepare "$for_drawing" "$top/.build" "-DWHORL_TESTS=OFF" whorl-command
status=0
if [ $# -eq 0 ]; then
  set -- "$top"/examples/*.txt
  for language in es ru ja; do # one chart in other languages
    "$top/.build/src/whorl" chart "$top/examples/acorn.txt" --language $language -o "$top/examples/acorn-$language.svg"
  done
  "$top/.build/src/whorl" steps "$top/examples/hazelnut.txt" --rounds 2-4 --strip "$top/examples/hazelnut-steps.svg"
fi
for pattern in "$@"; do
  name=${pattern%.*}
  for ending in svg png pdf; do
    "$top/.build/src/whorl" chart "$pattern" -o "$name.$ending" || status=$?
  done
  [ ! -e "$name.svg" ] || say "drew $name.svg, .png and .pdf"
done
exit $status
