#!/usr/bin/env bash
# Gives the role of the standings its password and its rights, once the desk has made the tables.
set -euo pipefail
PGPASSWORD=$(cat /run/secrets/database_password)
export PGPASSWORD
psql --no-psqlrc --quiet --set=ON_ERROR_STOP=1 --file=/standings.sql
psql --no-psqlrc --quiet --set=ON_ERROR_STOP=1 --set=password="$(cat /run/secrets/standings_password)" <<'SQL'
ALTER ROLE standings PASSWORD :'password';
SQL
