#!/bin/bash
# Measures what starting costs: `show` of a card at stock and of a tuned one from an unpacked image, and of the tuned one
# from the plain jar, against a Java program that does nothing. Each is run in turn, many times; prints the median and the
# least of the time taken, and of the processors' time (user and system).
#
#   bash cli/src/bench/start.sh IMAGE [TIMES]
#
# IMAGE is an unpacked bootmend image (cli/src/package/image.sh makes one). Needs a built cli/target/bootmend.jar, and for
# the plain jar and the empty program the JDK on the PATH. TIMES is 40 if not given.
set -euo pipefail
image=$1
times=${2:-40}
jar=$(cd "$(dirname "$0")/../../target" && pwd)/bootmend.jar
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export BOOTMEND_HOME=$work/home

printf 'final class Empty { public static void main(String[] arguments) { } }\n' > "$work/Empty.java"
javac --release 17 -d "$work" "$work/Empty.java"
java -jar "$jar" demo "$work/demo" > "$work/demo.txt"
stock=$(echo "$work"/demo/lab-card-02-*.img)
tuned=$(echo "$work"/demo/lab-card-03-*.img)

empty() { java -cp "$work" Empty; }
empty_in_image() { "$image/lib/runtime/bin/java" -cp "$work" Empty; }
show_tuned_jar() { java -jar "$jar" show "$tuned"; }
show_tuned_image() { "$image/bin/bootmend" show "$tuned"; }
show_stock_image() { "$image/bin/bootmend" show "$stock"; }
ways=(empty empty_in_image show_tuned_jar show_tuned_image show_stock_image)

TIMEFORMAT='%R %U %S'
for ((i = 0; i <= times; i++)); do
    for way in "${ways[@]}"; do
        taken=$({ time "$way" > "$work/out.txt"; } 2>&1)
        # The first round only warms the page cache.
        ((i == 0)) || echo "$taken" >> "$work/$way"
    done
done

echo "| what | median ms | least ms | median processor ms | least processor ms |"
echo "| --- | --- | --- | --- | --- |"
for way in "${ways[@]}"; do
    awk '{print $1 * 1000}' "$work/$way" | sort -n > "$work/wall"
    awk '{print ($2 + $3) * 1000}' "$work/$way" | sort -n > "$work/cpu"
    middle=$(((times + 1) / 2))
    echo "| $way | $(sed -n ${middle}p "$work/wall") | $(head -n 1 "$work/wall")" \
        "| $(sed -n ${middle}p "$work/cpu") | $(head -n 1 "$work/cpu") |"
done
