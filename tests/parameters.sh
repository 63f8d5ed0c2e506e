#!/usr/bin/env bash
# Writes the table of parameters in DEVELOPERS.md anew, from the records of the model.
set -eu
cd "$(dirname "$0")/.."
project=tests/CanopySim.Files.Tests
dotnet build -c Release "$project" --nologo -v quiet
CANOPYSIM_PARAMETERS=write dotnet run --no-build -c Release --project "$project" -- \
  -class CanopySim.Files.Tests.Scenarios.ParameterTableTest -noLogo -noColor
