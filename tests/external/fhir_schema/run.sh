#!/bin/sh
# Shipped questionnaires and produced responses, blank and answered, against the official R4 JSON Schema
# and a second validator. Usage: run.sh BUILD_FOLDER ANSWERS_TEST. Exits 77 (skipped) where node or the
# package registry is not to be had.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
top=$(cd "$here/../../.." && pwd)
build=$1
answers_test=$2
packages=$build/fhir_schema
produced=$build/produced_responses

if ! command -v node >/dev/null || ! command -v npm >/dev/null; then
  echo "skipped: node and npm are not installed"
  exit 77
fi
mkdir -p "$packages" "$produced"
if ! cmp -s "$here/package.json" "$packages/package.json" || [ ! -d "$packages/node_modules/fhir" ]; then
  cp "$here/package.json" "$packages/package.json"
  if ! (cd "$packages" && timeout 240 npm install --ignore-scripts --no-audit --no-fund --silent); then
    rm -f "$packages/package.json"
    echo "skipped: the package registry cannot be reached"
    exit 77
  fi
fi
rm -f "$produced"/*.json
STILE_PRODUCED=$produced "$answers_test" "Shipped forms*"
node "$here/check.js" "$packages" "$top"/questionnaires/*.json "$top"/tests/cases/responses/*.json "$produced"/*.json
