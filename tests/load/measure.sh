# shellcheck shell=bash
# Sourced by the measurements beside it, at the root of the repository: what they have in common.

# Installs what is missing, builds the server and runs NAME.py, ten minutes at most:
# measure NAME [PACKAGE...] -- [ARGUMENT...]
measure() {
    local name=$1 packages=(build-essential postgresql python3)
    shift
    while [ "$1" != -- ]; do
        packages+=("$1")
        shift
    done
    shift
    . demo/need.sh
    need_rust
    need "${packages[@]}"
    cargo build --locked --quiet --release -p tallyhost
    exec timeout 600 python3 "tests/load/$name.py" "$@"
}
