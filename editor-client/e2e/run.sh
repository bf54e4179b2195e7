#!/usr/bin/env bash
# Tests in real editors: with the server, and with one that says nothing, where every check that needs one has to fail.
#
#   editor-client/e2e/run.sh [SERVER]    SERVER: server/bin/handwheel where none is named
#
# With VS Code, sheets are looked at in a browser, too: axe-core, the width of a phone, the keyboard.
#
# Prints one line for each editor and check, and "N passed, N failed" at the end; exit code 1 if one failed.
# As root, with CI=true, it installs what is missing. VS Code's workbench comes from npm into .cache beside this file.
# SERVER is for the others; VS Code is given the extension with server/target/handwheel.jar in it.
# E2E_EDITORS="neovim vim" chooses editors; E2E_PICTURES=FOLDER keeps what the workbench looked like.
set -uo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
clients=$(dirname "$here")
project=$(dirname "$clients")
server=${1:-$project/server/bin/handwheel}

editors=${E2E_EDITORS:-neovim emacs vim vscode}
cache=$here/.cache
# Sheets are checked where the server makes them: its README names all it can do, which a test of its own checks.
E2E_SHEET=$(grep -o -m 1 handwheel/sheet "$project/server/README.md" || true)
export E2E_SHEET
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)

# The names of packages whose commands or folders are not there.
missing() {
  command -v nvim >/dev/null || echo neovim
  command -v emacs >/dev/null || echo emacs-nox
  ls -d /usr/share/emacs/site-lisp/elpa-src/eglot-* >/dev/null 2>&1 || echo elpa-eglot
  command -v vim >/dev/null || echo vim-nox
  [ -d /usr/share/doc/vim-ale ] || echo vim-ale
  command -v script >/dev/null || echo bsdutils
  [ -n "$browser" ] || echo chromium
  command -v npm >/dev/null || echo npm
  # The workbench's native modules are made where they do not come ready.
  for tool in python3 make g++; do command -v "$tool" >/dev/null || echo "$tool"; done
}

if [ "${CI:-}" = true ]; then
  packages=$(missing)
  if [ -n "$packages" ]; then
    export DEBIAN_FRONTEND=noninteractive
    # shellcheck disable=SC2086 # one word for each package
    apt-get update && apt-get install -y --no-install-recommends $packages || { echo "run.sh: could not install: $packages" >&2; exit 2; }
    browser=$(command -v chromium)
  fi
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
printf '#!/bin/sh\nexec java -Xshare:auto -XX:TieredStopAtLevel=1 -cp "%s" SilentServer\n' "$work" >"$work/silent"
chmod +x "$work/silent"
javac -d "$work" "$here/SilentServer.java" || exit 2

# A plan of its own for each editor, from an example: a name to change, a slip in the material, a line out of form.
# Beside it a plan that is only started, without setups.
plan() {
  rm -rf "$work/examples" && cp -r "$project/examples" "$work/examples"
  sed -e 's/  # expect:.*//' -e 's/material gunmetal-LG2/material gunmetal-LG9/' -e 's/width 28/width    28/' \
    -e 's/finish bottom to 17.85/finish bottom to bore/' -e '/^  use/a\  let bore = 17.85' \
    "$work/examples/mistakes/four-in-one.plan" >"$work/examples/mistakes/first.plan"
  sed '/^setup/,$d' "$work/examples/engine-bed-packer.plan" >"$work/examples/started.plan"
}

neovim() {
  timeout 200 nvim --clean --headless --cmd "set runtimepath^=$clients/neovim" -c "luafile $here/neovim.lua" </dev/null 2>"$work/err"
}

emacs_eglot() {
  timeout 200 emacs -q --batch -l "$here/emacs.el" </dev/null 2>"$work/err"
}

vim_ale() {
  rm -f "$work/out"
  timeout 200 script -qec "vim -Nu NONE -n -S '$here/vim.vim'" /dev/null </dev/null >"$work/err" 2>&1
  cat "$work/out"
}

# Starts the workbench with one of the extensions, and runs a script of checks in it:
# workbench SCRIPT EXTENSION [JAVA]
workbench() {
  local state port=$((20000 + RANDOM % 20000)) serving
  state=$(mktemp -d "$work/state.XXXX")
  "$here/vscode/start.sh" "$cache" "$state" "$work/$2.vsix" "$port" "${3:-}" >"$state/log" 2>&1 </dev/null &
  serving=$!
  for _ in $(seq 240); do
    grep -q 'HTTP server listening' "$state/log" && break
    kill -0 "$serving" 2>/dev/null || break
    sleep 0.5
  done
  PATH=$cache/node/bin:$PATH timeout 900 node "$here/vscode/$1" "127.0.0.1:$port" "$work/examples" "$E2E_PLAN" "$browser" \
    "$E2E_WAIT" "${E2E_PICTURES:+$E2E_PICTURES/$E2E_KIND}" 2>"$work/err" || tail -n 5 "$state/log" >>"$work/err"
  kill "$serving" && wait "$serving"
} 2>>"$work/err"

