import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';

/** The page of a panel: one style sheet and one script of our own, and nothing else may load or run. */
export function page(
  webview: vscode.Webview, extension: vscode.Uri, name: string, title: string, body: string, styles: string,
): string {
  const nonce = randomBytes(18).toString('base64');
  const script = webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', `${name}.js`));
  const style = webview.asWebviewUri(vscode.Uri.joinPath(extension, 'media', 'panel.css'));
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; base-uri 'none'; form-action 'none'; img-src data:; style-src ${styles}; script-src 'nonce-${nonce}'">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
${body}
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

/** Runs only the last of several calls in a row, a little after it. */
export function settled(milliseconds: number, run: () => void): { soon(): void; dispose(): void } {
  let timer: NodeJS.Timeout | undefined;
  return {
    soon() {
      clearTimeout(timer);
      timer = setTimeout(run, milliseconds);
    },
    dispose() {
      clearTimeout(timer);
    },
  };
}
