#!/usr/bin/env bash
# Every invariant of the planning over many random cases: bash deploy/cases.sh [CASES]
# Each failure names its case; CLUBCYCLE_SEED repeats a run. Ends with "N passed, N failed, N skipped".
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

cases=${1:-10000}
[[ $cases =~ ^[0-9]+$ && $cases -gt 0 ]] || stop "Say how many cases each invariant is to get, for example: bash deploy/cases.sh 10000"
find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Planning.Tests -c Release -v quiet </dev/null >&2
log="$root/artifacts/test-logs/cases.log"
mkdir -p "$(dirname "$log")"
code=0
CLUBCYCLE_CASES=$cases dotnet test --project tests/ClubCycle.Planning.Tests -c Release --no-build --no-progress --no-ansi --filter-trait Cases=random </dev/null | tee "$log" || code=$?
passed=$(count succeeded "$log") failed=$(count failed "$log") skipped=$(count skipped "$log")
[[ -n $passed ]] || stop "The tests ended with code $code before they were counted."
printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
exit "$code"
