import * as vscode from 'vscode';
import { page, settled } from './page.ts';
import type { Server } from './server.ts';

/** What the server answers to handwheel/sheet. */
interface Sheet {
  html: string;
  title: string;
}

/** The sheet of a plan for the workshop, made anew as the plan changes. */
export class SheetPanel implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private document: vscode.TextDocument | undefined;
  private shown = '';
  private asked: vscode.CancellationTokenSource | undefined;
  private readonly later = settled(400, () => void this.refresh());
  private readonly parts: vscode.Disposable[] = [];
  private readonly server: Server;
  private readonly extension: vscode.Uri;

  constructor(server: Server, extension: vscode.Uri) {
    this.server = server;
    this.extension = extension;
    this.parts.push(this.later, vscode.workspace.onDidChangeTextDocument(event => {
      if (event.document.languageId === 'handwheel') {
        this.later.soon();
      }
    }));
  }

  show(): void {
    const document = planInFront();
    if (!document) {
      return;
    }
    this.document = document;
    if (!this.panel) {
      this.open();
    } else {
      this.panel.reveal(undefined, true);
      void this.refresh();
    }
  }

  /** Writes the sheet where the user says, and offers to open it for printing. */
  async save(): Promise<void> {
    const document = planInFront() ?? this.document;
    const sheet = document ? await this.ask(document) : undefined;
    if (!document || !sheet) {
      void vscode.window.showInformationMessage('There is no sheet of this plan yet: correct its errors first.');
      return;
    }
    const target = await vscode.window.showSaveDialog({
      defaultUri: document.uri.scheme === 'file'
        ? document.uri.with({ path: document.uri.path.replace(/\.\w+$/, '') + '.html' }) : undefined,
      filters: { 'Web page': ['html'] },
    });
    if (target) {
      await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(sheet.html));
      const open = 'Open to Print';
      const answer = await vscode.window.showInformationMessage(`The sheet is in ${target.fsPath}.`, open);
      if (answer === open) {
        await vscode.env.openExternal(target);
      }
    }
  }

  private open(): void {
    const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = vscode.window.createWebviewPanel('handwheel.sheet', 'Sheet', beside, {
      enableScripts: true,
      localResourceRoots: ['dist', 'media'].map(at => vscode.Uri.joinPath(this.extension, at)),
    });
    this.panel = panel;
    panel.iconPath = vscode.Uri.joinPath(this.extension, 'images', 'icon.png');
    panel.webview.onDidReceiveMessage(() => {
      this.shown = '';
      void this.refresh();
    });
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.shown = '';
    });
    // The frame may not run scripts; it inherits this policy, so the sheet's own styles have to be allowed here.
    panel.webview.html = page(panel.webview, this.extension, 'sheet', 'Sheet',
      '<p id="said" role="status">The sheet is being made.</p>\n<iframe id="sheet" title="Sheet" sandbox="allow-same-origin" hidden></iframe>',
      `${panel.webview.cspSource} 'unsafe-inline'`);
  }

  private async refresh(): Promise<void> {
    const { document, panel } = this;
    if (!document || !panel) {
      return;
    }
    this.asked?.cancel();
    const asked = new vscode.CancellationTokenSource();
    this.asked = asked;
    const sheet = await this.ask(document, asked.token);
    if (asked.token.isCancellationRequested || panel !== this.panel) {
      return;
    }
    if (!sheet) {
      void panel.webview.postMessage({ kind: 'none', said: 'No sheet of this plan yet: correct its errors first.' });
    } else if (sheet.html !== this.shown) {
      this.shown = sheet.html;
      panel.title = `Sheet: ${sheet.title}`;
      void panel.webview.postMessage({ kind: 'sheet', html: sheet.html });
    }
  }

  private ask(document: vscode.TextDocument, token?: vscode.CancellationToken): Promise<Sheet | undefined> {
    return this.server.ask<Sheet>('handwheel/sheet', { textDocument: this.server.documentId(document) }, token);
  }

  dispose(): void {
    this.asked?.cancel();
    this.panel?.dispose();
    vscode.Disposable.from(...this.parts).dispose();
  }
}

function planInFront(): vscode.TextDocument | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === 'handwheel' ? document : undefined;
}
