#!/usr/bin/env bash
# Every night one dump; the newest fourteen are kept.
set -euo pipefail
PGPASSWORD=$(cat /run/secrets/database_password)
export PGPASSWORD
while true; do
    if bash /backup.sh "/backups/tallyhost-$(date -u +%Y-%m-%dT%H%MZ).dump"; then
        find /backups -name '*.dump' | sort --reverse | tail -n +15 | xargs --no-run-if-empty rm --
    else
        echo "the backup of $(date -u +%Y-%m-%d) failed" >&2
    fi
    sleep "$(( $(date -u -d 'tomorrow 03:00' +%s) - $(date -u +%s) ))" &
    wait $!
done
