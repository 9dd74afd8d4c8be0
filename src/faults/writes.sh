#!/bin/bash
# Faults at the system calls of a write, and what they leave behind.
#
#   src/faults/writes.sh [--all] [COMMAND...]    start add draft close seal accept identity trust; all if none is named
#
# Each command is run once under strace, which lists the system calls that change something in its folder. Then it is run
# again for each of these calls (a sample, unless `--all` is given) and each fault: the program is killed before the call
# (KILL), or the call fails with EIO or ENOSPC. After each fault this is judged:
#
#   state     the files are the old ones, the new ones, or between; nothing that was there is changed
#   promise   a command that ended with 0 has done it all
#   words     the error says no more and no less than is true, and no fault is a defect of the program
#   reading   `check` ends as it does before or after, and each sealed record can be verified
#   again     from any other state, the same command leads to the new one
#
# It ends with 1 if any of these is wrong. It needs strace and a jar: mvn -q -DskipTests package; src/launcher/archive
# makes it quicker. FAULTS_SAMPLE says how many calls are taken for each command and fault (3).
set -u
export LC_ALL=C.UTF-8

command -v strace > /dev/null || { echo "writes.sh: no strace here: apt-get install strace" >&2; exit 3; }
root=$(CDPATH='' cd -P -- "$(dirname -- "$0")/../.." && pwd)
jar=$root/target/mainsgate.jar
[ -f "$jar" ] || { echo "writes.sh: build the jar first: mvn -q -DskipTests package" >&2; exit 3; }
sample=${FAULTS_SAMPLE:-3}
if [ "${1:-}" = --all ]; then sample=0; shift; fi
wanted=${*:-start add draft close seal accept identity trust}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
box=$work/box
day=2026-11-25
java=(java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -XX:-UsePerfData -Xlog:disable)
if [ -f "${jar%.jar}.jsa" ]; then java+=(-XX:SharedArchiveFile="${jar%.jar}.jsa" -Xshare:auto); fi
java+=(-jar "$jar")
export MAINSGATE_HOME=$box/home MAINSGATE_PASSWORD="only for these faults"
calls=openat,link,rename,unlink,rmdir,mkdir,write,pwrite64,fsync,fdatasync,ftruncate,fcntl
faults=0; missed=0; wrong=0
declare -A states=([old]=0 [new]=0 [between]=0)

gate() { "${java[@]}" "$@" > "$work/out" 2> "$work/err"; }

# What each command starts from, in $work/CASE; what it is in `given`.
set_up() {
  mkdir -p "$work/start/home"
  cp -r "$root/src/test/resources/benches/small" "$work/close"
  mkdir "$work/close.box"; mv "$work/close" "$work/close.box/bench"; mv "$work/close.box" "$work/close"
  rm -rf "$box"; cp -r "$work/close" "$box"
  gate identity new --name "the restorer" || { cat "$work/err" >&2; exit 3; }
  gate close "$box/bench" NL-01 --on "$day" || { cat "$work/err" >&2; exit 3; }
  cp -r "$box" "$work/seal"
  gate seal "$box/bench" NL-01 --on "$day" -o "$box/sealed.pdf"
  [ -f "$box/sealed.pdf" ] || { cat "$work/err" >&2; exit 3; }
  cp -r "$box" "$work/accept"
  rm "$box/home/trusted.yaml"; cp -r "$box" "$work/trust"
  gate identity trust "$box/sealed.pdf"
  heard=$(awk '/fingerprint/ { sub(/.*fingerprint +/, ""); one = $0; getline; sub(/^ +/, ""); print one, $0; exit }' "$work/out")
  cp -r "$work/close" "$work/add"
  cp -r "$work/close" "$work/draft"
  rm "$work"/draft/bench/instruments/NL-01/visits/*
  mkdir "$work/identity"
}

given() {
  case $1 in
    start) words=(start "$box/bench" --by AR --name "the restorer" --competence "thirty years" --zone Europe/London) ;;
    add) words=(add "$box/bench" NL-02 --what bridge) ;;
    draft) words=(add "$box/bench" NL-01 --by AR --on "$day") ;;
    close) words=(close "$box/bench" NL-01 --on "$day") ;;
    seal) words=(seal "$box/bench" NL-01 --on "$day" -o "$box/out/new.pdf") ;;
    accept) words=(accept "$box/sealed.pdf" -o "$box/accepted.pdf") ;;
    identity) words=(identity new --name "the restorer") ;;
    trust) words=(identity trust "$box/sealed.pdf" --as "the restorer" --heard "$heard") ;;
  esac
}

# The files, without what a stopped program may leave; four letters by chance, and the number of a record, are set aside.
names() {
  (cd "$box" && find . -type f ! -name '.*.mainsgate-*.tmp' ! -name '.*.number' ! -name '.trusted.lock' \
    | sed -E 's/(AR-)[0-9a-z]{4}(\.draft)/\1XXXX\2/; s/[0-9]{4}(_[^/]*\.pdf)/NNNN\1/' | sort -u)
}
hashes() { (cd "$box" && find . -type f ! -name '.*.tmp' ! -name '.*.number' ! -name '.trusted.lock' -exec sha256sum {} + | sort); }

# How reading ends: `check` of the bench and `identity show`.
reading() {
  local check=none show=0
  if [ -f "$box/bench/bench.yaml" ]; then gate check "$box/bench" --on "$day"; check=$?; fi
  gate identity show; show=$?
  echo "$check/$show"
}

# The call's name and its number among those of the same name and thread, for each that changes something in the box.
mutating() {
  awk -v box="$box" '
    { name = $2; sub(/\(.*/, "", name) }
    name !~ /^[a-z0-9_]+$/ { next }
    { number = ++count[$1, name] }
    index($0, box) == 0 { next }
    name == "openat" && $0 !~ /O_CREAT|O_WRONLY|O_RDWR/ { next }
    name == "fcntl" && $0 !~ /F_SETLK/ { next }
    !seen[name, number]++ { print name, number }' "$1"
}

