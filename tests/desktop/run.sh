#!/bin/sh
# Drives the desk in a real window: its own display, window manager and session bus. Arguments: the
# program, a folder to work in, and the walk (a Python file of this folder). Reports itself as skipped
# where one of the tools is missing.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
program=$1 work=$2 walk=$3
for tool in xvfb-run openbox xdotool dbus-run-session; do
  command -v "$tool" >/dev/null 2>&1 || {
    echo "skipped: $tool is missing"
    exit 77
  }
done
/usr/bin/python3 -c 'import gi; gi.require_version("Atspi", "2.0")' 2>/dev/null || {
  echo "skipped: the accessibility library is missing"
  exit 77
}
rm -rf "$work"
mkdir -p "$work/run"
chmod 700 "$work/run"
export HOME="$work" XDG_CONFIG_HOME="$work/config" XDG_DATA_HOME="$work/data" XDG_RUNTIME_DIR="$work/run"
export GDK_BACKEND=x11 GTK_MODULES= LC_ALL=C.UTF-8
unset NO_AT_BRIDGE || true
exec xvfb-run -a -s "-screen 0 ${SCREEN:-1280x800}x24" dbus-run-session -- sh -c '
  openbox --sm-disable >/dev/null 2>&1 & manager=$!
  /usr/bin/python3 "$1" "$2" "$3"; status=$?
  kill $manager 2>/dev/null
  exit $status' sh "$here/$walk" "$program" "$work"
