#!/usr/bin/env bash
# Builds and runs every test. --install first installs with apt what the tests need beyond the .NET SDK; without it nothing is
# installed, and what cannot run is listed as skipped. Ends with a line "N passed, N failed, N skipped".
set -u
cd "$(dirname "$0")/.."
install=false
for argument in "$@"; do
  case "$argument" in
    --install) install=true ;;
    *) echo "tests/run.sh: unknown option '$argument'; expected --install or nothing" >&2; exit 2 ;;
  esac
done

# What the tests need beyond the SDK, as Debian packages: a ray tracer by others, beside which ours is put, what compiles its caller,
# a browser that opens the reports, what draws without a window, and a scheduler that plans are submitted to.
packages="g++ libembree-dev chromium libegl1 libegl-mesa0 libgl1-mesa-dri libglfw3 xvfb xdotool slurmctld slurmd slurm-client munge"
if $install && [ -n "$packages" ]; then
  apt-get update -q && apt-get install -y -q --no-install-recommends $packages || exit 1
fi

dotnet build CanopySim.sln -c Release --nologo -v quiet || { echo "0 passed, 1 failed, 0 skipped"; exit 1; }

passed=0; failed=0; skipped=0; status=0
results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
for project in tests/*/*.csproj; do
  name=$(basename "$project" .csproj)
  echo "== $name"
  log="$results/$name.trx"
  dotnet run --no-build -c Release --project "$project" -- -trx "$log" -noLogo -noColor
  code=$?
  counters=$(grep -o '<Counters [^>]*>' "$log" 2>/dev/null)
  if [ -z "$counters" ]; then
    echo "$name: no test results" >&2
    failed=$((failed + 1)); status=1
    continue
  fi
  number() { echo "$counters" | grep -o " $1=\"[0-9]*\"" | grep -o '[0-9]*'; }
  total=$(number total); ok=$(number passed); bad=$(( $(number failed) + $(number error) ))
  passed=$((passed + ok)); failed=$((failed + bad)); skipped=$((skipped + total - ok - bad))
  [ "$code" -eq 0 ] || status=1
  [ "$total" -gt 0 ] || { echo "$name: no test ran" >&2; status=1; }
done
[ "$failed" -eq 0 ] || status=1
if [ "${CI:-}" = true ] && [ "$skipped" -gt 0 ]; then
  echo "in CI nothing may be skipped" >&2
  status=1
fi
echo "$passed passed, $failed failed, $skipped skipped"
exit $status
