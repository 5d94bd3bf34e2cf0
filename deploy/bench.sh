#!/usr/bin/env bash
# Prints the planning engine's speed as "name: value" lines, ratios included: bash deploy/bench.sh
# For BenchmarkDotNet's own table: dotnet run -c Release --project tests/ClubCycle.Benchmarks
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Benchmarks -c Release -v quiet </dev/null >&2
artifacts/bin/ClubCycle.Benchmarks/release/ClubCycle.Benchmarks figures
