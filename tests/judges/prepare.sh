#!/usr/bin/env bash
# Makes ready what the tests of tests/Evenstep.Service.Tests/Judges and Pages need: node, a browser, and the packages of the lock file.
set -euo pipefail
cd "$(dirname "$0")"

as_root() {
  if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi
}

missing=()
command -v node >/dev/null && command -v npm >/dev/null || missing+=(nodejs npm)
command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null || missing+=(chromium)
if [ "${#missing[@]}" -gt 0 ]; then
  as_root apt-get update
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install --yes --no-install-recommends "${missing[@]}"
fi

# npm writes this file at the end of every install.
installed=node_modules/.package-lock.json
if [ ! -f "$installed" ] || [ package-lock.json -nt "$installed" ]; then
  npm ci
  touch "$installed"
fi
