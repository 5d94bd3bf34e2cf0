#!/usr/bin/env bash
# Plans the grid of squads and prints its findings by rule; writes docs/grid.md again: bash deploy/grid.sh
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Planning.Tests -c Release -v quiet </dev/null >&2
CLUBCYCLE_WRITE_GOLDENS=1 dotnet test --project tests/ClubCycle.Planning.Tests -c Release --no-build --no-progress --no-ansi -- --filter-method '*The_counts_by_rule_are_those_of_the_page' </dev/null >&2
cat docs/grid.md
