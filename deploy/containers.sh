#!/usr/bin/env bash
# Plays the life of the containers with an engine that runs here, in a project and volumes of its own that go at the end: built, started, a club set up, backed up, the
# backup tried, a node and the database killed, restored in the place of the club, stopped: bash deploy/containers.sh
# It needs Docker with Compose 2 and curl, and the images that deploy/Dockerfile and docker-compose.yml name. Takes about ten minutes.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
copy=$(mktemp -d)
export COMPOSE_PROJECT_NAME=clubcycle-try CLUBCYCLE_PORT=${CLUBCYCLE_PORT:-18080} CLUBCYCLE_ALLOW_PLAIN=true
address=http://127.0.0.1:$CLUBCYCLE_PORT

say() { printf '%s\n' "$*"; }
# shellcheck disable=SC2329 # Called by the trap.
clean_up() {
  docker compose down --volumes --timeout 10 >/dev/null 2>&1 || true
  rm -rf "$copy"
}

# holds WHAT EXPECTED ACTUAL
holds() {
  if [[ $3 != "$2" ]]; then
    say "$1: FAILED, '$3' instead of '$2'"
    docker compose logs --no-color --tail 30
    exit 1
  fi
  say "$1: $3"
}

# within WHAT SECONDS COMMAND...: waits until the command succeeds and says how long it took.
within() {
  local what=$1 most=$2 from=$SECONDS
  shift 2
  until "$@"; do
    if ((SECONDS - from >= most)); then
      say "$what: FAILED, not within $most s"
      docker compose logs --no-color --tail 30
      exit 1
    fi
    sleep 0.5
  done
  say "$what: within $((SECONDS - from + 1)) s"
}

answers() { [[ $(curl -s "$address/health/ready") == Healthy ]]; }
host_pid() { docker inspect --format '{{.State.Pid}}' "$(docker compose ps -q "$1")"; }
on_host() { docker run --rm --pid=host --entrypoint bash postgres:17 -c "$1"; }
# As a crash does, so that the engine starts it again; docker kill would be taken for a wish.
kill_nine() { on_host "kill -9 $(host_pid "$1")"; }
token() { sed -n 's/.*__RequestVerificationToken" value="\([^"]*\)".*/\1/p' | head -n 1; }
# send PAGE FIELD=VALUE...: fetches a page, sends its form, and says the status of the answer.
send() {
  local jar page=$1 fields=() field
  jar=$(mktemp)
  shift
  fields=(--data-urlencode "__RequestVerificationToken=$(curl -s -c "$jar" "$address$page" | token)")
  for field; do fields+=(--data-urlencode "$field"); done
  curl -s -o /dev/null -w '%{http_code} %{redirect_url}' -b "$jar" "$address$page" "${fields[@]}"
  rm -f "$jar"
}
signs_in() { [[ $(send /account/sign-in email=coach@example.org "password=$password") == "302 $address/" ]]; }

trap clean_up EXIT
(cd "$root" && git ls-files -z | xargs -0 tar -c) | tar -x -C "$copy"
cd "$copy"
bash deploy/make-secrets.sh
docker compose --progress plain build
docker compose up --detach

within "ready" 120 answers
holds "migrate ended with" 0 "$(docker inspect --format '{{.State.ExitCode}}' "$(docker compose ps --all -q migrate)")"
for service in app backup database; do
  holds "$service cannot write to its image" true "$(docker inspect --format '{{.HostConfig.ReadonlyRootfs}}' "$(docker compose ps -q "$service")")"
  holds "$service has no rights of root" 0000000000000000 "$(on_host "grep CapEff /proc/$(host_pid "$service")/status" | awk '{ print $2 }')"
done

password=$(od -An -N16 -tx1 /dev/urandom | tr -d ' \n')
holds "a club is set up" "302 $address/" "$(send /setup "club=Container club" timeZone=Europe/Lisbon firstWeekday=Monday name=Robin email=coach@example.org "password=$password")"
within "its coach signs in" 10 signs_in

backup=$(docker compose run --rm backup backup /backups | sed -n 's/^Backup: \([^ ]*\) .*/\1/p')
docker compose run --rm restore restore "$backup" --verify

kill_nine app
within "its coach signs in after a killed node" 120 signs_in
kill_nine database
within "its coach signs in after a killed database" 120 signs_in

docker compose stop app
docker compose run --rm restore restore "$backup" --replace
docker compose start app
within "its coach signs in after a restore" 120 signs_in

docker compose stop app database
holds "the app ended with" 0 "$(docker inspect --format '{{.State.ExitCode}}' "$(docker compose ps --all -q app)")"
holds "the database ended with" 0 "$(docker inspect --format '{{.State.ExitCode}}' "$(docker compose ps --all -q database)")"
say "All of it holds, with $(docker version --format '{{.Server.Version}}') and Compose $(docker compose version --short)."
