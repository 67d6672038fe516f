#!/bin/sh
# compare.sh WRITE_CASES FOLDER: generates expressions with Stile's answers, has the reference engine
# answer the same ones, and tells the differences by class. Ends with 77 (skipped) when Node or the npm
# registry is not there.
#
# 1,000 expressions; STILE_TEST_SCALE multiplies them (20 makes the 20,000 of a long run). Seed: case_writer.h.
set -eu
write_cases=$1
folder=$2
here=$(cd "$(dirname "$0")" && pwd)
. "$here/npm_package.sh"
npm_package "$folder" fhirpath 5.2.2
"$write_cases" $((1000 * ${STILE_TEST_SCALE:-1})) "$folder/cases.json"
cp "$here/reference.cjs" "$here/difference_classes.cjs" "$folder/"
# The reference engine takes moments without an offset to be in its own zone; Stile is told UTC.
TZ=UTC node "$folder/reference.cjs" "$folder/cases.json"
