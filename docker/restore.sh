#!/usr/bin/env bash
# Puts a dump in the place of all that is in the database that libpq's environment names, or nothing at
# all where that fails. No server may be running on it.
#
# What was acknowledged after the dump is lost, and with it the newest versions of seasons. Readers have
# seen those and take nothing older: every version rises far above.
set -euo pipefail
dump=${1:?the dump to read}
{
    echo 'begin;'
    pg_restore --clean --if-exists --file=- "$dump"
    echo 'update public.seasons set version = version + 1000000;'
    echo 'commit;'
} | psql --no-psqlrc --quiet --output=/dev/null --set=ON_ERROR_STOP=1
