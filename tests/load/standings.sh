#!/usr/bin/env bash
# Measures the read service against nginx with the same bytes, in one run on the loopback.
# Arguments go to standings.py.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

. tests/load/measure.sh

measure standings nginx-light wrk -- "$@"
