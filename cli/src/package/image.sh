#!/bin/sh
# Builds bootmend for the system it is run on, into target/ of the project:
#
#   bootmend-VERSION.jar                  the plain jar, for any Java from 17 on
#   bootmend-VERSION-SYSTEM.tar.gz        bootmend with its own Java, unpacked and started as it is (.zip on Windows)
#   bootmend-window-VERSION-SYSTEM.tar.gz the same for the window, where gui/target/bootmend-window.jar is there
#
#   sh cli/src/package/image.sh
#
# Needs Maven and, for the Java that is packed, a JDK 25 or newer: PACKAGE_JDK, JAVA_HOME, or one in /usr/lib/jvm.
# BUILT=1 takes the jars and documents that a build with the profile `documents` left, and builds nothing.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../../.." && pwd)
out=$root/target

# What `jdeps` finds in the jar, and no more; checked below. java.desktop: charts as PNG. java.sql: the types that the JSON
# and command line libraries know how to turn into text. jdk.unsupported: sun.misc.Unsafe, by which packed images in zstd
# are read.
modules=java.base,java.desktop,java.sql,jdk.unsupported

# Less compiling and the plainest collector: a command lives shorter than the others need to pay off. No file for
# watching tools in /tmp. No warning of the memory access that the zstd library needs. Nothing of Java's own on the
# screen should the cache not fit.
options="-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -XX:-UsePerfData --sun-misc-unsafe-memory-access=allow -Xlog:disable"

newest=25
major() {
    sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$1/release" 2>/dev/null || true
}
jdk=
for candidate in "${PACKAGE_JDK:-}" "${JAVA_HOME:-}" /usr/lib/jvm/*; do
    version=$(major "$candidate")
    if [ -n "$version" ] && [ "$version" -ge $newest ] && [ -x "$candidate/bin/jlink" ]; then
        jdk=$candidate
        break
    fi
done
[ -n "$jdk" ] || { echo "No JDK $newest or newer was found; name one: PACKAGE_JDK=... sh $0" >&2; exit 2; }

case $(uname -s) in
    Linux) system=linux ;;
    Darwin) system=macos ;;
    MINGW* | MSYS* | CYGWIN*) system=windows ;;
    *) echo "This system is not known here: $(uname -s)" >&2; exit 2 ;;
esac
system=$system-$(uname -m)

[ "${BUILT:-}" = 1 ] || (cd "$root" && mvn -q -B -P documents -DskipTests package)
jar=$root/cli/target/bootmend.jar
documents=$root/cli/target/documents
version=$("$jdk/bin/java" -jar "$jar" --version)
version=${version#bootmend }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT INT TERM
mkdir -p "$out"
cp "$jar" "$out/bootmend-$version.jar"
echo "$out/bootmend-$version.jar"

# Every module that a jar needs must be among those that are packed.
check_modules() {
    for module in $("$jdk/bin/jdeps" --multi-release $newest --ignore-missing-deps --print-module-deps "$1" | tr , ' '); do
        case ,$2, in
            *,$module,*) ;;
            *) echo "$1 needs $module, which $0 does not pack; add it there, with the reason" >&2; exit 1 ;;
        esac
    done
}

# A Java of these modules in folder $2, with the archive of its own classes for where the cache cannot be used.
make_runtime() {
    "$jdk/bin/jlink" --add-modules "$1" --output "$2" --strip-java-debug-attributes --no-header-files --no-man-pages
    "$2/bin/java" -Xshare:dump -Xlog:disable
}

# Packs folder $1 of $work.
pack() {
    case $system in
        windows-*)
            packed=$out/$1.zip
            (cd "$work" && "$jdk/bin/jar" --create --no-manifest --file "$packed" "$1")
            ;;
        *)
            packed=$out/$1.tar.gz
            tar -C "$work" -czf "$packed" "$1"
            ;;
    esac
    echo "$packed"
}

name=bootmend-$version-$system
image=$work/$name
lib=$image/lib
mkdir -p "$image/bin" "$lib" "$image/share/man/man1" "$image/share/bash-completion/completions"
check_modules "$jar" $modules
make_runtime $modules "$lib/runtime"
"$jdk/bin/java" "$here/ArchivableJar.java" "$jar" "$lib/bootmend.jar"
case $system in
    windows-*) sed "s/@OPTIONS@/$options/" "$here/bootmend.cmd" > "$image/bin/bootmend.cmd" ;;
    *) sed "s/@OPTIONS@/$options/" "$here/bootmend" > "$image/bin/bootmend"; chmod +x "$image/bin/bootmend" ;;
esac
cp "$documents"/man1/*.1 "$image/share/man/man1"
cp "$documents/completions/bootmend" "$image/share/bash-completion/completions"
cp "$root/LICENSE" "$image"

# The cache is made of what one `show` does: whatever else is in it makes every start longer. It fits this jar alone; with
# another, Java starts without it.
export BOOTMEND_HOME="$work/home"
java=$lib/runtime/bin/java
"$java" -jar "$lib/bootmend.jar" demo "$work/demo" > "$work/demo.txt"
card=$(ls "$work"/demo/*.img | head -n 1)
"$java" $options -XX:AOTMode=record "-XX:AOTConfiguration=$work/aot.conf" -jar "$lib/bootmend.jar" show "$card" \
    > "$work/show.txt"
"$java" $options -XX:AOTMode=create "-XX:AOTConfiguration=$work/aot.conf" "-XX:AOTCache=$lib/bootmend.aot" \
    -cp "$lib/bootmend.jar" > "$work/aot.txt"
[ -s "$lib/bootmend.aot" ] || { cat "$work/aot.txt" >&2; exit 1; }
pack "$name"

window=$root/gui/target/bootmend-window.jar
if [ -e "$window" ]; then
    # What the window's library needs besides, as its own description says; jdeps does not see all of it in one jar.
    window_modules=$modules,java.logging,java.xml,jdk.jfr
    check_modules "$window" $window_modules
    make_runtime $window_modules "$work/window-runtime"
    mkdir "$work/window-jar"
    cp "$window" "$work/window-jar"
    set --
    for option in $options --enable-native-access=ALL-UNNAMED; do
        set -- "$@" --java-options "$option"
    done
    "$jdk/bin/jpackage" --type app-image --name bootmend-window --app-version "$version" --dest "$work" \
        --runtime-image "$work/window-runtime" --input "$work/window-jar" --main-jar bootmend-window.jar \
        --main-class bootmend.gui.Main "$@"
    mv "$work"/bootmend-window* "$work/bootmend-window-$version-$system"
    pack "bootmend-window-$version-$system"
fi
