#!/usr/bin/env bash
# Serves the workbench with one extension, for one browser on this machine, until it is stopped.
#
#   start.sh CACHE STATE VSIX PORT [JAVA]
#
# JAVA is what the user's settings name as the folder of Java; none where it is left out.
# CACHE is what install.sh made, STATE a folder for settings and logs. Nothing is looked up outside. Folders are
# not trusted: what the tests see works in restricted mode.
set -euo pipefail
cache=${1:?cache} state=${2:?state} vsix=${3:?vsix} port=${4:?port}
java_home=${JAVA_HOME:-}
export PATH="$cache/node/bin:$PATH" EXTENSIONS_GALLERY='{}'
export HOME=$state/home XDG_CONFIG_HOME=$state/config XDG_DATA_HOME=$state/data
[ -z "$java_home" ] || export JAVA_HOME="$java_home"
mkdir -p "$HOME" "$state/user/User"
cat >"$state/user/User/settings.json" <<'J'
{
  "workbench.startupEditor": "none", "telemetry.telemetryLevel": "off", "extensions.autoUpdate": false,
  "extensions.autoCheckUpdates": false, "extensions.ignoreRecommendations": true, "workbench.enableExperiments": false,
  "update.mode": "none", "chat.disableAIFeatures": true, "chat.commandCenter.enabled": false, "git.enabled": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden", "workbench.colorTheme": "Default Light Modern",
  "security.workspace.trust.startupPrompt": "never", "security.workspace.trust.banner": "never", "editor.minimap.enabled": false
}
J
mkdir -p "$state/user/Machine"
printf '{"handwheel.java.home": "%s"}\n' "${5:-}" >"$state/user/Machine/settings.json"
server=$cache/code-server/node_modules/.bin/code-server
common=(--user-data-dir "$state/user" --extensions-dir "$state/ext" --config "$state/config.yaml")
"$server" "${common[@]}" --install-extension "$vsix"
exec "$server" "${common[@]}" --bind-addr "127.0.0.1:$port" --auth none --disable-telemetry --disable-update-check \
  --disable-getting-started-override
