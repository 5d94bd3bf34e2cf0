#!/usr/bin/env bash
# Run once by the postgres image on an empty volume: the app's own role, neither superuser nor exempt from row-level security.
set -euo pipefail
psql --username "$POSTGRES_USER" --set ON_ERROR_STOP=1 --set password="$CLUBCYCLE_DATABASE_PASSWORD" <<'SQL'
create role clubcycle login nosuperuser nobypassrls password :'password';
create database clubcycle owner clubcycle;
\connect clubcycle
create extension btree_gist;
SQL
