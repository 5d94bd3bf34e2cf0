#!/usr/bin/env bash
# Line and branch coverage of the planning by its own tests, and its files below 90 % of lines: bash deploy/coverage.sh
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
results="$root/artifacts/coverage"
rm -rf "$results"
say "Building the planning tests ..."
dotnet build tests/ClubCycle.Planning.Tests -v quiet </dev/null >&2
say "Running them, which takes some minutes ..."
CLUBCYCLE_CASES=${CLUBCYCLE_CASES:-200} dotnet test --project tests/ClubCycle.Planning.Tests --no-build --no-progress --no-ansi \
  --coverlet --coverlet-output-format lcov --coverlet-include '[ClubCycle.Planning]*' --results-directory "$results" </dev/null >&2

# A line counts once, whatever number of methods it has a part in.
cat "$results"/*.info | awk -F '[:,]' '
  /^SF:/ { file = substr($0, 4); sub(/.*\/ClubCycle\.Planning\//, "", file) }
  /^DA:/ { line = file ":" $2; if (!(line in hits)) { lines[file]++; all++ } if ($3 > 0 && !hits[line]) { hit[file]++; allHit++ } hits[line] += $3 }
  /^BRDA:/ { branches++; if ($5 != "-" && $5 > 0) taken++ }
  END {
    if (all == 0) { print "no line was measured"; exit 1 }
    for (file in lines) if (hit[file] < 0.9 * lines[file]) printf "  %s: %.1f %%\n", file, 100 * hit[file] / lines[file] | "sort"
    close("sort")
    printf "planning line coverage: %.1f %%\n", 100 * allHit / all
    if (branches > 0) printf "planning branch coverage: %.1f %%\n", 100 * taken / branches
    exit allHit < 0.95 * all
  }'
