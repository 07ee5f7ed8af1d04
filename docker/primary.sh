#!/usr/bin/env bash
# Runs once, when the primary's cluster is made: lets the replica follow it.
set -euo pipefail
psql --username "$POSTGRES_USER" --dbname "$POSTGRES_DB" --set ON_ERROR_STOP=1 \
    --set password="$(cat /run/secrets/replication_password)" <<'SQL'
CREATE ROLE replica LOGIN REPLICATION PASSWORD :'password';
CREATE ROLE standings LOGIN;
SELECT pg_create_physical_replication_slot('replica');
SQL
echo "host replication replica all scram-sha-256" >>"$PGDATA/pg_hba.conf"
