#!/bin/bash
# Builds the committed tree twice and compares what comes of it: target/mainsgate.jar and target/bom.json. The two
# builds stand in folders of other names and depths, under another time zone, language, character set and umask. Ends
# with 0 if both files are the same, byte for byte; with 1, and the names of the entries that differ, if not; with 3 if a
# build failed. About three minutes.
#
#   src/faults/same-jar.sh [COMMIT]         HEAD if none is given
#   src/faults/same-jar.sh --compare A B    only compares two folders that hold the two files
set -euo pipefail

# Of every entry: its name, its time as it is written, its mode, how it is stored, its size and its check sum.
entries() {
  unzip -v "$1" | awk 'NF == 8 { print $8 "\t" $1 " " $2 " " $3 " " $5 " " $6 " " $7 }'
  zipinfo -l "$1" | awk 'NF > 9 { print $NF "\tmode " $1 " " $2 " " $3 }'
}

compare() {
  local different=0 file
  for file in mainsgate.jar bom.json; do
    printf '%s  %s, first\n' "$(sha256sum < "$1/$file" | cut -c 1-64)" "$file"
    printf '%s  %s, second\n' "$(sha256sum < "$2/$file" | cut -c 1-64)" "$file"
    cmp -s "$1/$file" "$2/$file" && continue
    different=1
    echo "same-jar: $file differs"
    if [ "$file" = mainsgate.jar ]; then
      # Names alone, each once; the order of the entries if nothing else differs.
      diff <(entries "$1/$file" | sort) <(entries "$2/$file" | sort) | sed -n 's/^[<>] \([^\t]*\).*/  \1/p' | sort -u |
        awk 'NR <= 40 { print } END { if (NR > 40) print "  and " NR - 40 " more" }'
      diff -q <(unzip -Z1 "$1/$file") <(unzip -Z1 "$2/$file") > /dev/null || echo '  (the order of the entries, or their names)'
    else
      diff "$1/$file" "$2/$file" | sed -n 's/^[<>]/  &/p'
    fi
  done
  [ "$different" -eq 0 ] || return 1
  echo 'same-jar: 2 files the same, byte for byte'
}

if [ "${1:-}" = --compare ]; then
  compare "$2" "$3"
  exit
fi

cd "$(dirname "${BASH_SOURCE[0]}")/../.."
commit=$(git rev-parse --verify "${1:-HEAD}^{commit}")
origin=$PWD
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# In the folder $1, with the umask $2: the committed tree, as Git writes it there, and its build. The rest are variables.
build() (
  folder=$work/$1
  umask "$2"
  shift 2
  git clone -q --no-checkout "$origin" "$folder"
  cd "$folder"
  git checkout -q --detach "$commit"
  if ! env "$@" mvn -q -Dmaven.test.skip=true -Prelease package > build.txt 2>&1; then
    tail -n 20 build.txt >&2
    echo "same-jar: the build in $folder failed" >&2
    exit 3
  fi
)

echo "same-jar: $commit, twice"
build one 022 TZ=UTC LC_ALL=C.UTF-8 MAVEN_OPTS='-Duser.language=en -Duser.country=GB' || exit 3
build another/and/deeper 077 TZ=Pacific/Kiritimati LC_ALL=C \
  MAVEN_OPTS='-Duser.language=tr -Duser.country=TR -Dfile.encoding=ISO-8859-1' || exit 3
compare "$work/one/target" "$work/another/and/deeper/target"