# The folder names a program to run as its Java, which must not count.
vscode() {
  mkdir -p "$work/examples/.vscode"
  echo '{"handwheel.java.home": "/nowhere"}' >"$work/examples/.vscode/settings.json"
  workbench checks.mjs "$E2E_KIND"
  [ "$E2E_KIND" = mute ] || workbench nojava.mjs real /nowhere
}

# The extension as people install it, and the same around a server that says nothing.
extensions() {
  "$here/vscode/install.sh" "$cache" || { echo "run.sh: the VS Code workbench could not be installed" >&2; return 2; }
  jar --create --file "$work/silent.jar" --main-class SilentServer -C "$work" SilentServer.class || return 2
  (
    export PATH="$cache/node/bin:$PATH"
    cd "$clients/vscode" &&
      ./build.sh "$project/server/target/handwheel.jar" "$work/real.vsix" >"$work/vsix.log" 2>&1 && npm test >"$work/npm.log" 2>&1 &&
      ./build.sh "$work/silent.jar" "$work/mute.vsix" >>"$work/vsix.log" 2>&1
  ) || { tail -n 40 "$work/vsix.log" "$work/npm.log" >&2; echo "run.sh: the extension could not be made or failed its tests" >&2; return 2; }
  grep -E '^. (tests|pass|fail) ' "$work/npm.log" | tr '\n' ' '
  echo "in the extension's own tests"
  find "$project/examples" "$project/grammar/LANGUAGE.md" -name '*.plan' -o -name '*.shop' -o -name '*.md' | sort |
    xargs java -cp "$project/server/target/handwheel.jar" "$here/Tokens.java" |
    "$cache/node/bin/node" "$here/vscode/grammar.mjs" "$clients/vscode/syntaxes/handwheel.tmLanguage.json" ||
    { echo "run.sh: the TextMate grammar is not as the lexer" >&2; return 2; }
}

# The checks that need no server.
serverless() {
  printf '%s\n' "file type" "examples copied"
}

# The checks of an editor.
checks_of() {
  case $1 in
    vscode) printf '%s\n' "file type" squiggle "hover with dial" completion picture "picture follows the cursor" \
      "picture leads to the line" "quick fix" rename formatting draft ${E2E_SHEET:+sheet "sheet saved"} "new plan" "examples copied"
      [ "${E2E_KIND:-}" = mute ] || echo "leads to the setting where there is no Java" ;;
    *) printf '%s\n' "file type" squiggle "hover with dial" completion "quick fix" rename formatting ;;
  esac
}

run() {
  case $1 in
    neovim) neovim ;;
    emacs) emacs_eglot ;;
    vim) vim_ale ;;
    vscode) vscode ;;
  esac
}

# Runs all editors against the server in $1, and gives an editor's lines of "ok" and "FAIL"; an editor that says
# nothing at all has failed.
everyone() {
  export E2E_SERVER=$1 E2E_WAIT=$2 E2E_KIND=$3 E2E_PLAN=$work/examples/mistakes/first.plan E2E_CLIENTS=$clients HOME=$work/home E2E_OUT=$work/out
  mkdir -p "$HOME" ${E2E_PICTURES:+"$E2E_PICTURES/$E2E_KIND"}
  for editor in $editors; do
    plan
    run "$editor" | tr -d '\r' | grep -E '^(ok  |FAIL) ' >"$work/lines"
    while read -r name; do
      grep -qE "^(ok  |FAIL) $editor $name(:|\$)" "$work/lines" ||
        echo "FAIL $editor $name: was not run: $(grep -v "^ *$" "$work/err" | tail -n 1)" >>"$work/lines"
    done < <(checks_of "$editor")
    cat "$work/lines"
  done
}

# Sheets of three examples in a browser: axe-core, the width of a phone, the keyboard.
sheets() {
  local name pages=()
  for name in bearing-block boiler-flange hand-hole-door; do
    pages+=("$work/$name.html")
    "$server" sheet "$project/examples/$name.plan" -o "$work/$name.html" || echo "FAIL sheet $name: it was not made"
  done
  "$cache/node/bin/node" "$here/vscode/sheet.mjs" "$browser" "${pages[@]}" || echo "FAIL sheet: not all checks passed"
}

case " $editors " in
  *" vscode "*) extensions || exit 2 ;;
esac
echo "with the server"
everyone "$server" 60 real | tee "$work/real"
case " $editors " in
  *" vscode "*) sheets | tee -a "$work/real" ;;
esac
echo "with a server that says nothing: all that needs one has to fail"
everyone "$work/silent" 3 mute | tee "$work/mute"

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
  done < <(E2E_KIND=mute checks_of "$editor" | grep -vxF -f <(serverless))
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
