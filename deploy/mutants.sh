#!/usr/bin/env bash
# Small changes to the planning, and how many of them its tests notice: bash deploy/mutants.sh [AREA...]
# A fixed random sample of 40 an area; CLUBCYCLE_MUTANTS=N takes N. Areas: tests/ClubCycle.Mutants/Area.cs.
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Mutants -c Release -v quiet </dev/null >&2
dotnet artifacts/bin/ClubCycle.Mutants/release/ClubCycle.Mutants.dll "$@" </dev/null
