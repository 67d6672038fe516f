# Sourced by the comparisons: npm_package FOLDER NAME VERSION puts a package of the npm registry into
# FOLDER; the script ends with 77 (skipped) when Node or the registry is not there.
npm_package() {
  command -v node >/dev/null && command -v npm >/dev/null || { echo "skipped: Node is not there"; exit 77; }
  mkdir -p "$1"
  [ ! -d "$1/node_modules/$2" ] || return 0
  echo '{"private": true}' >"$1/package.json"
  timeout 180 npm install --prefix "$1" --no-audit --no-fund "$2@$3" >"$1/npm.log" 2>&1 ||
    { echo "skipped: $2 $3 cannot be had from the npm registry"; exit 77; }
}
