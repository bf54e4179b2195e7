import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';

const folder = path.resolve(import.meta.dirname, '..');
const manifest = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
const { contributes } = manifest;
const sources = readdirSync(path.join(folder, 'src')).map(file => readFileSync(path.join(folder, 'src', file), 'utf8')).join('\n');

test('each command is registered, and no other', () => {
  const declared = contributes.commands.map((entry: { command: string }) => entry.command).sort();
  const registered = [...sources.matchAll(/command\('(\w+)',/g)].map(found => `handwheel.${found[1]}`).sort();
  assert.deepEqual(registered, declared);
});

test('what needs a request of our own is offered only where the server knows it', () => {
  const needs: Record<string, string> = { 'handwheel.showPicture': 'handwheel.picture', 'handwheel.showSheet': 'handwheel.sheet',
    'handwheel.saveSheet': 'handwheel.sheet', 'handwheel.draft': 'handwheel.draft' };
  for (const menu of ['commandPalette', 'editor/title']) {
    for (const [command, context] of Object.entries(needs)) {
      const entry = contributes.menus[menu].find((known: { command: string }) => known.command === command);
      assert.ok(entry?.when.startsWith(`${context} && `), `${menu}: ${command}`);
    }
  }
});

test('a workspace cannot choose the program that is run', () => {
  assert.equal(contributes.configuration.properties['handwheel.java.home'].scope, 'machine');
  assert.equal(manifest.capabilities.untrustedWorkspaces.supported, true);
});

test('every setting is described, and every file that is named is there', () => {
  for (const [name, setting] of Object.entries<Record<string, string>>(contributes.configuration.properties)) {
    assert.ok((setting['description'] ?? setting['markdownDescription'] ?? '').length > 20, name);
  }
  const named = [...JSON.stringify(manifest).matchAll(/"((?:\.\/)?(?:images|syntaxes|snippets|walkthrough)\/[^"]+|\.\/[\w-]+\.json)"/g)];
  assert.ok(named.length >= 10);
  for (const [, file] of named) {
    assert.ok(existsSync(path.join(folder, file ?? '')), file);
  }
});

test('the problem matcher reads what "handwheel check" prints', () => {
  const pattern = new RegExp(contributes.problemPatterns[0].regexp);
  const found = 'examples/mistakes/four-in-one.plan:59:3: error[overcut] this goes 0.10 mm'.match(pattern);
  assert.deepEqual(found?.slice(1), ['examples/mistakes/four-in-one.plan', '59', '3', 'error', 'overcut', 'this goes 0.10 mm']);
  assert.equal('C:\\plans\\a.plan:1:2: note[unused-name] x'.match(pattern)?.[1], 'C:\\plans\\a.plan');
  assert.equal('  related examples/a.plan:12: the height on the drawing'.match(pattern), null);
  assert.equal('2 errors, 2 warnings in 1 plan and 1 shop file'.match(pattern), null);
});
