#!/usr/bin/env bash
# One dump of the database that libpq's environment names, into the file given. It is whole before it
# gets its name. The database may be a replica.
set -euo pipefail
name=${1:?the file to write}
trap 'rm -f "$name.part"' EXIT
pg_dump --format=custom --file="$name.part"
mv "$name.part" "$name"
