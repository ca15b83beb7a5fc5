#!/usr/bin/env bash
# Other programs read a survey file: unzip, sha256sum, the `bagit` validator of the Python registry, and a reader in
# Python that was written from docs/file.md alone. Needs unzip and python3 with venv; fetches `bagit` by name.
# Usage: tests/file/check.sh [NUMBER OF FILES]
set -euo pipefail
cd "$(dirname "$0")/../.."
for tool in unzip sha256sum python3 cargo; do
    command -v "$tool" >/dev/null || { echo "$tool is missing (Debian: apt-get install $tool)" >&2; exit 1; }
done
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
# As the tests build it, so that nothing is built twice.
cargo test --quiet --locked --package proofs --no-run
soak="${CARGO_TARGET_DIR:-target}/debug/soak"
python3 -m venv "$scratch/venv"
"$scratch/venv/bin/pip" --quiet install 'bagit>=1.8'

for number in $(seq 1 "${1:-5}"); do
    file="$scratch/$number.lwk"
    "$soak" sample "$file"
    unzip -tq "$file"
    mkdir "$scratch/$number"
    unzip -q "$file" -d "$scratch/$number"
    (cd "$scratch/$number/survey" && sha256sum --quiet --strict -c manifest-sha256.txt tagmanifest-sha256.txt)
    "$scratch/venv/bin/bagit.py" --quiet --validate "$scratch/$number/survey"
    "$soak" shown "$file" >"$scratch/core.jsonl"
    python3 tests/file/reader.py "$file" >"$scratch/reader.jsonl"
    python3 - "$scratch/core.jsonl" "$scratch/reader.jsonl" <<'PYTHON'
import json, sys
core, reader = ([json.loads(line) for line in open(path)] for path in sys.argv[1:])
if core != reader:
    first = next((pair for pair in zip(core, reader) if pair[0] != pair[1]), (len(core), len(reader)))
    sys.exit(f"the reader shows something else than the core: {first}")
if len(core) < 10:
    sys.exit("the sample holds too little to prove anything")
print(f"{len(core)} shown values agree")
PYTHON
done
echo "all files are read by all programs"
