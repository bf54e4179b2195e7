// Bundles the extension and the scripts of its panels into dist/, with the licences of what is bundled.
import { build } from 'esbuild';
import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';

const common = { bundle: true, minify: true, legalComments: 'none', logLevel: 'warning', metafile: true };
rmSync('dist', { recursive: true, force: true });
const extension = await build({
  ...common,
  entryPoints: ['src/extension.ts'],
  outfile: 'dist/extension.cjs',
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  external: ['vscode'],
});
await build({
  ...common,
  entryPoints: ['view/picture.ts', 'view/sheet.ts'],
  outdir: 'dist',
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
});

const packages = new Set(Object.keys(extension.metafile.inputs)
  .map(file => file.match(/^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/)?.[0])
  .filter(folder => folder !== undefined));
const notices = [...packages].sort().map(folder => {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find(entry => /^licen[cs]e/i.test(entry));
  if (!file) {
    throw new Error(`${name} comes without its licence`);
  }
  return `${name} ${version} (${license})\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}\n`;
});
writeFileSync('dist/NOTICES.txt', notices.join('\n----\n\n'));
