// Compares the TextMate grammar with the lexer, with the engine that VS Code colours texts with.
//
//   java -cp handwheel.jar Tokens.java FILES | node grammar.mjs GRAMMAR
//
// Each token of the lexer has to be one word to the grammar, and all tokens of a kind have to have one scope.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
const registry = new textmate.Registry({
  onigLib: Promise.resolve({
    createOnigScanner: patterns => new oniguruma.OnigScanner(patterns),
    createOnigString: text => new oniguruma.OnigString(text),
  }),
  loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(readFileSync(process.argv[2], 'utf8'), 'grammar.json')),
});
const grammar = await registry.loadGrammar('source.handwheel');

const texts = new Map();
function line(file, number) {
  if (!texts.has(file)) {
    texts.set(file, readFileSync(file, 'utf8').split('\n').map(text =>
      grammar.tokenizeLine(text.replace(/\r$/, ''), null).tokens));
  }
  return texts.get(file)[number];
}

const scopes = new Map();
let count = 0;
for (const row of readFileSync(0, 'utf8').trimEnd().split('\n')) {
  const [file, number, start, end, kind] = row.split('\t');
  const place = `${file}:${Number(number) + 1}:${Number(start) + 1} ${kind}`;
  const words = line(file, Number(number)).filter(word => word.startIndex < Number(end) && word.endIndex > Number(start));
  assert.equal(words.length, 1, `${place} is ${words.length} words`);
  assert.equal(words[0].startIndex, Number(start), `${place} starts elsewhere`);
  const scope = words[0].scopes.at(-1);
  assert.notEqual(scope, 'source.handwheel', `${place} has no scope`);
  assert.equal(scopes.get(kind) ?? scope, scope, `${place} has another scope than before`);
  scopes.set(kind, scope);
  count++;
}
assert.ok(count > 5000 && scopes.size > 80, `too few to tell: ${count} tokens of ${scopes.size} kinds`);
console.log(`${count} tokens of ${scopes.size} kinds have the colours of the lexer's words`);
