#!/usr/bin/env bash
# Prints the speed of planning, of publishing, of serving feeds and of the year board in a browser as "name: value" lines, ratios included: bash deploy/bench.sh
# Publishing and serving need PostgreSQL's programs; they start a server of their own and remove it. Serving is measured with wrk, the board with Chromium.
# One part alone: bash deploy/bench.sh publishing, or serving, or screens. Only when asked for: backup (500 MB), live [MINUTES] (500 open pages), million [MINUTES]
# (the pace of a million subscribers), flood (a minute of wrong passwords).
# Two that only look for what is lost: bash deploy/bench.sh kills [ROUNDS], or editing [HISTORIES].
# For BenchmarkDotNet's own table: dotnet run -c Release --project tests/ClubCycle.Benchmarks
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
need_postgres
cd "$root"
case ${1:-} in
  kills | editing)
    dotnet build src/ClubCycle.Web -c Release -v quiet </dev/null >&2
    dotnet build tests/ClubCycle.NothingLost -c Release -v quiet </dev/null >&2
    exec artifacts/bin/ClubCycle.NothingLost/release/ClubCycle.NothingLost "$@"
    ;;
esac
[[ ${1:-serving} != serving ]] || need_wrk
[[ ${1:-screens} == screens ]] && need_chromium
dotnet build src/ClubCycle.Web -c Release -v quiet </dev/null >&2
dotnet build tests/ClubCycle.Benchmarks -c Release -v quiet </dev/null >&2
# In this shell's place, so that whatever ends the script ends the measurement, which then takes its servers along.
exec artifacts/bin/ClubCycle.Benchmarks/release/ClubCycle.Benchmarks "${@:-figures}"
