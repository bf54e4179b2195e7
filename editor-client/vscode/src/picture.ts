import * as vscode from 'vscode';
import { page, settled } from './page.ts';
import type { Server } from './server.ts';

/** What the server answers to handwheel/picture. */
interface Picture {
  svg: string;
  title: string;
  setup?: string;
  version: number;
  places: { id: string; range: { start: Point; end: Point } }[];
}
interface Point {
  line: number;
  character: number;
}
type FromPage = { kind: 'ready' } | { kind: 'go'; id: string };

/** The picture of the setup the cursor is in. It follows the cursor and never takes the focus. */
export class PicturePanel implements vscode.Disposable, vscode.WebviewPanelSerializer {
  static readonly TYPE = 'handwheel.picture';

  private panel: vscode.WebviewPanel | undefined;
  private shown: { document: vscode.TextDocument; picture: Picture } | undefined;
  private asked: vscode.CancellationTokenSource | undefined;
  private readonly later = settled(120, () => void this.refresh());
  private readonly parts: vscode.Disposable[] = [];
  private readonly server: Server;
  private readonly extension: vscode.Uri;

  constructor(server: Server, extension: vscode.Uri) {
    this.server = server;
    this.extension = extension;
    this.parts.push(
      this.later,
      server.onDidChange(() => this.later.soon()),
      vscode.window.onDidChangeActiveTextEditor(() => this.later.soon()),
      vscode.window.onDidChangeTextEditorSelection(event => {
        if (isPlan(event.textEditor.document)) {
          this.light();
          this.later.soon();
        }
      }),
      vscode.workspace.onDidChangeTextDocument(event => {
        if (isPlan(event.document)) {
          this.later.soon();
        }
      }),
    );
  }

  show(): void {
    if (this.panel) {
      this.panel.reveal(undefined, true);
      return;
    }
    const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.take(vscode.window.createWebviewPanel(PicturePanel.TYPE, 'Picture', beside, {}));
  }

  /** The editor has been opened again, with the panel in it. */
  deserializeWebviewPanel(panel: vscode.WebviewPanel): Promise<void> {
    this.panel?.dispose();
    this.take(panel);
    return Promise.resolve();
  }

  private take(panel: vscode.WebviewPanel): void {
    this.panel = panel;
    const webview = panel.webview;
    webview.options = { enableScripts: true, localResourceRoots: ['dist', 'media'].map(at => vscode.Uri.joinPath(this.extension, at)) };
    panel.iconPath = vscode.Uri.joinPath(this.extension, 'images', 'icon.png');
    webview.onDidReceiveMessage((message: FromPage) => {
      if (message.kind === 'ready') {
        this.shown = undefined;
        void this.refresh();
      } else {
        void this.go(message.id);
      }
    });
    panel.onDidDispose(() => {
      if (this.panel === panel) {
        this.panel = undefined;
        this.shown = undefined;
      }
    });
    webview.html = page(webview, this.extension, 'picture', 'Picture',
      '<p id="said" role="status">Put the cursor into a setup of a plan.</p>\n<main id="picture"></main>', webview.cspSource);
  }

  private async refresh(): Promise<void> {
    const editor = planEditor();
    if (!this.panel || !editor) {
      return;
    }
    this.asked?.cancel();
    const asked = new vscode.CancellationTokenSource();
    this.asked = asked;
    const { document } = editor;
    const position = editor.selection.active;
    const picture = await this.server.ask<Picture>('handwheel/picture', {
      textDocument: this.server.documentId(document),
      position: { line: position.line, character: position.character },
    }, asked.token);
    if (asked.token.isCancellationRequested || !this.panel) {
      return;
    }
    if (!picture) {
      this.post({ kind: 'none', said: this.server.condition !== 'running' ? 'The server is not running.'
        : 'No picture here: the cursor is outside of setups, or it is not known how the work lies.' });
      return;
    }
    const same = this.shown?.document === document && this.shown.picture.svg === picture.svg;
    this.shown = { document, picture };
    this.panel.title = picture.setup ? `Picture: ${picture.setup}` : 'Picture';
    this.post(same ? { kind: 'same' } : { kind: 'picture', svg: picture.svg, ids: picture.places.map(place => place.id) });
    this.light();
  }

  /** Marks the shapes that come from the line of the cursor. */
  private light(): void {
    const editor = planEditor();
    if (this.panel && this.shown && editor?.document === this.shown.document) {
      const line = editor.selection.active.line;
      const ids = this.shown.picture.places
        .filter(({ range }) => range.start.line <= line && line <= range.end.line)
        .map(({ id }) => id);
      this.post({ kind: 'light', ids });
    }
  }

  /** A shape was chosen: its line is shown, in the editor that has it already where there is one. */
  private async go(id: string): Promise<void> {
    const place = this.shown?.picture.places.find(known => known.id === id);
    if (!this.shown || !place) {
      return;
    }
    const { document } = this.shown;
    const column = vscode.window.visibleTextEditors.find(editor => editor.document === document)?.viewColumn;
    const start = new vscode.Position(place.range.start.line, place.range.start.character);
    await vscode.window.showTextDocument(document, {
      viewColumn: column ?? vscode.ViewColumn.One, selection: new vscode.Range(start, start),
    });
  }

  private post(message: object): void {
    void this.panel?.webview.postMessage(message);
  }

  dispose(): void {
    this.asked?.cancel();
    this.panel?.dispose();
    vscode.Disposable.from(...this.parts).dispose();
  }
}

function isPlan(document: vscode.TextDocument): boolean {
  return document.languageId === 'handwheel';
}

/** The plan in front; while the panel itself has the focus, the one that is visible. */
function planEditor(): vscode.TextEditor | undefined {
  const active = vscode.window.activeTextEditor;
  return active ? (isPlan(active.document) ? active : undefined)
    : vscode.window.visibleTextEditors.find(editor => isPlan(editor.document));
}
