# shellcheck shell=bash
# Sourced by demo/run and tests/run: what a fresh machine may lack.

# Installs those of the named Debian packages that are missing.
need() {
    local package missing=() as_root=()
    for package in "$@"; do
        dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed ||
            missing+=("$package")
    done
    [ ${#missing[@]} -gt 0 ] || return 0
    if ! command -v apt-get >/dev/null; then
        echo "Not a Debian system: make sure to have what these packages hold: ${missing[*]}" >&2
        return 0
    fi
    echo "Installing ${missing[*]} ..."
    [ "$(id -u)" -eq 0 ] || as_root=(sudo)
    "${as_root[@]}" apt-get update --quiet=2 </dev/null
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install --quiet=2 --yes --no-install-recommends "${missing[@]}" </dev/null
}

# Puts cargo on the search path, where a shell that is no login shell lacks it.
need_rust() {
    command -v cargo >/dev/null || PATH=$HOME/.cargo/bin:$PATH
    command -v cargo >/dev/null && return
    echo "No Rust toolchain was found: install one first." >&2
    return 1
}
