#!/usr/bin/env bash
# Makes ready what the tests of a clock that jumps need: a library that shifts the clock of one process.
set -euo pipefail

as_root() {
  if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi
}

if ! ls /usr/lib/*/faketime/libfaketimeMT.so.1 >/dev/null 2>&1; then
  as_root apt-get update
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install --yes --no-install-recommends libfaketime
fi
