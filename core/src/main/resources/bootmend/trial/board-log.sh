#!/bin/sh
# bootmend board log: samples a board's clock, core volts, temperature, throttle mask and busy share, by the firmware's own
# query command where there is one, else by the kernel's files, and writes into the log which it was.
# Plain POSIX sh. Copy it to the board and start it there while the board works:
#
#   sh board-log.sh log.csv
#
# Then bring log.csv to the computer with bootmend and import it there.
#
# Set before the start where the defaults do not fit:
#   INTERVAL   seconds between two rows, 1 to 3600           (default 5)
#   MAX_ROWS   rows after which it stops by itself, 1 to 99999 (default 17280: a day at 5 s)
#   ROOT       where /sys and /proc are looked for           (default: nothing in front)
#   QUERY      the firmware's query command                  (default: the one found in /usr/bin or /opt/*/bin, if any)
#   SYNC       no = do not force each row to the disk        (default yes: the last row survives a lock-up)
#
# Caution: a board under load gets hot. Its maker's limits and your local rules come first; stay with it, and stop the load
# when a temperature over 80 degC goes on. Forcing each row wears a card a little: write to a USB stick for long runs.
#
# The clock that the kernel asks for hides a board that holds itself back; the firmware's measure does not.
#
# Read: the query command's measure_clock arm (Hz), measure_volts core, measure_temp, get_throttled and, where there is a
# power chip, pmic_read_adc VDD_CORE_V; cpufreq/scaling_cur_freq (kHz), thermal_zone*/temp (thousandths of degC),
# hwmon*/in*_input (mV) with a label that speaks of the core, hwmon*/in*_lcrit_alarm (1 = under-voltage), get_throttled
# (hexadecimal), /proc/stat, and the try-once flag of the device tree.
# Sources: "firmware query command", os/graphics-utilities.adoc, commit 0cc21c8d, its output as users print it; the Linux
# kernel's documentation, "CPU Performance Scaling", "Generic Thermal Sysfs driver How To", "Naming and data format
# standards for sysfs files"; the output of pmic_read_adc and the kernel's get_throttled file: value from memory.

set -u
LC_ALL=C
export LC_ALL

out=${1:-}
interval=${INTERVAL:-5}
max_rows=${MAX_ROWS:-17280}
root=${ROOT:-}
sync_rows=${SYNC:-yes}
query=${QUERY:-}

fail() {
    echo "board-log: $1" >&2
    exit "$2"
}

# $1 value, $2 most digits
is_number() {
    case $1 in
        '' | *[!0-9]*) return 1 ;;
    esac
    [ "${#1}" -le "$2" ]
}

[ -n "$out" ] || fail "say where to write, for example: sh board-log.sh log.csv" 2
[ ! -e "$out" ] || fail "$out is there already and was left alone; name another file" 4
is_number "$interval" 4 && [ "$interval" -ge 1 ] && [ "$interval" -le 3600 ] \
    || fail "INTERVAL should be 1 to 3600, found $interval" 2
is_number "$max_rows" 5 && [ "$max_rows" -ge 1 ] || fail "MAX_ROWS should be 1 to 99999, found $max_rows" 2

# First word of a small file, made of harmless characters only; empty where there is none.
word_of() {
    word=
    if [ -r "$1" ] && [ ! -d "$1" ]; then
        read -r word rest < "$1" 2>/dev/null || :
    fi
    case $word in
        *[!0-9A-Za-z_.-]*) word= ;;
    esac
    [ "${#word}" -le 20 ] || word=
}

# Thousandths as a decimal number: 54321 -> 54.321, -500 -> -0.500; empty for anything else.
thousandths() {
    sign=
    digits=$1
    case $digits in
        -*) sign=- digits=${digits#-} ;;
    esac
    decimal=
    if is_number "$digits" 9; then
        while [ "${#digits}" -lt 4 ]; do digits=0$digits; done
        head=${digits%???}
        # No leading zeros but the one before the point.
        while [ "${#head}" -gt 1 ] && [ "${head#0}" != "$head" ]; do head=${head#0}; done
        decimal=$sign$head.${digits#"${digits%???}"}
    fi
}

# The firmware's query command; one that does not answer is none.
if [ -z "$query" ]; then
    for found in "$root"/usr/bin/*gencmd "$root"/opt/*/bin/*gencmd; do
        [ -x "$found" ] && { query=$found; break; }
    done
fi
# Sets answer: what stands after the last equals sign of an answer, of harmless characters only.
ask() {
    answer=
    [ -n "$query" ] || return 0
    answer=$("$query" "$@" 2>/dev/null) || answer=
    case $answer in
        *=*) answer=${answer##*=} ;;
        *) answer= ;;
    esac
    answer=${answer%"'C"}
    answer=${answer%V}
    case $answer in
        *[!0-9A-Za-z.-]*) answer= ;;
    esac
    [ "${#answer}" -le 20 ] || answer=
}
ask measure_clock arm
is_number "$answer" 12 || query=
pmic=
if [ -n "$query" ]; then
    ask pmic_read_adc VDD_CORE_V
    [ -n "$answer" ] && pmic=yes
fi

# The processor's own thermal zone where one says so, else the first.
zone=
for type in "$root"/sys/class/thermal/thermal_zone*/type; do
    word_of "$type"
    case $word in
        *cpu* | *soc* | *CPU* | *SOC*) [ -n "$zone" ] || zone=${type%/type}/temp ;;
    esac
done
if [ -z "$zone" ]; then
    for temp in "$root"/sys/class/thermal/thermal_zone*/temp; do
        [ -r "$temp" ] && { zone=$temp; break; }
    done
fi

clock=
for freq in "$root"/sys/devices/system/cpu/cpufreq/policy*/scaling_cur_freq \
        "$root"/sys/devices/system/cpu/cpu0/cpufreq/scaling_cur_freq; do
    [ -r "$freq" ] && { clock=$freq; break; }
done

core=
for label in "$root"/sys/class/hwmon/hwmon*/in*_label; do
    word_of "$label"
    case $word in
        *core* | *Core* | *CORE* | *cpu* | *CPU*) core=${label%_label}_input; break ;;
    esac
