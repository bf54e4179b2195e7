import * as vscode from 'vscode';
import type { Server } from './server.ts';

interface DraftAnswer {
  edit?: object;
  missing?: string[];
  /** What of the drawing the setups do not make. */
  leftOut?: string[];
}

/** Lets the server write the setups of the plan in front, and says what it lacks where it cannot. */
export async function draft(server: Server): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  if (!editor || editor.document.languageId !== 'handwheel') {
    return;
  }
  const answer = await server.ask<DraftAnswer>('handwheel/draft', { textDocument: server.documentId(editor.document) });
  if (answer?.edit) {
    const edit = await server.toEdit(answer.edit);
    if (!edit || !(await vscode.workspace.applyEdit(edit))) {
      void vscode.window.showErrorMessage('The draft could not be put into the plan; it has changed meanwhile.');
    } else if (answer.leftOut && answer.leftOut.length > 0) {
      void vscode.window.showInformationMessage(`The draft leaves out: ${answer.leftOut.join('; ')}.`);
    }
    return;
  }
  const missing = answer?.missing ?? [];
  void vscode.window.showInformationMessage(
    missing.length > 0 ? `A draft needs more of the plan: ${missing.join('; ')}.` : 'There is nothing to draft here.');
}
