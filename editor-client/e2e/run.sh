#!/usr/bin/env bash
# Tests in real editors: with the server, and with one that says nothing, where every check has to fail.
#
#   editor-client/e2e/run.sh [SERVER]    SERVER: server/bin/handwheel where none is named
#
# Prints one line for each editor and check, and "N passed, N failed" at the end; exit code 1 if one failed.
# As root, with CI=true, it installs the editors that are missing.
set -uo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
clients=$(dirname "$here")
project=$(dirname "$clients")
server=${1:-$project/server/bin/handwheel}

if [ "${CI:-}" = true ] && ! { command -v nvim && command -v emacs && command -v vim && [ -d /usr/share/doc/vim-ale ]; } >/dev/null; then
  export DEBIAN_FRONTEND=noninteractive
  apt-get update && apt-get install -y --no-install-recommends neovim emacs-nox elpa-eglot vim-nox vim-ale bsdutils || exit 2
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
printf '#!/bin/sh\nexec java -Xshare:auto -XX:TieredStopAtLevel=1 -cp "%s" SilentServer\n' "$work" >"$work/silent"
chmod +x "$work/silent"
javac -d "$work" "$here/SilentServer.java" || exit 2

# A plan of its own for each editor, from an example: a name to change, a slip in the material, a line out of form.
plan() {
  rm -rf "$work/examples" && cp -r "$project/examples" "$work/examples" && touch "$work/examples/.handwheel"
  sed -e 's/  # expect:.*//' -e 's/material gunmetal-LG2/material gunmetal-LG9/' -e 's/width 28/width    28/' \
    -e 's/finish bottom to 17.85/finish bottom to bore/' -e '/^  use/a\  let bore = 17.85' \
    "$work/examples/mistakes/four-in-one.plan" >"$work/examples/mistakes/first.plan"
}

neovim() {
  timeout 90 nvim --clean --headless --cmd "set runtimepath^=$clients/neovim" -c "luafile $here/neovim.lua" </dev/null 2>"$work/err"
}

emacs_eglot() {
  timeout 120 emacs -q --batch -l "$here/emacs.el" </dev/null 2>"$work/err"
}

# Completion, the quick fix and formatting are not checked in Vim.
vim_ale() {
  rm -f "$work/out"
  timeout 120 script -qec "vim -Nu NONE -n -S '$here/vim.vim'" /dev/null </dev/null >"$work/err" 2>&1
  cat "$work/out"
}

# The checks of an editor, the first of which needs no server.
checks_of() {
  case $1 in
    vim) printf '%s\n' "file type" squiggle "hover with dial" rename ;;
    *) printf '%s\n' "file type" squiggle "hover with dial" completion "quick fix" rename formatting ;;
  esac
}

run() {
  case $1 in
    neovim) neovim ;;
    emacs) emacs_eglot ;;
    vim) vim_ale ;;
  esac
}

# Runs all editors against the server in $1, and gives an editor's lines of "ok" and "FAIL"; an editor that says
# nothing at all has failed.
everyone() {
  export E2E_SERVER=$1 E2E_WAIT=$2 E2E_PLAN=$work/examples/mistakes/first.plan E2E_CLIENTS=$clients HOME=$work/home E2E_OUT=$work/out
  mkdir -p "$HOME"
  for editor in $editors; do
    plan
    run "$editor" | tr -d '\r' | grep -E '^(ok  |FAIL) ' >"$work/lines"
    while read -r name; do
      grep -qE "^(ok  |FAIL) $editor $name(:|\$)" "$work/lines" ||
        echo "FAIL $editor $name: was not run: $(tail -n 1 "$work/err")" >>"$work/lines"
    done < <(checks_of "$editor")
    cat "$work/lines"
  done
}

editors="neovim emacs vim"
echo "with the server"
everyone "$server" 15 | tee "$work/real"
echo "with a server that says nothing: all but the file type has to fail"
everyone "$work/silent" 3 | tee "$work/mute"

passed=$(grep -c '^ok' "$work/real")
failed=$(grep -c '^FAIL' "$work/real")
for editor in $editors; do
  while read -r name; do
    if grep -q "^FAIL $editor $name:" "$work/mute"; then
      passed=$((passed + 1))
    else
      echo "FAIL $editor $name does not notice a server that says nothing"
      failed=$((failed + 1))
    fi
  done < <(checks_of "$editor" | tail -n +2)
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