done

throttled=
for report in "$root"/sys/devices/platform/soc/soc:firmware/get_throttled \
        "$root"/sys/devices/platform/soc*/*firmware/get_throttled; do
    [ -r "$report" ] && { throttled=$report; break; }
done

[ -n "$zone$clock$query" ] || fail "this kernel offers neither clock nor temperature under $root/sys" 3

# Sets time: seconds since the board started, which no correction of its calendar disturbs; else the calendar's.
read_time() {
    word_of "$root/proc/uptime"
    case $word in
        '' | *[!0-9.]*) time=$(date +%s) ;;
        *) time=$word ;;
    esac
}

# Sets mask. An alarm tells of under-voltage alone: set, it is bit 0; not set, the other bits are still unknown.
read_mask() {
    mask=
    word_of "$throttled"
    case ${word#0x} in
        '' | *[!0-9a-fA-F]*) ;;
        *) mask=0x${word#0x}; return ;;
    esac
    for alarm in "$root"/sys/class/hwmon/hwmon*/in*_lcrit_alarm; do
        word_of "$alarm"
        [ "$word" = 1 ] && mask=0x1
    done
}

# Sets busy: percent of the processors' time since the last row that was not idle.
last_all=0
last_idle=0
read_busy() {
    busy=
    read -r name user nice system idle wait rest < "$root/proc/stat" 2>/dev/null || return 0
    [ "$name" = cpu ] && is_number "$user" 15 && is_number "$nice" 15 && is_number "$system" 15 \
        && is_number "$idle" 15 && is_number "${wait:-0}" 15 || return 0
    all=$((user + nice + system + idle + wait))
    still=$((idle + wait))
    [ "$last_all" -gt 0 ] && [ "$all" -gt "$last_all" ] \
        && busy=$((100 - 100 * (still - last_idle) / (all - last_all)))
    last_all=$all
    last_idle=$still
}

read_board() {
    ask measure_clock arm
    mhz=
    if is_number "$answer" 12; then thousandths "${answer%???}"; mhz=$decimal; fi
    if [ -n "$pmic" ]; then ask pmic_read_adc VDD_CORE_V; else ask measure_volts core; fi
    volts=$answer
    ask measure_temp
    celsius=$answer
    ask get_throttled
    mask=$answer
}

read_kernel() {
    word_of "$clock"
    mhz=
    if is_number "$word" 8; then thousandths "$word"; mhz=$decimal; fi
    word_of "$core"
    thousandths "$word"
    volts=$decimal
    word_of "$zone"
    thousandths "$word"
    celsius=$decimal
    read_mask
}

row() {
    read_time
    if [ -n "$query" ]; then read_board; else read_kernel; fi
    read_busy
    echo "$time,$mhz,$volts,$celsius,$mask,$busy" >> "$out" || fail "cannot write to $out" 3
    [ "$sync_rows" = no ] || sync "$out" 2>/dev/null || sync
}

# What the figures come from and which config file lies on the board, for who reads the log later.
clues() {
    if [ -n "$query" ]; then
        echo "# source: clock, volts, temperature and mask by the firmware's own measure"
    else
        echo "# source: clock as the kernel asked for it, which hides a board that holds itself back"
        echo "# source: volts, temperature and mask by the kernel's files"
    fi
    for folder in "$root/boot/firmware" "$root/boot"; do
        [ -f "$folder/config.txt" ] || continue
        for file in config.txt tryboot.txt; do
            [ -f "$folder/$file" ] || continue
            sum=$(sha256sum < "$folder/$file" 2>/dev/null) || continue
            echo "# config: $file sha256 ${sum%% *}"
        done
        break
    done
    flag=$root/proc/device-tree/chosen/bootloader/tryboot
    if [ -r "$flag" ]; then
        case $(od -An -tu1 < "$flag" 2>/dev/null) in
            *[1-9]*) echo "# try-once: yes" ;;
            *) echo "# try-once: no" ;;
        esac
    fi
}

clues > "$out" || fail "cannot write to $out" 3
echo "time,clock_mhz,volts,temperature,mask,busy" >> "$out" || fail "cannot write to $out" 3
rows=0
while :; do
    row
    rows=$((rows + 1))
    [ "$rows" -lt "$max_rows" ] || break
    sleep "$interval"
done
echo "board-log: $rows rows in $out" >&2
