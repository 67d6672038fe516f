#!/bin/sh
# Sets Stile up and shows it at work: installs what is missing, builds, screens one invented
# client and says where the papers lie. Run it as root or with sudo at hand: sh src/start.sh
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
cd "$top"
sh src/install-packages.sh build run
[ -f build/release/build.ninja ] || cmake --preset release >build-release.log 2>&1 || {
  cat build-release.log >&2
  exit 3
}
rm -f build-release.log
echo "Building (the first time takes a few minutes) …"
cmake --build --preset release -- --quiet
build/release/bin/stile papers tests/cases/responses/maren-oakshott.json --date 2026-11-25 \
  --settings tests/data/tarnside-settings.json --client "Maren Oakshott" --into papers
# The desk opens where there is a screen to open it on.
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec build/release/bin/stile-desk
fi
