#!/usr/bin/env bash
# Run by the postgres image on an empty volume, and again by hand when docs/operations.md says so: a role that owns the database, one for the app and one for backups, none
# superuser or exempt from row-level security. What the other two may do the owner says: ClubCycle.Web migrate.
set -euo pipefail
# Passwords are read by psql itself, so that they stand on no command line.
export SECRETS=${SECRETS:-/run/secrets}
psql --username "${POSTGRES_USER:-postgres}" --dbname postgres --no-psqlrc --set ON_ERROR_STOP=1 <<'SQL'
\set owner_password `cat "$SECRETS/clubcycle_password"`
\set app_password `cat "$SECRETS/clubcycle_app_password"`
\set backup_password `cat "$SECRETS/clubcycle_backup_password"`
select format('create role %I', name) from unnest(array['clubcycle', 'clubcycle_app', 'clubcycle_backup']) name where not exists (select from pg_roles where rolname = name) \gexec
alter role clubcycle login nosuperuser nocreatedb nocreaterole noreplication nobypassrls password :'owner_password';
alter role clubcycle_app login nosuperuser nocreatedb nocreaterole noreplication nobypassrls password :'app_password';
alter role clubcycle_backup login nosuperuser nocreatedb nocreaterole noreplication nobypassrls password :'backup_password';
select 'create database clubcycle owner clubcycle' where not exists (select from pg_database where datname = 'clubcycle') \gexec
\connect clubcycle
create extension if not exists btree_gist;
SQL
