#!/usr/bin/env bash
# Makes this machine ready and runs every test: bash deploy/test.sh
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
[[ -n ${CLUBCYCLE_TEST_DATABASE:-} ]] || need_postgres
need_chromium
need_calendar_readers
need_code_reader
need_pdf_tools
# Settings of an app that runs here are none of the tests' business.
unset CLUBCYCLE_DATA ConnectionStrings__ClubCycle ASPNETCORE_URLS ASPNETCORE_ENVIRONMENT DOTNET_ENVIRONMENT

say "Building ClubCycle and its tests ..."
logs="$root/artifacts/test-logs"
mkdir -p "$logs"
cd "$root"
if ! dotnet build ClubCycle.sln -c Release -v quiet </dev/null >"$logs/build.log" 2>&1; then
  cat "$logs/build.log" >&2
  stop "The build failed; the lines above say why."
fi

# count WORD LOG: the number in the closing summary of a test program; nothing when it never got there.
count() { sed -n "/^Test run summary/,\$s/^ *$1: *\([0-9]*\).*/\1/p" "$2" | tail -n 1; }

minutes=20
passed=0 failed=0 skipped=0
for project in tests/*.Tests; do
  name=$(basename "$project")
  log="$logs/$name.log"
  say "Testing ${name#ClubCycle.} ..."
  code=0
  timeout --foreground --kill-after=30 "${minutes}m" \
    dotnet test --project "$project" -c Release --no-build --no-progress --no-ansi </dev/null 2>&1 | tee "$log" || code=${PIPESTATUS[0]}

  failures=$(count failed "$log")
  passed=$((passed + $(count succeeded "$log" | grep . || echo 0)))
  skipped=$((skipped + $(count skipped "$log" | grep . || echo 0)))
  failed=$((failed + ${failures:-0}))
  if [[ $code -ne 0 && ${failures:-0} -eq 0 ]]; then
    case $code in
      8) say "$name ran no test." ;;
      124 | 137) say "$name did not end within $minutes minutes." ;;
      *) say "$name ended with code $code without a failed test; see $log." ;;
    esac
    failed=$((failed + 1))
  fi
done

printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
[[ $failed -eq 0 && $passed -gt 0 ]]
