#!/usr/bin/env bash
# Measures the read service against nginx with the same bytes, in one run on the loopback.
# Arguments go to standings.py.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.." || exit 1

. demo/need.sh

need_rust
need build-essential nginx-light postgresql python3 wrk
cargo build --locked --quiet --release -p tallyhost
exec python3 tests/load/standings.py "$@"
