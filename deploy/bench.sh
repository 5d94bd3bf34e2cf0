#!/usr/bin/env bash
# Prints the speed of planning, of publishing, of serving feeds and of the year board in a browser as "name: value" lines, ratios included: bash deploy/bench.sh
# Publishing and serving need PostgreSQL's programs; they start a server of their own and remove it. Serving is measured with wrk, the board with Chromium.
# One part alone: bash deploy/bench.sh publishing, or serving, or screens. Only when asked for: backup (500 MB), live [MINUTES [PAGES]] (500 open pages), million [MINUTES]
# (the pace of a million subscribers), flood (a minute of wrong passwords).
# Three that look for what is lost: bash deploy/bench.sh kills [ROUNDS], editing [HISTORIES], or upgrade [COMMIT] (from that commit's version to this one, while it works).
# For BenchmarkDotNet's own table: dotnet run -c Release --project tests/ClubCycle.Benchmarks
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

# The version before what needed the newest migration: a migration has a commit of its own, right after that.
before_newest_migration() {
  local newest
  newest=$(git ls-files 'src/ClubCycle.Data/Migrations/2*.cs' | grep -v Designer | sort | tail -n 1)
  git log --first-parent -m --diff-filter=A -n 1 --format=%H -- "$newest"
}

# The web app of a commit, and what measures it as it is now, over that commit's stores.
build_commit() {
  local commit=$1 folder=artifacts/upgrade/$1
  if [[ ! -d $folder ]]; then
    rm -rf "$folder.part"
    mkdir -p "$folder.part"
    git archive "$commit" | tar -x -C "$folder.part"
    mv "$folder.part" "$folder"
  fi
  rm -rf "$folder"/tests/ClubCycle.{NothingLost,TestKit}
  cp -rp tests/ClubCycle.{NothingLost,TestKit} "$folder/tests/"
  local project
  for project in src/ClubCycle.Web tests/ClubCycle.NothingLost; do
    dotnet build "$folder/$project" -c Release -v quiet -p:RunAnalyzers=false </dev/null >&2
  done
}

find_dotnet
need_postgres
cd "$root"
case ${1:-} in
  kills | editing | upgrade)
    dotnet build src/ClubCycle.Web -c Release -v quiet </dev/null >&2
    dotnet build tests/ClubCycle.NothingLost -c Release -v quiet </dev/null >&2
    if [[ $1 == upgrade ]]; then
      need_proxy
      older=$(git rev-parse --verify "${2:-$(before_newest_migration)~2}^{commit}")
      # What measures knows the three roles: versions that did not cannot be measured any more.
      role=src/ClubCycle.Data/Embedded/BackupRole.cs
      if [[ -z ${2:-} ]] && ! git cat-file -e "$older:$role" 2>/dev/null; then
        older=$(git log --diff-filter=A -n 1 --format=%H -- "$role")
      fi
      build_commit "$older"
      git log -n 1 --format='from: %h %s' "$older"
      git log -n 1 --format='to: %h %s, and what is not committed' HEAD
      set -- upgrade "artifacts/upgrade/$older/artifacts/bin"
    fi
    exec artifacts/bin/ClubCycle.NothingLost/release/ClubCycle.NothingLost "$@"
    ;;
esac
[[ ${1:-serving} != serving ]] || need_wrk
[[ ${1:-screens} == screens ]] && need_chromium
dotnet build src/ClubCycle.Web -c Release -v quiet </dev/null >&2
dotnet build tests/ClubCycle.Benchmarks -c Release -v quiet </dev/null >&2
# In this shell's place, so that whatever ends the script ends the measurement, which then takes its servers along.
exec artifacts/bin/ClubCycle.Benchmarks/release/ClubCycle.Benchmarks "${@:-figures}"
