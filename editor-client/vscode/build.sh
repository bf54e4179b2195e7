#!/usr/bin/env bash
# Makes the extension as one file to install.
#
#   editor-client/vscode/build.sh [JAR [VSIX]]
#
# JAR is the server (server/target/handwheel.jar, made by "mvn package"), VSIX what to write
# (editor-client/vscode/handwheel-0.1.0.vsix). Needs npm and Node.js 20 or newer.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
project=$(cd "$here/../.." && pwd)
jar=$(realpath -m "${1:-$project/server/target/handwheel.jar}")
version=$(sed -n 's/^  "version": "\(.*\)",$/\1/p' "$here/package.json")
vsix=$(realpath -m "${2:-$here/handwheel-$version.vsix}")
[ -f "$jar" ] || { echo "build.sh: no $jar; make it with: mvn package" >&2; exit 2; }

cd "$here"
# What is there already is kept as long as the lock file says so.
if ! cmp -s package-lock.json node_modules/.handwheel-lock; then
  npm ci --ignore-scripts --no-audit --no-fund --loglevel=error
  cp package-lock.json node_modules/.handwheel-lock
fi
npm run --silent check
npm run --silent compile
rm -rf server examples LICENSE
mkdir server
cp "$jar" server/handwheel.jar
cp "$project/LICENSE" LICENSE
cp -r "$project/examples" examples
npx --no-install vsce package --no-dependencies --allow-missing-repository --out "$vsix"
