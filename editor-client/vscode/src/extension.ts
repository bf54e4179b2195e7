import * as vscode from 'vscode';
import { draft } from './draft.ts';
import { copyExamples, newPlan, openJavaSetting } from './beginnings.ts';
import { PicturePanel } from './picture.ts';
import { Server } from './server.ts';
import { SheetPanel } from './sheet.ts';
import { statusItem } from './status.ts';

let server: Server | undefined;

export function activate(context: vscode.ExtensionContext): void {
  const log = vscode.window.createOutputChannel('Handwheel', { log: true });
  const own = new Server(context, log);
  server = own;
  const picture = new PicturePanel(own, context.extensionUri);
  const sheet = new SheetPanel(own, context.extensionUri);
  const command = (name: string, run: () => unknown): vscode.Disposable =>
    vscode.commands.registerCommand(`handwheel.${name}`, run);
  context.subscriptions.push(
    log, own, picture, sheet, statusItem(own),
    command('showPicture', () => picture.show()),
    command('showSheet', () => sheet.show()),
    command('saveSheet', () => sheet.save()),
    command('draft', () => draft(own)),
    command('newPlan', newPlan),
    command('copyExamples', () => copyExamples(context.extensionUri)),
    command('setJava', openJavaSetting),
    command('restart', () => own.restart()),
    command('showOutput', () => log.show(true)),
    vscode.window.registerWebviewPanelSerializer(PicturePanel.TYPE, picture),
    vscode.workspace.onDidChangeConfiguration(event => {
      if (event.affectsConfiguration('handwheel.java.home')) {
        void own.restart();
      }
    }),
  );
  void own.restart();
}

export function deactivate(): Promise<void> | undefined {
  return server?.stop();
}
