#!/usr/bin/env bash
# Tests the packed bootmend that image.sh left in target/ as its users would have it: in a folder with a blank in its
# name, which nobody may write to, started through a link, as someone other than root.
#
#   bash cli/src/package/image-test.sh
#
# Needs man, zstd, xvfb-run, the window's image and, as root, setpriv. Prints what failed; the exit code is then 1.
set -euo pipefail
root=$(cd "$(dirname "$0")/../../.." && pwd)
packed=$(ls "$root"/target/bootmend-[0-9]*.tar.gz)

work=$(mktemp -d)
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
chmod 755 "$work"
mkdir "$work/a folder" "$work/desk"
tar -C "$work/a folder" -xzf "$packed"
image=$(echo "$work/a folder"/*)
chmod -R a-w "$work/a folder"
ln -s "$image/bin/bootmend" "$work/bootmend"
chmod 777 "$work/desk"
cd "$work/desk"

someone=()
((UID)) || someone=(setpriv --reuid=65534 --regid=65534 --clear-groups)
# With this, Java ends at once where it cannot use its cache.
export JDK_JAVA_OPTIONS=-XX:AOTMode=on BOOTMEND_HOME=$work/desk/home MANWIDTH=80

failed=0
passed=0
# ok WHAT CODE PATTERN COMMAND...: the exit code, a line in the answer, and nothing on standard error.
ok() {
    local what=$1 wanted=$2 pattern=$3 code=0
    shift 3
    "${someone[@]}" "$@" > "$work/desk/out.txt" 2> "$work/desk/err.txt" || code=$?
    sed -i '/^NOTE: Picked up JDK_JAVA_OPTIONS/d' "$work/desk/err.txt"
    if ((code == wanted)) && grep -Eq -- "$pattern" "$work/desk/out.txt" && [[ ! -s $work/desk/err.txt ]]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "$what: exit code $code, wanted $wanted and $pattern" >&2
        head -n 20 "$work/desk/out.txt" "$work/desk/err.txt" >&2
    fi
}

complete() {
    bash --norc -c '
        source "$1"
        shift
        compopt() { :; }   # Only a shell that is completing has it.
        COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
        _complete_bootmend
        printf "%s\n" "${COMPREPLY[@]}"' complete "$image/share/bash-completion/completions/bootmend" "$@"
}

page() {
    for file in "$image"/share/man/man1/*.1; do
        man --warnings=w -l "$file" > "$work/desk/page.txt"
    done
    man -l "$image/share/man/man1/bootmend-$1.1" | sed 's/.\x08//g'
}

bootmend=$work/bootmend
card=bootmend-demo/lab-card-01-open-day.img
ok version 0 '^bootmend [0-9.]+$' "$bootmend" --version
ok demo 0 'The card is safe to take out' "$bootmend" demo
ok show 0 '^label, serial' "$bootmend" show "$card"
ok check 0 '"purpose" : "ship"' "$bootmend" check --for ship --json "$card"
zstd -q "$card" -o packed.zst
chmod a+r packed.zst
ok 'a packed card' 0 '^config file' "$bootmend" show packed.zst
ok cards 0 '.' "$bootmend" cards
ok trial 0 '^Kept' "$bootmend" trial add --label lab-07 --board pi4 --set arm_freq=1750 --outcome holds
ok chart 0 'lab-07.png' "$bootmend" trial chart --board lab-07 --out lab-07.png
ok 'a page' 0 '.' "$bootmend" check --for ship --report lab.html "$card"
ok 'a wrong command' 2 '^$' bash -c '"$1" shw 2>&1 | sed "s/.*//"; exit "${PIPESTATUS[0]}"' - "$bootmend"
someone=()
ok 'completion of a command' 0 '^show' complete bootmend sh
ok 'completion of an option' 0 '^--board' complete bootmend show --bo
ok 'manual page' 0 '^SYNOPSIS' page show


# The window's image, on a display drawn in memory; as root, because the display's lock is another user's.
windows=$(ls "$root"/target/bootmend-window-*.tar.gz)
mkdir "$work/a window"
tar -C "$work/a window" -xzf "$windows"
window=$(echo "$work/a window"/*)/bin/bootmend-window
chmod -R a-w "$work/a window"
unset JDK_JAVA_OPTIONS
window_paints() {
    # The options go by the environment, of which Java tells on standard error, as do the display's own words.
    JAVA_TOOL_OPTIONS=-Dbootmend.first.paint=true timeout 60 xvfb-run -a "$window" 2> "$work/desk/window.txt"
}
ok 'the window tells how it is started' 0 '^usage' "$window" --help
ok 'the window paints' 0 '^first paint after [0-9]+ ms$' window_paints

echo "packed image: $passed checks passed, $failed failed"
((failed == 0))
