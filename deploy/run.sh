#!/usr/bin/env bash
# Makes this machine ready and starts ClubCycle with a demo club: bash deploy/run.sh [--empty]
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
[[ -n ${ConnectionStrings__ClubCycle:-} ]] || need_postgres

published="$root/artifacts/publish/ClubCycle.Web/release"
stamp="$root/artifacts/publish/stamp"
inputs=("$root/src" "$root/Directory.Build.props" "$root/Directory.Packages.props" "$root/global.json")
if [[ ! -e $stamp || -n $(find "${inputs[@]}" -newer "$stamp" -print -quit) ]]; then
  say "Building ClubCycle ..."
  mkdir -p "$root/artifacts/publish"
  # What changes while we build is newer than the stamp, so that the next run builds again.
  touch "$stamp.new"
  log="$root/artifacts/publish/publish.log"
  if ! dotnet publish "$root/src/ClubCycle.Web" -c Release -v quiet </dev/null >"$log" 2>&1; then
    cat "$log" >&2
    stop "The build failed; the lines above say why."
  fi
  mv "$stamp.new" "$stamp"
fi

case " $* " in
  *" --empty "* | *" --demo "*) ;;
  *) set -- --demo "$@" ;;
esac

export ASPNETCORE_URLS=${ASPNETCORE_URLS:-http://localhost:5080}
export ASPNETCORE_CONTENTROOT=$published
# The app takes this shell's place, so that Ctrl-C and kill reach it and it can stop PostgreSQL.
exec dotnet "$published/ClubCycle.Web.dll" serve "$@"
