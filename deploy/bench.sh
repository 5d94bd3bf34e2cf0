#!/usr/bin/env bash
# Prints the speed of planning and of publishing as "name: value" lines, ratios included: bash deploy/bench.sh
# Publishing needs PostgreSQL's programs; it starts a server of its own and removes it.
# For BenchmarkDotNet's own table: dotnet run -c Release --project tests/ClubCycle.Benchmarks
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Benchmarks -c Release -v quiet </dev/null >&2
artifacts/bin/ClubCycle.Benchmarks/release/ClubCycle.Benchmarks figures
