#!/usr/bin/env bash
# Measures 2,000 players who seal lists before a deadline, against bare inserts of the same rows.
# Arguments go to rush.py.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

. tests/load/measure.sh

measure rush -- "$@"
