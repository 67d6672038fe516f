#!/bin/sh
# Installs what is missing of src/packages.txt. Arguments: the purposes wanted (build test run).
# Quick when nothing is missing: it then asks no package server.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
missing=
while read -r package purpose; do
  case "$package" in '' | '#'*) continue ;; esac
  case " $* " in *" $purpose "*) ;; *) continue ;; esac
  status=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
  [ "$status" = installed ] || missing="$missing $package"
done <"$here/packages.txt"
[ -n "$missing" ] || exit 0
as_root=
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null 2>&1 || {
    echo "These packages are missing:$missing. Run this as root, or install sudo." >&2
    exit 4
  }
  as_root=sudo
fi
echo "Installing:$missing"
export DEBIAN_FRONTEND=noninteractive
$as_root apt-get update -q >/dev/null
# shellcheck disable=SC2086
$as_root apt-get install -y -q --no-install-recommends $missing >/dev/null
