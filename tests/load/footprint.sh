#!/usr/bin/env bash
# Measures the memory of one process that serves 1,000 seasons, and its start.
# Arguments go to footprint.py.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

. tests/load/measure.sh

measure footprint wrk -- "$@"