blame() {
  wrong=$((wrong + 1))
  echo "WRONG $case, $fault at $call $number: $1"
  sed 's/^/    /' "$work/told" | head -n 6
}

judge() {
  local code=$1 state now
  names > "$work/names"
  hashes > "$work/hashes"
  if cmp -s "$work/names" "$work/$case.new"; then state=new
  elif cmp -s "$work/names" "$work/$case.old"; then state=old
  else state=between; fi
  states[$state]=$((${states[$state]} + 1))
  # Nothing that was there is changed; only a draft goes when it is closed.
  if comm -23 "$work/$case.before" "$work/hashes" | grep -v 'draft\.yaml$' | grep -q .; then blame "a file that was there is another"; fi
  case $code in
    0 | 10 | 20) [ $state = new ] || blame "it ended with $code, and the state is $state" ;;
    3) [ -s "$work/told" ] || blame "it failed without a word" ;;
    137) [ "$fault" = KILL ] || blame "it was killed" ;;
    *) blame "it ended with $code" ;;
  esac
  # What is told to be there is there.
  sed -n 's/^mainsgate: \(.*\) is there, but the disk failed.*/\1/p' "$work/told" | while read -r path; do
    [ -e "$path" ] || echo "$path"
  done | grep -q . && blame "it said that a file is there which is not"
  if find "$box" -type f -empty ! -name '.*' | grep -q .; then blame "a file is empty"; fi
  now=$(reading)
  case $now in
    "${reads[0]}" | "${reads[1]}") ;;
    # Between its two files, a key is there and not yet written down as known; both are read.
    *) blame "reading ends with $now, not ${reads[0]} or ${reads[1]}" ;;
  esac
  while read -r sealed; do
    gate verify "$sealed"
    case $? in 0 | 10 | 20 | 31) ;; *) blame "$sealed can't be verified" ;; esac
  done < <(find "$box" -name '*.pdf' ! -name '.*')
  # Once it is done, the same command would do the next thing.
  if [ $state = new ]; then return; fi
  gate "${words[@]}"
  cp "$work/err" "$work/told"
  names > "$work/names"
  cmp -s "$work/names" "$work/$case.new" || { diff "$work/names" "$work/$case.new" > "$work/told"; blame "the same again does not end it"; }
  if [ "$(reading)" != "${reads[1]}" ]; then blame "the same again can't be read"; fi
}

start_over() { rm -rf "$box"; cp -r "$work/$case" "$box"; }

run() {
  case=$1; given "$case"
  start_over
  names > "$work/$case.old"; hashes > "$work/$case.before"; reads[0]=$(reading)
  start_over
  strace -f -y --seccomp-bpf -e trace=$calls -o "$work/trace" "${java[@]}" "${words[@]}" > "$work/out" 2> "$work/err"
  names > "$work/$case.new"; reads[1]=$(reading)
  cmp -s "$work/$case.old" "$work/$case.new" && { echo "writes.sh: \`$case\` does nothing" >&2; cat "$work/err" >&2; exit 3; }
  mutating "$work/trace" > "$work/calls"
  local all step first=$wrong done=$faults
  all=$(wc -l < "$work/calls")
  step=1; if [ "$sample" -gt 0 ] && [ "$all" -gt "$sample" ]; then step=$((all / sample)); fi
  local shift=0
  for fault in KILL EIO ENOSPC; do
    # Each fault takes other calls of the sample.
    shift=$((shift + 1))
    while read -r call number; do
      start_over
      # With the filter that makes strace quick no signal is sent.
      local what=(--seccomp-bpf -e "inject=$call:error=$fault:when=$number") code
      [ $fault != KILL ] || what=(-e "inject=$call:signal=KILL:when=$number")
      { strace -f -y -e trace=$calls "${what[@]}" -o "$work/trace" \
        "${java[@]}" "${words[@]}" > "$work/out" 2> "$work/told"; code=$?; } 2> /dev/null
      # A call may have come another time than in the first run: then nothing was tried.
      if [ $fault = KILL ]; then
        [ $code = 137 ] || { missed=$((missed + 1)); continue; }
      elif ! grep INJECTED "$work/trace" | grep -qF "$box"; then
        missed=$((missed + 1)); continue
      fi
      faults=$((faults + 1))
      judge $code
    done < <(awk -v step=$step -v shift=$shift 'NR % step == shift % step' "$work/calls")
  done
  echo "$case: $all calls, $((faults - done)) faults, $((wrong - first)) wrong"
}

reads=(none none)
set_up
for each in $wanted; do run "$each"; done
echo "$faults faults: ${states[old]} left the old state, ${states[new]} the new, ${states[between]} one between that the same command ends;"
echo "$missed did not meet their call; $wrong wrong"
[ $wrong = 0 ] && [ $faults -gt 0 ]
