#!/usr/bin/env bash
# Runs the seasons of the validation and writes tests/VALIDATION.md and its summary in README.md. With names of studies
# (tests/CanopySim.Runner.Tests/Validation/Studies) it prints those sections only and writes nothing into the repository.
set -eu
cd "$(dirname "$0")/.."
project=tests/CanopySim.Runner.Tests
dotnet build -c Release "$project" --nologo -v quiet
CANOPYSIM_VALIDATION="${*:-write}" dotnet run --no-build -c Release --project "$project" -- \
  -class CanopySim.Runner.Tests.Validation.ValidationPageTests -noLogo -noColor
[ $# -eq 0 ] || cat "$project/bin/Release/net10.0/VALIDATION.md"
