#!/bin/sh
# compare_units.sh WRITE_UNITS FOLDER: converts with every unit that is accepted, and has a reference
# library of UCUM convert the same. Ends with 77 (skipped) when Node or the npm registry is not there.
#
# 500 compounds beside all atoms and all units of the forms; STILE_TEST_SCALE multiplies them.
set -eu
write_units=$1
folder=$2
here=$(cd "$(dirname "$0")" && pwd)
. "$here/npm_package.sh"
npm_package "$folder" @lhncbc/ucum-lhc 7.1.10
"$write_units" $((500 * ${STILE_TEST_SCALE:-1})) "$folder/units.json"
cp "$here/units_reference.cjs" "$folder/"
node "$folder/units_reference.cjs" "$folder/units.json"
