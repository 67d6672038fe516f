#!/bin/sh
# Installs what is missing, builds, runs all tests. `--long` runs the same tests with larger
# counts. Ends with one line: N passed, N failed, N skipped.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
cd "$top"
STILE_TEST_SCALE=1
[ "${1:-}" = --long ] && STILE_TEST_SCALE=20
export STILE_TEST_SCALE
sh src/install-packages.sh build test run
cmake --preset run >/dev/null
cmake --build --preset run
status=0
ctest --preset run --output-junit "$top/build/run/results.xml" || status=$?
python3 tests/closing_line.py build/run/results.xml
exit $status
