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

# Less compiling and the plainest collector: a command lives shorter than the others need to pay off. No file for
# watching tools in /tmp. No warning of the memory access that the zstd library needs, nor of the native code that the
# list of disks is read by. Nothing of Java's own on the screen should the cache not fit.
java_options="-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -XX:-UsePerfData --sun-misc-unsafe-memory-access=allow -Xlog:disable"
options="$java_options --enable-native-access=bootmend"

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

# The modules of Java that jar $1 needs, with commas between.
needed_modules() {
    "$jdk/bin/jdeps" --multi-release $newest --ignore-missing-deps --print-module-deps "$1"
}

# A Java in folder $1, with the archive of its own classes for where the cache cannot be used.
make_runtime() {
    runtime=$1
    shift
    "$jdk/bin/jlink" --output "$runtime" --strip-java-debug-attributes --no-header-files --no-man-pages "$@"
    "$runtime/bin/java" -Xshare:dump -Xlog:disable
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

# bootmend becomes a module of the Java that is packed: that starts faster than a jar, and there is nothing to mislay.
"$jdk/bin/java" "$here/ArchivableClasses.java" "$jar" "$work/classes"
needed=$(needed_modules "$jar")
for module in $(echo "${needed#java.base,}" | tr , ' '); do
    grep -q "requires $module;" "$here/module/module-info.java" \
        || { echo "bootmend needs $module; name it in $here/module/module-info.java, with the reason" >&2; exit 1; }
done
"$jdk/bin/javac" --release $newest -d "$work/classes" --patch-module "bootmend=$work/classes" "$here/module/module-info.java"
"$jdk/bin/jar" --create --file "$work/module.jar" --module-version "$version" -C "$work/classes" .
make_runtime "$lib/runtime" --module-path "$work/module.jar" --add-modules bootmend
case $system in
    windows-*) sed "s/@OPTIONS@/$options/" "$here/bootmend.cmd" > "$image/bin/bootmend.cmd" ;;
    *) sed "s/@OPTIONS@/$options/" "$here/bootmend" > "$image/bin/bootmend"; chmod +x "$image/bin/bootmend" ;;
esac
cp "$documents"/man1/*.1 "$image/share/man/man1"
cp "$documents/completions/bootmend" "$image/share/bash-completion/completions"
cp "$root/LICENSE" "$image"
mkdir "$image/share/licenses"
find "$work/classes/META-INF" -maxdepth 1 -type f ! -name MANIFEST.MF -exec cp {} "$image/share/licenses" \;
cp "$work"/classes/META-INF/licenses/* "$image/share/licenses"

# The cache is made of what one `show` of a tuned card does: whatever else is in it makes every start longer.
export BOOTMEND_HOME="$work/home"
start() {
    "$lib/runtime/bin/java" $options "$@"
}
main=bootmend/bootmend.cli.Main
start -m $main demo "$work/demo" > "$work/demo.txt"
card=$(ls "$work"/demo/lab-card-03-*.img)
start -XX:AOTMode=record "-XX:AOTConfiguration=$work/aot.conf" -m $main show "$card" > "$work/show.txt"
start -XX:AOTMode=create "-XX:AOTConfiguration=$work/aot.conf" "-XX:AOTCache=$lib/bootmend.aot" -m $main \
    > "$work/aot.txt"
[ -s "$lib/bootmend.aot" ] || { cat "$work/aot.txt" >&2; exit 1; }
pack "$name"

window=$root/gui/target/bootmend-window.jar
if [ -e "$window" ]; then
    # jdk.jfr, java.logging and java.xml: the window's library asks for them in its modules' descriptions, which are not
    # in the one jar.
    make_runtime "$work/window-runtime" --add-modules "$(needed_modules "$window"),java.logging,java.xml,jdk.jfr"
    mkdir "$work/window-jar"
    cp "$window" "$work/window-jar"
    set --
    for option in $java_options --enable-native-access=ALL-UNNAMED; do
        set -- "$@" --java-options "$option"
    done
    "$jdk/bin/jpackage" --type app-image --name bootmend-window --app-version "$version" --dest "$work" \
        --runtime-image "$work/window-runtime" --input "$work/window-jar" --main-jar bootmend-window.jar \
        --main-class bootmend.gui.Main "$@"
    mv "$work"/bootmend-window* "$work/bootmend-window-$version-$system"
    pack "bootmend-window-$version-$system"
fi
