import * as vscode from 'vscode';

const FIRST_LINES = `language 1
plan "\${1:What it becomes}"
  units \${2|mm,in|}
  use "\${3:shop/my-mill.shop}"

part
  material \${4:gunmetal-LG2}
  length \${5:48 +-0.10}
  width \${6:32 +0/-0.05}
  height \${7:19 +0/-0.05}
  break edges 0.3

stock
  size \${8:51 x 35 x 22}
  sawn left right

setup first "\${9:Top}"
  $0
`;

/** An untitled plan with the sections it needs, ready to be filled in. */
export async function newPlan(): Promise<void> {
  const document = await vscode.workspace.openTextDocument({ language: 'handwheel' });
  const editor = await vscode.window.showTextDocument(document);
  await editor.insertSnippet(new vscode.SnippetString(FIRST_LINES));
}

/** Copies the examples into a new folder below the one that is chosen, and opens it. */
export async function copyExamples(extension: vscode.Uri): Promise<void> {
  const chosen = await vscode.window.showOpenDialog({
    canSelectFiles: false, canSelectFolders: true, canSelectMany: false, openLabel: 'Copy the Examples Here',
  });
  const parent = chosen?.[0];
  if (!parent) {
    return;
  }
  const target = vscode.Uri.joinPath(parent, 'handwheel-examples');
  try {
    await vscode.workspace.fs.copy(vscode.Uri.joinPath(extension, 'examples'), target, { overwrite: false });
  } catch (problem) {
    const exists = problem instanceof vscode.FileSystemError && problem.code === 'FileExists';
    if (!exists) {
      void vscode.window.showErrorMessage(`The examples could not be copied to ${target.fsPath}: ${String(problem)}`);
      return;
    }
  }
  await vscode.commands.executeCommand('vscode.openFolder', target, { forceNewWindow: true });
}

/** Shows the setting that names the folder of Java; in a remote window it is among the remote's. */
export async function openJavaSetting(): Promise<void> {
  const command = vscode.env.remoteName ? 'workbench.action.openRemoteSettings' : 'workbench.action.openSettings';
  await vscode.commands.executeCommand(command, { query: 'handwheel.java.home' });
}
