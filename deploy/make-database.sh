#!/usr/bin/env bash
# Run once by the postgres image on an empty volume: the app's own role, neither superuser nor exempt from row-level security.
set -euo pipefail
# The password is read by psql itself, so that it stands on no command line.
psql --username "${POSTGRES_USER:-postgres}" --set ON_ERROR_STOP=1 <<'SQL'
\set password `cat /run/secrets/clubcycle_password`
create role clubcycle login nosuperuser nobypassrls password :'password';
create database clubcycle owner clubcycle;
\connect clubcycle
create extension btree_gist;
SQL
