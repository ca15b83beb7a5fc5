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

# All programs read this file, which holds at least so many shown values; the folder is for what they unpack.
read_by_all() {
    local file=$1 folder=$2 least=$3
    unzip -tq "$file"
    mkdir "$folder"
    unzip -q "$file" -d "$folder"
    (cd "$folder/survey" && sha256sum --quiet --strict -c manifest-sha256.txt tagmanifest-sha256.txt)
    "$scratch/venv/bin/bagit.py" --quiet --validate "$folder/survey"
    "$soak" shown "$file" >"$folder/core.jsonl"
    python3 tests/file/reader.py "$file" >"$folder/reader.jsonl"
    python3 - "$folder/core.jsonl" "$folder/reader.jsonl" "$least" <<'PYTHON'
import json, sys
core, reader = ([json.loads(line) for line in open(path)] for path in sys.argv[1:3])
if core != reader:
    first = next((pair for pair in zip(core, reader) if pair[0] != pair[1]), (len(core), len(reader)))
    sys.exit(f"the reader shows something else than the core: {first}")
if len(core) < int(sys.argv[3]):
    sys.exit("the file holds too little to prove anything")
print(f"{len(core)} shown values agree")
PYTHON
}

for number in $(seq 1 "${1:-5}"); do
    "$soak" sample "$scratch/$number.lwk"
    read_by_all "$scratch/$number.lwk" "$scratch/$number" 10
done
# Kept for ever, with all that the format can say.
for kept in tests/file/kept/*.lwk; do
    read_by_all "$kept" "$scratch/$(basename "$kept" .lwk)" 300
done
echo "all files are read by all programs"
