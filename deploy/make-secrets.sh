#!/usr/bin/env bash
# Makes the passwords and the key that docker-compose.yml reads, once: bash deploy/make-secrets.sh
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# Containers read a file as whoever they are; the folder keeps everybody else on this machine out.
mkdir -p -m 0700 secrets
for name in postgres_password clubcycle_password clubcycle_app_password clubcycle_backup_password session_key; do
  [[ -e secrets/$name ]] && continue
  od -An -N24 -tx1 /dev/urandom | tr -d ' \n' >"secrets/$name"
  chmod 0444 "secrets/$name"
done
