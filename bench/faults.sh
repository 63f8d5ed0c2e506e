#!/usr/bin/env bash
# Fifty kills of a batch, a killed node and a restarted controller of a Slurm cluster: tests that are too long for every day. Needs
# what tests/run.sh --install installs.
set -eu
cd "$(dirname "$0")/.."
project=tests/CanopySim.Runner.Tests
dotnet build -c Release "$project" -p:Faults=true --nologo -v quiet
dotnet run --no-build -c Release --project "$project" -- -method '*SlurmFaultTests.*' -method '*KilledAtFiftyMoments' \
  -showLiveOutput -noColor
