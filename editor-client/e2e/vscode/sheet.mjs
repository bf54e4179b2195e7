// Sheets in a headless Chromium: rules of WCAG by axe-core, and what a phone and a keyboard need.
//
//   node sheet.mjs BROWSER SHEET.html...
//
// Prints a line for each sheet and check. Ends with 1 if one failed.
import path from 'node:path';
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const [executablePath, ...sheets] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const browser = await chromium.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu'] });
let failed = 0;

function say(sheet, check, trouble) {
  failed += trouble ? 1 : 0;
  console.log(`${trouble ? 'FAIL' : 'ok  '} sheet ${path.basename(sheet, '.html')}: ${check}${trouble ? `: ${trouble}` : ''}`);
}

for (const sheet of sheets) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  const asked = [];
  page.on('request', request => asked.push(request.url()));
  await page.goto(pathToFileURL(sheet).href);
  const here = page.url();
  say(sheet, 'asks for nothing else', asked.filter(url => url !== here && !url.startsWith('data:')).join(' '));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  say(sheet, 'fits the width of a phone', wide > 0 ? `${wide} pixels too wide` : '');
  await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const result = await globalThis.axe.run(document, { resultTypes: ['violations'] });
    return result.violations.map(one => `${one.id} at ${one.nodes.map(node => node.target.join(' ')).slice(0, 3).join(', ')}`);
  });
  say(sheet, 'no violation found by axe-core', found.join('; '));
  await page.locator('input[type=checkbox]').first().focus();
  await page.keyboard.press('Space');
  const ticked = await page.locator('input[type=checkbox]').first().isChecked();
  say(sheet, 'a step is ticked by the keyboard', ticked ? '' : 'it was not');
  await context.close();
}
await browser.close();
process.exit(failed === 0 ? 0 : 1);
