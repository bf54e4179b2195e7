// The picture of the README:  node screenshot.mjs HOST:PORT FOLDER PLAN BROWSER SECONDS OUT
import { Workbench } from './workbench.mjs';

const [host, folder, plan, browser, seconds, out] = process.argv.slice(2);
const bench = await Workbench.open(host, folder, plan, browser, Number(seconds) * 1000);
const { page } = bench;
await page.setViewportSize({ width: 1360, height: 860 });
await page.locator('.squiggly-error').first().waitFor({ timeout: bench.milliseconds });
await bench.command('View: Toggle Primary Side Bar Visibility');
await bench.command('View: Focus Problems');
await bench.go('on pair P17x10');
await bench.command('Handwheel: Show the Picture of the Setup');
const panel = await bench.panel('#picture');
await panel.locator('#picture svg [data-here]').first().waitFor({ timeout: bench.milliseconds });
await page.locator('.viewpane-filter input').first().fill('**/four-in-one.plan');
await page.mouse.move(5, 600);
await page.locator('.monaco-hover:visible').waitFor({ state: 'detached', timeout: 5_000 }).catch(() => undefined);
await page.screenshot({ path: out });
await bench.close();
