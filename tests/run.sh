#!/bin/sh
# Installs what is missing, builds everything and runs the tests.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/examples/prepare.sh"
prepare "$for_testing" "$top/.build-tests" "-DWHORL_TESTS=ON" all
say "testing"
ctest --test-dir "$top/.build-tests" --output-on-failure -j "$(nproc)"
