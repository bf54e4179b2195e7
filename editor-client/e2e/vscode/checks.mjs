// Checks in a VS Code workbench, started by run.sh:  node checks.mjs HOST:PORT FOLDER PLAN BROWSER SECONDS [SCREENSHOTS]
import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Workbench } from './workbench.mjs';

const [host, folder, plan, browser, seconds, pictures] = process.argv.slice(2);
const bench = await Workbench.open(host, folder, plan, browser, Number(seconds) * 1000);
const { page } = bench;

async function check(name, test) {
  try {
    await test();
    console.log(`ok   vscode ${name}`);
  } catch (problem) {
    console.log(`FAIL vscode ${name}: ${String(problem.message ?? problem).split('\n')[0]}`);
  }
  if (pictures) {
    await page.screenshot({ path: `${pictures}/${name.replaceAll(' ', '-')}.png` });
  }
  await page.keyboard.press('Escape');
}

/** What the list of problems says with these words of the plan, or of the files that are named. */
async function finding(words, files = `, **/${path.basename(plan)}`) {
  const filter = page.locator('.viewpane-filter input').first();
  const wanted = words + files;
  if (await filter.inputValue() !== wanted) {
    await filter.fill(wanted);
  }
  const rows = page.locator('.markers-panel .monaco-list-row').filter({ hasText: words });
  return (await rows.count()) > 0 ? (await rows.first().innerText()).replaceAll(/\s+/g, ' ') : undefined;
}

/** A place on the screen, in the picture's frame, where a line's shape is, and the line. */
function shapeOnScreen() {
  const root = document.getElementById('picture').shadowRoot;
  for (let y = 20; y < innerHeight; y += 5) {
    for (let x = 20; x < innerWidth; x += 5) {
      const line = root.elementFromPoint(x, y)?.closest('[data-goes]')?.getAttribute('data-line');
      if (line) {
        return { x, y, line: Number(line) };
      }
    }
  }
  return undefined;
}

await check('file type', async () => {
  await bench.eventually('another language', async () =>
    await page.locator('.statusbar-item').filter({ hasText: /^Handwheel$/ }).count() > 0);
});

await check('squiggle', async () => {
  await bench.command('View: Focus Problems');
  await bench.eventually('no squiggle', async () => await page.locator('.squiggly-error').count() > 0);
  const text = await bench.eventually('no overcut', () => finding('below the least height'));
  const [line, column] = bench.place('finish bottom to bore');
  assert.ok(text.includes(`[Ln ${line}, Col ${column}]`), `at the wrong place: ${text}`);
});

await check('hover with dial', async () => {
  await bench.go('0.25, pass');
  await page.keyboard.press('Control+k');
  await page.keyboard.press('Control+i');
  await bench.eventually('no dial', async () => {
    const texts = await page.locator('.monaco-hover').allInnerTexts();
    return texts.some(text => /\bdiv/.test(text) && /thou/.test(text));
  });
});

await check('completion', async () => {
  await bench.go('datum A');
  await page.keyboard.press('Control+Space');
  await bench.eventually('no square', async () => {
    const rows = await page.locator('.suggest-widget.visible .monaco-list-row').allInnerTexts();
    return rows.some(row => row.trim().startsWith('square'));
  });
});

await check('picture', async () => {
  await bench.go('rough front');
  await bench.command('Handwheel: Show the Picture of the Setup');
  const panel = await bench.panel('#picture');
  await bench.eventually('no drawing', async () => await panel.locator('#picture svg [data-goes]').count() > 0);
  assert.match(await panel.locator('#picture svg > title').textContent(), /three/);
});

await check('picture follows the cursor', async () => {
  const panel = await bench.panel('#picture svg');
  await panel.evaluate(() => scrollTo(0, 30));
  await bench.go('hold in V80, up top');
  await bench.eventually('still another setup', async () =>
    /Setup one/.test(await panel.locator('#picture svg > title').textContent()));
  await bench.eventually('no shape of the line is marked', async () =>
    await panel.locator('#picture svg [data-here]').count() > 0);
  assert.equal(await panel.evaluate(() => scrollY), 30, 'the picture was scrolled');
  // The focus is in the editor: a key moves the cursor of the text.
  const [line] = bench.place('hold in V80, up top');
  await page.keyboard.press('ArrowDown');
  await bench.eventually('the editor lost the focus', async () => (await bench.cursor())?.startsWith(`Ln ${line + 1},`));
});

