#!/bin/sh
# compare_units.sh WRITE_UNITS FOLDER: converts with every unit that is accepted, and has a reference
# library of UCUM convert the same. Ends with 77 (skipped) when Node or the npm registry is not there.
#
# 500 compounds beside all atoms and all units of the forms; STILE_TEST_SCALE multiplies them.
set -eu
write_units=$1
folder=$2
here=$(cd "$(dirname "$0")" && pwd)
version=7.1.10
command -v node >/dev/null && command -v npm >/dev/null || { echo "skipped: Node is not there"; exit 77; }
mkdir -p "$folder"
if [ ! -d "$folder/node_modules/@lhncbc/ucum-lhc" ]; then
  echo '{"private": true}' >"$folder/package.json"
  timeout 180 npm install --prefix "$folder" --no-audit --no-fund "@lhncbc/ucum-lhc@$version" >"$folder/npm.log" 2>&1 ||
    { echo "skipped: @lhncbc/ucum-lhc $version cannot be had from the npm registry"; exit 77; }
fi
"$write_units" $((500 * ${STILE_TEST_SCALE:-1})) "$folder/units.json"
cp "$here/units_reference.cjs" "$folder/"
node "$folder/units_reference.cjs" "$folder/units.json"
