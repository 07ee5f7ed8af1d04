#!/usr/bin/env bash
# Measures 10,000 subscribers of one process: memory, and how soon a change has reached them all.
# Arguments go to events.py.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

. tests/load/measure.sh

measure events -- "$@"
