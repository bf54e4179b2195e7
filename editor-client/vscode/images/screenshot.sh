#!/usr/bin/env bash
# Makes workbench.png, the picture of the README, from the extension as it runs. Needs chromium and npm, and
# server/target/handwheel.jar (mvn package).
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
clients=$(cd "$here/../.." && pwd)
cache=$clients/e2e/.cache
work=$(mktemp -d)
trap 'kill "${serving:-}" 2>/dev/null || true; rm -rf "$work"' EXIT
"$clients/e2e/vscode/install.sh" "$cache"
export PATH="$cache/node/bin:$PATH"
"$here/../build.sh" "$clients/../server/target/handwheel.jar" "$work/handwheel.vsix" >/dev/null
cp -r "$clients/../examples" "$work/examples"
plan=$work/examples/mistakes/four-in-one.plan
sed -i 's/  # expect:.*//' "$plan"
"$clients/e2e/vscode/start.sh" "$cache" "$work/state" "$work/handwheel.vsix" 18417 >"$work/log" 2>&1 &
serving=$!
for _ in $(seq 240); do grep -q 'HTTP server listening' "$work/log" && break; sleep 0.5; done
node "$clients/e2e/vscode/screenshot.mjs" 127.0.0.1:18417 "$work/examples" "$plan" "$(command -v chromium)" 60 "$here/workbench.png"
