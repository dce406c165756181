# Sourced by tests/run, tests/bench/run and demo/run: brings a bare Debian 12 to where the tree
# builds, and times what they do. Nothing here writes outside the tree but apt.

source_dir=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd -P)
part=        # what is being done, for the last words of a run that fails
part_began=0
took=()      # "set up 3 s", "build 1 min 12 s"

die() {
    printf '%s: %s\n' "$0" "$*" >&2
    exit 1
}

duration() {  # seconds
    if (($1 < 60)); then printf '%d s' "$1"; else printf '%d min %d s' $(($1 / 60)) $(($1 % 60)); fi
}

# Ends the part before it; end_part alone ends the last.
begin_part() {
    end_part
    part=$1
    part_began=$SECONDS
}

end_part() {
    [[ -z $part ]] || took+=("$part $(duration $((SECONDS - part_began)))")
    part=
}

say_took() {
    local text
    printf -v text '%s, ' "${took[@]}"
    printf 'Took: %s.\n' "${text%, }"
}

say_where_it_failed() {
    local status=$?
    ((status == 0)) || [[ -z $part ]] || printf '\n%s failed: %s.\n' "$0" "$part" >&2
}

# The packages of the named sections of debian-packages.txt, one a line.
packages_of() {
    local section wanted=0 line
    while IFS= read -r line; do
        line=${line%%#*}
        line=${line%"${line##*[![:space:]]}"}
        [[ -n $line ]] || continue
        if [[ $line == \[*\] ]]; then
            wanted=0
            for section in "$@"; do [[ $line != "[$section]" ]] || wanted=1; done
        elif ((wanted)); then
            printf '%s\n' "$line"
        fi
    done <"$source_dir/app/cmake/debian-packages.txt"
}

missing_packages() {  # names…
    local present
    # dpkg-query fails when it does not know one of the names; it lists the others all the same.
    present=$(dpkg-query -W -f='${Package} ${db:Status-Status}\n' "$@" 2>/dev/null |
        sed -n 's/ installed$//p' || true)
    local name
    for name in "$@"; do
        grep -qxF -- "$name" <<<"$present" || printf '%s\n' "$name"
    done
}

as_root() {
    if ((EUID == 0)); then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        die "root is needed for: $* (there is no sudo here)"
    fi
}

# Installs what is missing of the named sections, and asks apt nothing when nothing is.
install_missing() {
    local wanted missing
    mapfile -t wanted < <(packages_of "$@")
    ((${#wanted[@]})) || die "app/cmake/debian-packages.txt names no package for: $*"
    if ! command -v dpkg-query >/dev/null; then
        printf 'Not a Debian system; these are taken to be there under their names here: %s\n' \
            "${wanted[*]}"
        return
    fi
    mapfile -t missing < <(missing_packages "${wanted[@]}")
    ((${#missing[@]})) || return 0
    printf 'Installing %s\n' "${missing[*]}"
    as_root apt-get -q update
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y --no-install-recommends install \
        "${missing[@]}"
    mapfile -t missing < <(missing_packages "${wanted[@]}")
    ((${#missing[@]} == 0)) || die "still missing after apt-get: ${missing[*]}"
}

# Qt needs a UTF-8 locale and says so at length where there is none.
want_utf8() {
    [[ ${LC_ALL:-${LC_CTYPE:-${LANG:-}}} =~ [Uu][Tt][Ff]-?8 ]] || export LC_ALL=C.UTF-8
}

# A clone that belongs to somebody else (a mounted folder, root in a container) is still this tree.
trust_this_tree() {
    export GIT_CONFIG_COUNT=1 GIT_CONFIG_KEY_0=safe.directory GIT_CONFIG_VALUE_0="$source_dir"
}

# Configures and builds all of app/cmake/NAME.cmake into build/NAME.
configure() {  # name
    local settings=app/cmake/$1.cmake folder=build/$1
    # A cache keeps its first settings, so it goes when the file they came from has changed.
    if [[ -e $folder/CMakeCache.txt && $settings -nt $folder/CMakeCache.txt ]]; then
        rm -f "$folder/CMakeCache.txt"
    fi
    export CCACHE_BASEDIR=$source_dir CCACHE_NOHASHDIR=1
    cmake -C "$settings" -B "$folder" -G Ninja
}
