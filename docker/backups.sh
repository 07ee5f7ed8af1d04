#!/usr/bin/env bash
# Every night one dump; the newest fourteen are kept. A dump is whole before it gets its name.
set -euo pipefail
PGPASSWORD=$(cat /run/secrets/database_password)
export PGPASSWORD
while true; do
    name=/backups/tallyhost-$(date -u +%Y-%m-%dT%H%MZ).dump
    if pg_dump --host=primary --username=tallyhost --format=custom --file="$name.part" tallyhost; then
        mv "$name.part" "$name"
        find /backups -name '*.dump' | sort --reverse | tail -n +15 | xargs --no-run-if-empty rm --
    else
        echo "the backup of $(date -u +%Y-%m-%d) failed" >&2
        rm -f "$name.part"
    fi
    sleep "$(( $(date -u -d 'tomorrow 03:00' +%s) - $(date -u +%s) ))" &
    wait $!
done