await check('picture leads to the line', async () => {
  const panel = await bench.panel('#picture svg');
  const { x, y, line } = await bench.eventually('no shape to click on', () => panel.evaluate(shapeOnScreen));
  await bench.go('language 1');
  const top = (await panel.evaluate(() => document.body.getBoundingClientRect().top));
  await panel.locator('body').click({ position: { x, y: y - top } });
  await bench.eventually(`not at line ${line}`, async () => (await bench.cursor())?.startsWith(`Ln ${line},`));
  assert.deepEqual(bench.refused, []);
});

await check('quick fix', async () => {
  await bench.eventually('no material-unknown', () => finding('gunmetal-LG9'));
  await bench.go('gunmetal-LG9');
  await page.keyboard.press('Control+.');
  const action = page.locator('.action-widget .monaco-list-row').filter({ hasText: 'gunmetal-LG2' }).first();
  await action.waitFor({ timeout: bench.milliseconds });
  await action.click();
  await bench.saved('not applied', text => text.includes('material gunmetal-LG2'));
  await bench.eventually('the finding stays', async () => !(await finding('gunmetal-LG9')));
});

await check('rename', async () => {
  await bench.go('bore = 17.85');
  await page.keyboard.press('F2');
  const box = page.locator('.rename-box input');
  await box.waitFor({ timeout: bench.milliseconds });
  await box.fill('depth');
  await box.press('Enter');
  await bench.saved('not renamed', text => text.includes('let depth = 17.85') && text.includes('finish bottom to depth'));
});

await check('formatting', async () => {
  assert.ok(bench.text().includes('width    28'), 'nothing to format');
  await bench.command('Format Document');
  await bench.saved('not formatted', text => text.includes('\n  width 28'));
});

await check('draft', async () => {
  const started = path.join(path.dirname(plan), '..', 'started.plan');
  assert.ok(!readFileSync(started, 'utf8').includes('\nsetup'), 'has setups');
  await bench.openFile('started.plan');
  await bench.command('Handwheel: Draft the Setups');
  await bench.eventually('no setups', async () => {
    await page.keyboard.press('Control+s');
    const text = readFileSync(started, 'utf8');
    return /\nsetup /.test(text) && /\n {2}finish /.test(text);
  });
});

if (process.env.E2E_SHEET) {
  await check('sheet', async () => {
    await bench.openFile('bearing-block.plan');
    await bench.command('Handwheel: Show the Sheet');
    await bench.panel('iframe#sheet');
    await bench.eventually('no sheet of the plan', async () => {
      const texts = await Promise.all(page.frames().map(frame => frame.locator('body').innerText({ timeout: 1000 }).catch(() => '')));
      return texts.some(text => text.includes('Feed pump bearing block') && text.length > 1000 && !text.includes('Explorer'));
    });
  });
}

if (process.env.E2E_SHEET) {
  await check('sheet saved', async () => {
    const target = path.join(folder, 'saved.html');
    await bench.openFile('bearing-block.plan');
    await bench.command('Handwheel: Save the Sheet');
    await bench.answerPath(target);
    await bench.eventually('no file', () => existsSync(target) && /<title>[^<]*Feed pump bearing block/.test(readFileSync(target, 'utf8')));
  });
}

await check('new plan', async () => {
  await bench.command('Handwheel: New Plan');
  await bench.eventually('no first lines', async () => {
    const text = (await page.locator('.monaco-editor .view-lines').allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
    return text.includes('plan "What it becomes"') && text.includes('gunmetal-LG2');
  });
  await bench.eventually('another language', async () =>
    await page.locator('.statusbar-item').filter({ hasText: /^Handwheel$/ }).count() > 0);
  // The first of the places to fill in is selected.
  await page.keyboard.type('Whistle lever');
  await bench.eventually('the title is not selected', async () =>
    (await page.locator('.monaco-editor .view-lines').allInnerTexts()).some(text => text.replaceAll('\u00a0', ' ').includes('plan "Whistle lever"')));
  await bench.eventually('nothing is said of the shop that is not there', () => finding('shop/my-mill.shop', ''));
  await bench.command('View: Revert and Close Editor');
});

await check('examples copied', async () => {
  const parent = path.join(folder, 'copies');
  mkdirSync(parent, { recursive: true });
  await bench.command('Handwheel: Copy the Examples to a Folder');
  await bench.answerPath(parent + '/');
  const copy = path.join(parent, 'handwheel-examples');
  await bench.eventually('not there', () =>
    existsSync(path.join(copy, 'bearing-block.plan')) && existsSync(path.join(copy, 'shop', 'inch-mill.shop')));
  await bench.closeOthers();
});

await bench.close();
