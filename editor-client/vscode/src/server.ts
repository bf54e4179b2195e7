// The one server of the window: found, started, stopped, and what it says it can do.
import path from 'node:path';
import * as vscode from 'vscode';
import { LanguageClient, RevealOutputChannelOn, State, type LanguageClientOptions } from 'vscode-languageclient/node';
import { openJavaSetting } from './beginnings.ts';
import { findJava, LEAST_JAVA, thisMachine, type Miss } from './java.ts';

/** Requests of our own that a server may announce under experimental.handwheel. */
const EXTRAS = ['picture', 'sheet', 'draft'] as const;
export type Extra = (typeof EXTRAS)[number];

// A session is short and shares the machine: compiled lightly, with a small heap that can grow.
const JVM = ['-Xshare:auto', '-XX:+UseSerialGC', '-XX:TieredStopAtLevel=1', '-Xms40m', '-XX:NewSize=22m',
  '-XX:CompileThresholdScaling=1.5', '-XX:-UsePerfData', '-XX:MinHeapFreeRatio=10', '-XX:MaxHeapFreeRatio=30',
  '-Dfile.encoding=UTF-8', '-Djava.awt.headless=true'];

export type Condition = 'starting' | 'running' | 'stopped' | 'no java' | 'failed';

export class Server implements vscode.Disposable {
  private client: LanguageClient | undefined;
  private queue: Promise<void> = Promise.resolve();
  private readonly changed = new vscode.EventEmitter<Condition>();
  readonly onDidChange = this.changed.event;
  condition: Condition = 'stopped';
  detail = '';
  private readonly context: vscode.ExtensionContext;
  private readonly log: vscode.LogOutputChannel;

  constructor(context: vscode.ExtensionContext, log: vscode.LogOutputChannel) {
    this.context = context;
    this.log = log;
  }

  /** Starts the server, or starts it anew; calls wait for one another. */
  restart(): Promise<void> {
    this.queue = this.queue.then(() => this.stopNow()).then(() => this.startNow());
    return this.queue;
  }

  /** Whether the running server knows a request. */
  knows(extra: Extra): boolean {
    const experimental = this.client?.initializeResult?.capabilities.experimental as
      { handwheel?: Partial<Record<Extra, unknown>> } | undefined;
    return this.condition === 'running' && Boolean(experimental?.handwheel?.[extra]);
  }

  /** Asks the server; nothing where it is not running, the question is given up or it fails. */
  async ask<T>(method: string, params: object, token?: vscode.CancellationToken): Promise<T | undefined> {
    const client = this.client;
    if (!client || this.condition !== 'running') {
      return undefined;
    }
    try {
      // A token that is missing would be sent as a second parameter.
      const answer = token ? client.sendRequest<T | null>(method, params, token) : client.sendRequest<T | null>(method, params);
      return (await answer) ?? undefined;
    } catch (problem) {
      if (!token?.isCancellationRequested) {
        this.log.warn(`${method}: ${problem instanceof Error ? problem.message : String(problem)}`);
      }
      return undefined;
    }
  }

  documentId(document: vscode.TextDocument): { uri: string } {
    return { uri: this.client?.code2ProtocolConverter.asUri(document.uri) ?? document.uri.toString() };
  }

  toEdit(edit: object): Promise<vscode.WorkspaceEdit | undefined> {
    return Promise.resolve(this.client?.protocol2CodeConverter.asWorkspaceEdit(edit as never));
  }

  private async startNow(): Promise<void> {
    this.become('starting', '');
    const setting = vscode.workspace.getConfiguration('handwheel').get<string>('java.home', '');
    const search = await findJava(setting, thisMachine);
    if (!('found' in search)) {
      this.become('no java', search.misses.map(miss => `${miss.place} ${miss.reason}`).join('; '));
      void this.sayNoJava(search.misses);
      return;
    }
    const { executable, version } = search.found;
    const folder = path.join(this.context.extensionPath, 'server');
    this.log.info(`Java ${version}: ${executable}`);
    const client = new LanguageClient(
      'handwheel',
      'Handwheel',
      { command: executable, args: [...JVM, '-jar', path.join(folder, 'handwheel.jar'), 'lsp'], options: { cwd: folder } },
      this.clientOptions(),
    );
    client.onDidChangeState(({ newState }) => {
      if (this.client === client) {
        this.become(newState === State.Running ? 'running' : newState === State.Starting ? 'starting' : 'stopped', version);
      }
    });
    this.client = client;
    try {
      await client.start();
      this.become('running', `Java ${version}`);
    } catch (problem) {
      const reason = problem instanceof Error ? problem.message : String(problem);
      this.log.error(reason);
      this.become('failed', reason);
    }
  }

  private clientOptions(): LanguageClientOptions {
    return {
      documentSelector: [
        { scheme: 'file', language: 'handwheel' },
        { scheme: 'untitled', language: 'handwheel' },
      ],
      outputChannel: this.log,
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      synchronize: { configurationSection: 'handwheel' },
    };
  }

  private async sayNoJava(misses: Miss[]): Promise<void> {
    for (const miss of misses) {
      this.log.error(`No Java: ${miss.place} ${miss.reason}`);
    }
    const first = misses.map(miss => `${miss.place} ${miss.reason}`).join('; ');
    const settings = 'Open Settings';
    const again = 'Look Again';
    const answer = await vscode.window.showErrorMessage(
      `Handwheel needs Java ${LEAST_JAVA} or newer to check plans, and found none: ${first}.`, settings, again);
    if (answer === settings) {
      await openJavaSetting();
    } else if (answer === again) {
      await this.restart();
    }
  }

  private become(condition: Condition, detail: string): void {
    this.condition = condition;
    this.detail = detail;
    for (const extra of EXTRAS) {
      void vscode.commands.executeCommand('setContext', `handwheel.${extra}`, this.knows(extra));
    }
    this.changed.fire(condition);
  }

  private async stopNow(): Promise<void> {
    const client = this.client;
    this.client = undefined;
    if (client) {
      await client.dispose(5_000).catch(() => undefined);
      this.become('stopped', '');
    }
  }

  stop(): Promise<void> {
    this.queue = this.queue.then(() => this.stopNow());
    return this.queue;
  }

  dispose(): void {
    this.changed.dispose();
  }
}
