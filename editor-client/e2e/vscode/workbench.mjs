// A VS Code workbench in a headless Chromium, handled as a person would: by keys, and by what is on the screen.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';

const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync'];

export class Workbench {
  #context;
  #profile;

  constructor(page, context, profile, plan, milliseconds) {
    this.page = page;
    this.plan = plan;
    this.milliseconds = milliseconds;
    this.#context = context;
    this.#profile = profile;
    /** What the browser refused by the policy of a page. */
    this.refused = [];
    page.on('console', message => {
      if (/Content Security Policy/.test(message.text()) && /vscode-webview|webview/i.test(message.location().url)) {
        this.refused.push(message.text());
      }
    });
  }

  /** Opens a plan in its folder; milliseconds is how long anything may take. */
  static async open(host, folder, plan, browser, milliseconds) {
    const profile = mkdtempSync(path.join(os.tmpdir(), 'workbench-'));
    const context = await chromium.launchPersistentContext(profile,
      { executablePath: browser, headless: true, viewport: { width: 1400, height: 900 }, args: FLAGS });
    const page = context.pages()[0];
    const bench = new Workbench(page, context, profile, plan, milliseconds);
    const payload = JSON.stringify([['openFile', `vscode-remote://${host}${plan}`]]);
    await page.goto(`http://${host}/?folder=${folder}&payload=${encodeURIComponent(payload)}`, { timeout: 300_000 });
    await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 300_000 });
    return bench;
  }

  async close() {
    await this.#context.close();
    rmSync(this.#profile, { recursive: true, force: true });
  }

  /** Tries until a test gives something true, and gives that. */
  async eventually(what, test) {
    const end = Date.now() + this.milliseconds;
    for (;;) {
      const value = await test();
      if (value) {
        return value;
      }
      if (Date.now() > end) {
        throw new Error(what);
      }
      await new Promise(wake => setTimeout(wake, 100));
    }
  }

  async #input(text) {
    await this.page.keyboard.press('Escape');
    await this.page.keyboard.press('F1');
    const box = this.page.locator('.quick-input-widget input.input');
    await box.waitFor({ timeout: this.milliseconds });
    await box.fill(text);
    return box;
  }

  /** Opens a file of the folder by its name. */
  async openFile(name) {
    const box = await this.#input(name);
    await this.page.locator('.quick-input-list .monaco-list-row').filter({ hasText: name }).first().waitFor({ timeout: this.milliseconds });
    await box.press('Enter');
    await this.page.locator('.tab.active').filter({ hasText: name }).waitFor({ timeout: this.milliseconds });
  }

  /** A command of the palette, by its whole title. */
  async command(title) {
    const box = await this.#input(`>${title}`);
    const row = this.page.locator('.quick-input-list .monaco-list-row').filter({ hasText: title }).first();
    try {
      await row.waitFor({ timeout: this.milliseconds });
    } catch {
      await this.page.keyboard.press('Escape');
      throw new Error(`no command ${title}`);
    }
    await row.click();
    await box.waitFor({ state: 'hidden', timeout: this.milliseconds }).catch(() => undefined);
  }

  /** Answers a dialog that asks for a file or a folder. */
  async answerPath(target) {
    const box = this.page.locator('.quick-input-widget input.input');
    await box.waitFor({ timeout: this.milliseconds });
    await this.eventually('no dialog for a path', async () => /^\//.test(await box.inputValue()));
    // The dialog may still put in a path of its own: what is written has to stay for a while.
    let still = 0;
    await this.eventually('the path does not stay', async () => {
      if (await box.inputValue() === target) {
        return ++still > 5;
      }
      still = 0;
      await box.fill(target);
      return false;
    });
    const button = this.page.locator('.quick-input-widget .quick-input-action .monaco-button').first();
    await button.click();
    await box.waitFor({ state: 'hidden', timeout: this.milliseconds });
  }

  /** Closes the windows that were opened beside this one. */
  async closeOthers() {
    for (const other of this.#context.pages()) {
      if (other !== this.page) {
        await other.close();
      }
    }
  }

  /** Puts the cursor before a text of the plan as it is on the disk. */
  async go(words) {
    const [line, column] = this.place(words);
    const box = await this.#input(`:${line}:${column}`);
    await box.press('Enter');
    await this.eventually(`the cursor does not come to ${line}:${column}`, async () =>
      (await this.cursor()) === `Ln ${line}, Col ${column}`);
  }

  /** Line and column, from 1, of the first place of a text. */
  place(words) {
    const text = this.text();
    const at = text.indexOf(words);
    if (at < 0) {
      throw new Error(`not in the plan: ${words}`);
    }
    const before = text.slice(0, at).split('\n');
    return [before.length, before.at(-1).length + 1];
  }

  /** The status bar's line and column; nothing while no editor has the focus. */
  async cursor() {
    const item = this.page.locator('.statusbar-item').filter({ hasText: /^Ln \d+, Col \d+$/ });
    return (await item.count()) > 0 ? (await item.first().innerText()).trim() : undefined;
  }

  text() {
    return readFileSync(this.plan, 'utf8');
  }

  /** Saves, until the disk has what is looked for. */
  async saved(what, test) {
    await this.eventually(what, async () => {
      await this.page.keyboard.press('Control+s');
      return test(this.text());
    });
  }

  /** The page inside of a panel: a frame in a frame. */
  async panel(selector) {
    return this.eventually(`no panel with ${selector}`, async () => {
      for (const frame of this.page.frames()) {
        if (await frame.locator(selector).count().catch(() => 0) > 0) {
          return frame;
        }
      }
      return undefined;
    });
  }
}
