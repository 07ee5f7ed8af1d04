#!/usr/bin/env bash
# Copies the primary at the first start, then follows it.
set -euo pipefail
export PGDATA=/var/lib/postgresql/data
if [ ! -s "$PGDATA/PG_VERSION" ]; then
    rm -rf "${PGDATA:?}"/*
    PGPASSWORD=$(cat /run/secrets/replication_password) pg_basebackup --pgdata="$PGDATA" \
        --host=primary --username=replica --slot=replica --write-recovery-conf --checkpoint=fast
    chmod 0700 "$PGDATA"
fi
# A dump may take longer than the usual half minute that a replica waits for a query; the primary keeps
# what the dump still reads, so that nobody else waits for it. A line that is silent is noticed soon.
exec postgres -c hot_standby=on -c max_standby_streaming_delay=300s -c hot_standby_feedback=on \
    -c wal_receiver_timeout=10s
