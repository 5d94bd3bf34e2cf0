#!/usr/bin/env bash
# Writes docs/parts.cdx.json again: every library in the program with its exact version, in CycloneDX form. Once a release: bash deploy/parts.sh
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
cd "$root"
dotnet tool restore >&2
dotnet restore src/ClubCycle.Web -v quiet >&2
dotnet tool run dotnet-CycloneDX -- src/ClubCycle.Web/ClubCycle.Web.csproj --output docs --filename parts.cdx.json --output-format Json \
  --no-serial-number --disable-package-restore --base-intermediate-output-path artifacts/obj --set-name ClubCycle >&2
