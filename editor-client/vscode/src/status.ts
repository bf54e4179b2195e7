import * as vscode from 'vscode';
import type { Condition, Server } from './server.ts';

const WORDS: Record<Condition, string> = {
  starting: 'Handwheel is starting',
  running: 'Handwheel',
  stopped: 'Handwheel is stopped',
  'no java': 'Handwheel: no Java 17 or newer',
  failed: 'Handwheel did not start',
};

/** What the server does, beside the language's name in the status bar. */
export function statusItem(server: Server): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('handwheel.server', { language: 'handwheel' });
  item.name = 'Handwheel';
  const show = (): void => {
    const condition = server.condition;
    item.text = WORDS[condition];
    item.detail = server.detail;
    item.busy = condition === 'starting';
    item.severity = condition === 'no java' || condition === 'failed' ? vscode.LanguageStatusSeverity.Error
      : condition === 'stopped' ? vscode.LanguageStatusSeverity.Warning
      : vscode.LanguageStatusSeverity.Information;
    item.command = condition === 'no java'
      ? { title: 'Open Settings', command: 'handwheel.setJava' }
      : condition === 'running' ? { title: 'Show the Output', command: 'handwheel.showOutput' }
      : { title: 'Restart', command: 'handwheel.restart' };
  };
  show();
  return vscode.Disposable.from(item, server.onDidChange(show));
}
