#!/usr/bin/env bash
# Runs the studies under scenarios/ and writes the table of each README anew.
set -eu
cd "$(dirname "$0")/.."
project=tests/CanopySim.Runner.Tests
dotnet build -c Release "$project" --nologo -v quiet
CANOPYSIM_STUDIES=write dotnet run --no-build -c Release --project "$project" -- \
  -class CanopySim.Runner.Tests.Learning.StudyTests -noLogo -noColor
