#!/usr/bin/env bash
# Shows in which order a photo reaches the disk: written under a temporary name, synced, renamed, its folder synced,
# and only then the database's log written and synced with the facts that name it.
#
# strace.sh WRITER SURVEY: WRITER is the program `record-writer`, SURVEY an existing survey's folder.
set -euo pipefail
writer=$1 survey=$2
command -v strace >/dev/null || { echo "strace is not installed (Debian: apt-get install strace)" >&2; exit 1; }
trace=$(mktemp)
trap 'rm -f "$trace"' EXIT
strace -f -y -qq -o "$trace" -e trace=write,writev,pwrite64,fsync,fdatasync,rename,renameat,renameat2 \
    "$writer" one-photo "$survey" 1 >/dev/null

# The line of the first call behind line $1 that matches $2.
after() {
    awk -v from="$1" -v what="$2" 'NR > from && $0 ~ what { print NR; exit }' "$trace"
}
line=0
step() {
    local found
    found=$(after "$line" "$2")
    if [ -z "$found" ]; then
        echo "missing behind line $line: $1" >&2
        cat "$trace" >&2
        exit 1
    fi
    line=$found
    echo "$1: $(sed -n "${line}p" "$trace" | cut -c1-160)"
}
step "written" 'write\([0-9]+<[^>]*/photos/\.[0-9a-f-]+\.part>'
step "synced" 'f(data)?sync\([0-9]+<[^>]*/photos/\.[0-9a-f-]+\.part>\) += 0'
step "renamed" 'rename.*/photos/\.[0-9a-f-]+\.part".*/photos/[0-9a-f]+\.png".* = 0'
step "folder synced" 'f(data)?sync\([0-9]+<[^>]*/photos>\) += 0'
# Nothing of the facts may have been written before; a log's own header is no fact, but there must be none either.
if awk -v until="$line" 'NR < until && /survey\.db-wal/ { exit 1 }' "$trace"; then :; else
    echo "the database's log was written before the photo was on the disk" >&2
    cat "$trace" >&2
    exit 1
fi
step "facts written" 'pwrite64\([0-9]+<[^>]*/survey\.db-wal>.*, 4096, '
step "facts synced" 'f(data)?sync\([0-9]+<[^>]*/survey\.db-wal>\) += 0'
step "acknowledged" 'write\(1<.*photo '
echo "the order is right"
