#!/bin/sh
# Resets N image files, each with two tuning lines, once with bootmend and once with a shell loop of mtools, and prints
# for both: cards a second, bytes that its processes asked to read and write for each card, and peak memory.
#
#   sh cli/src/bench/batch.sh [FOLDER [N...]]        (by default a temporary folder, and 10 100 1000 10000)
#
# Needs Linux, mtools, dosfstools, and a built cli/target/bootmend.jar. An image is 8 MiB and sparse; some 0.5 MiB of it
# takes room on the disk, so 10,000 need about 5 GB. Environment: LOOP_MOST (1000): the most cards the loop is run with;
# JAVA_OPTIONS; BOOTMEND: a program to take in place of that jar, such as bin/bootmend of an unpacked image.
set -eu
jar=$(cd "$(dirname "$0")/../../target" && pwd)/bootmend.jar
here=${1:-$(mktemp -d)}
[ $# -gt 0 ] && shift
[ $# -gt 0 ] || set -- 10 100 1000 10000
export MTOOLS_SKIP_CHECK=1
PATH=$PATH:/usr/sbin:/sbin

mkdir -p "$here"
work=$(mktemp -d "$here/bench.XXXXXX")
trap 'rm -rf "$work"' EXIT INT TERM

printf 'dtparam=audio=on\narm_freq=2000\n[pi4]\nover_voltage=6\n[all]\nenable_uart=1\n' > "$work/config.txt"
head -c 60000 /dev/urandom > "$work/start4.elf"
head -c 200000 /dev/urandom > "$work/kernel8.img"
truncate -s 8M "$work/master"
mkfs.fat -F 16 -s 2 -i 5C01BEEF -n LAB "$work/master" > "$work/mkfs.txt"
mcopy -i "$work/master" "$work/config.txt" "$work/start4.elf" "$work/kernel8.img" ::

make_cards() {
    rm -rf "$work/cards" "$work/home"
    mkdir "$work/cards"
    i=0
    while [ $i -lt "$1" ]; do
        i=$((i + 1))
        cp --sparse=always "$work/master" "$work/cards/card-$(printf %05d $i).img"
    done
    sync
}

bootmend() {
    [ -z "${BOOTMEND:-}" ] || exec "$BOOTMEND" "$@"
    exec java ${JAVA_OPTIONS:-} -jar "$jar" "$@"
}

with_bootmend() {
    BOOTMEND_HOME="$work/home" bootmend reset --yes --report "$work/report.csv" "$work/cards" > "$work/out.txt" 2>&1 &
    java=$!
    while kill -0 $java 2>/dev/null; do
        peak=$(awk '/^VmHWM/ {print $2}' /proc/$java/status 2>/dev/null || true)
        [ -z "$peak" ] || echo "$peak" > "$work/peak"
        sleep 0.2
    done
    wait $java
    rm -f "$work/report.csv"
}

with_loop() {
    for card in "$work"/cards/*.img; do
        mcopy -n -i "$card" ::config.txt "$work/one.txt"
        sed -i -e 's/^arm_freq=/#&/' -e 's/^over_voltage=/#&/' "$work/one.txt"
        mcopy -o -i "$card" "$work/one.txt" ::config.txt
        sync "$card"
        rm "$work/one.txt"
    done
    echo - > "$work/peak"
}

# What this shell and the processes that it waited for asked for so far: bytes read, bytes written.
io() {
    awk '/^rchar|^wchar/ {print $2}' /proc/$$/io | tr '\n' ' '
}

measure() {
    make_cards "$2"
    set -- "$1" "$2" $(io)
    start=$(date +%s%N)
    "with_$1"
    end=$(date +%s%N)
    set -- "$1" "$2" "$3" "$4" $(io)
    done=$(for card in "$work"/cards/*.img; do mtype -i "$card" ::config.txt; done | grep -c '^#arm_freq=2000')
    [ "$done" = "$2" ] || { echo "$1: only $done of $2 cards were reset" >&2; exit 1; }
    awk -v how="$1" -v n="$2" -v ns=$((end - start)) -v r=$(($5 - $3)) -v w=$(($6 - $4)) -v peak="$(cat "$work/peak")" \
        'BEGIN { printf "| %s | %d | %.1f | %.1f | %d | %d | %s |\n", how, n, ns / 1e9, n / (ns / 1e9), r / n / 1024,
            w / n / 1024, peak == "-" ? "-" : sprintf("%d", peak / 1024) }'
}

echo "| how | cards | seconds | cards a second | KiB read a card | KiB written a card | peak MiB |"
echo "| --- | --- | --- | --- | --- | --- | --- |"
for n in "$@"; do
    measure bootmend "$n"
    [ "$n" -gt "${LOOP_MOST:-1000}" ] || measure loop "$n"
done
