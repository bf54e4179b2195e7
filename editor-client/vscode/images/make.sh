#!/usr/bin/env bash
# Draws icon.png from icon.svg with a Chromium: editor-client/vscode/images/make.sh
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
page=$(mktemp --suffix=.html)
trap 'rm -f "$page"' EXIT
{ echo '<!DOCTYPE html><style>body{margin:0}svg{display:block}</style>'; cat icon.svg; } >"$page"
chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --default-background-color=00000000 \
  --window-size=128,128 --screenshot="$PWD/icon.png" "file://$page" >/dev/null 2>&1
file icon.png
