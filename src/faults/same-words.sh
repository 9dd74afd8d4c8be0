#!/bin/bash
# What the program says must not hang on the machine: `check demo-data/north-light --on 2026-11-25`, as JSON and as the
# screen, under every setting below and every Java that is found, compared byte for byte with the first. Exit codes and
# the error stream count too. Ends with 0 if all are the same, with 1 if one differs, with 3 if there is nothing to run.
# About three minutes of processor time.
#
#   src/faults/same-words.sh                JAVA_17 and JAVA_25 name the folders of the two, else they are looked for
#   MAINSGATE_JAR=some.jar src/faults/same-words.sh
set -euo pipefail

cd "$(dirname "${BASH_SOURCE[0]}")/../.."
jar=${MAINSGATE_JAR:-target/mainsgate.jar}
[ -f "$jar" ] || { echo "same-words: no $jar: build it first" >&2; exit 3; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# A setting a line: options of Java, or variables before a bar and options behind it.
settings=(
  '-Duser.language=en -Duser.country=GB -Duser.timezone=UTC'
  '-Duser.language=tr -Duser.country=TR'
  '-Duser.language=tr'
  '-Duser.language=de -Duser.country=DE'
  '-Duser.language=lt -Duser.country=LT'
  '-Duser.language=ar -Duser.country=EG'
  '-Duser.language=th -Duser.country=TH -Duser.extensions=u-nu-thai'
  '-Duser.timezone=Pacific/Kiritimati'
  '-Duser.timezone=Pacific/Pago_Pago'
  '-Duser.timezone=Asia/Kathmandu'
  '-Dfile.encoding=ISO-8859-1'
  '-Dfile.encoding=US-ASCII -Dsun.stdout.encoding=US-ASCII -Dstdout.encoding=US-ASCII'
  '-Duser.language=tr -Duser.country=TR -Duser.timezone=Pacific/Kiritimati -Dfile.encoding=ISO-8859-1'
  'TZ=Pacific/Kiritimati LC_ALL=C |'
  'TZ=America/St_Johns LC_ALL=tr_TR.UTF-8 |'
  'TZ=Europe/Berlin LC_ALL=de_DE.UTF-8 |'
)

# The Javas: the folder that a variable names, else one that is installed, else for 17 the one on the path.
found() {
  local named=$1 folder
  shift
  for folder in ${named:+"$named"} "$@"; do
    if [ -x "$folder/bin/java" ]; then
      echo "$folder/bin/java"
      return
    fi
    [ "$folder" != "$named" ] || return 0
  done
}
shopt -s nullglob
java17=$(found "${JAVA_17:-}" /usr/lib/jvm/*17*)
java25=$(found "${JAVA_25:-}" /usr/lib/jvm/temurin-25* /usr/lib/jvm/*25*)

ran=0 differ=0 skipped=0
first=

skip() {
  skipped=$((skipped + 1))
  echo "skipped: $1"
}

# One Java, one setting, both outputs.
say() {
  local java=$1 setting=$2 variables='' options=$2 here=$work/$ran kind code
  if [[ "$setting" == *'|'* ]]; then
    variables=${setting%%|*} options=${setting#*|}
  fi
  mkdir "$here"
  for kind in json screen; do
    code=0
    # shellcheck disable=SC2086
    env -u JAVA_TOOL_OPTIONS $variables "$java" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 $options -jar "$jar" \
      check demo-data/north-light --on 2026-11-25 $([ "$kind" = screen ] || echo --json) \
      > "$here/$kind" 2> "$here/$kind.errors" || code=$?
    echo "$code" > "$here/$kind.code"
  done
  if [ -z "$first" ]; then
    first=$here
    [ "$(cat "$here/json.code") $(cat "$here/screen.code")" = '20 20' ] && [ -s "$here/json" ] && [ -s "$here/screen" ] || {
      cat "$here"/*.errors >&2
      echo 'same-words: the first run did not end with 20, so there is nothing to compare with' >&2
      exit 3
    }
  elif ! diff -rq "$first" "$here" > "$work/diff"; then
    differ=$((differ + 1))
    echo "differs: $java, $setting"
    diff -r "$first" "$here" | head -n 6 || true
  fi
  ran=$((ran + 1))
}

# Is there such a locale? One that is not installed is made for this run, where its source and the tool are.
installed=" $(locale -a 2> /dev/null | tr 'A-Z\n' 'a-z ' | tr -d '-') "
at_hand() {
  [[ "$installed" != *" $(tr 'A-Z' 'a-z' <<< "$1" | tr -d '-') "* ]] || return 0
  [ ! -d "$work/locales/$1" ] || return 0
  mkdir -p "$work/locales"
  localedef -i "${1%%.*}" -f "${1#*.}" "$work/locales/$1" > /dev/null 2>&1
}

all() {
  local setting locale
  "$1" -version 2>&1 | head -n 1
  for setting in "${settings[@]}"; do
    locale=$(sed -n 's/.*LC_ALL=\([^ ]*\).*/\1/p' <<< "$setting")
    if [ -n "$locale" ] && ! at_hand "$locale"; then
      skip "$setting (this machine has no such locale and can't make it)"
    elif [ -d "$work/locales/$locale" ] && [ -n "$locale" ]; then
      say "$1" "LOCPATH=$work/locales $setting"
    else
      say "$1" "$setting"
    fi
  done
}

if [ -n "$java17" ]; then all "$java17"; else skip 'Java 17, not found'; fi
if [ -n "$java25" ]; then all "$java25"; else skip 'Java 25, not found; JAVA_25 names its folder'; fi
[ "$ran" -gt 1 ] || { echo 'same-words: nothing to compare' >&2; exit 3; }
echo "same-words: $ran settings, two outputs each; $differ differ, $skipped skipped"
[ "$differ" -eq 0 ]
