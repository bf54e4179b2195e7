// What a person sees where no Java is found:  node nojava.mjs HOST:PORT FOLDER PLAN BROWSER SECONDS [SCREENSHOTS]
import { Workbench } from './workbench.mjs';

const [host, folder, plan, browser, seconds, pictures] = process.argv.slice(2);
const bench = await Workbench.open(host, folder, plan, browser, Number(seconds) * 1000);
const { page } = bench;
try {
  const message = page.locator('.notification-toast').filter({ hasText: 'Handwheel needs Java 17 or newer' });
  await message.waitFor({ timeout: bench.milliseconds });
  await message.getByRole('button', { name: 'Open Settings' }).click();
  await page.locator('.settings-editor').getByText('Folder of a Java 17 or newer').waitFor({ timeout: bench.milliseconds });
  console.log('ok   vscode leads to the setting where there is no Java');
} catch (problem) {
  console.log(`FAIL vscode leads to the setting where there is no Java: ${String(problem.message).split('\n')[0]}`);
}
if (pictures) {
  await page.screenshot({ path: `${pictures}/no-java.png` });
}
await bench.close();
