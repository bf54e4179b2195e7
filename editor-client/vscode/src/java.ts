// Finds a Java that can run the server. Knows nothing of the editor, so that it can be tested alone.
import { execFile } from 'node:child_process';
import { constants } from 'node:fs';
import { access, readFile, realpath } from 'node:fs/promises';
import path from 'node:path';

export const LEAST_JAVA = 17;

/** Where the search looks; a test gives its own. */
export interface Machine {
  platform: NodeJS.Platform;
  env: NodeJS.ProcessEnv;
  /** Whether a file is there and may be run. */
  canRun(file: string): Promise<boolean>;
  /** The text of a file, or nothing where it cannot be read. */
  read(file: string): Promise<string | undefined>;
  /** The file behind all symbolic links. */
  follow(file: string): Promise<string>;
  /** What a program prints on both streams, or nothing where it fails. */
  ask(program: string, args: string[]): Promise<string | undefined>;
}

export interface Java {
  executable: string;
  version: string;
}

/** One place that was looked at, and what was wrong with it. */
export interface Miss {
  place: string;
  reason: string;
}

export type Search = { found: Java } | { misses: Miss[] };

/**
 * Looks in the setting, in JAVA_HOME and in the PATH, in that order; on a Mac also where the system
 * says. A setting that leads to no usable Java ends the search: it was meant to be used.
 */
export async function findJava(setting: string, machine: Machine): Promise<Search> {
  const misses: Miss[] = [];
  const folder = setting.trim();
  if (folder !== '') {
    const found = await look('the setting handwheel.java.home', [folder], machine, misses);
    return found ? { found } : { misses };
  }
  const home = machine.env['JAVA_HOME']?.trim();
  const inHome = home ? await look('JAVA_HOME', [home], machine, misses) : undefined;
  if (inHome) {
    return { found: inHome };
  }
  if (!home) {
    misses.push({ place: 'JAVA_HOME', reason: 'is not set' });
  }
  const inPath = await inPathFolders(machine, misses);
  if (inPath) {
    return { found: inPath };
  }
  if (machine.platform === 'darwin') {
    const told = (await machine.ask('/usr/libexec/java_home', ['-v', `${LEAST_JAVA}+`]))?.trim();
    const found = told?.startsWith('/') ? await look('java_home', [told], machine, misses) : undefined;
    if (found) {
      return { found };
    }
  }
  return { misses };
}

async function inPathFolders(machine: Machine, misses: Miss[]): Promise<Java | undefined> {
  const paths = machine.platform === 'win32' ? path.win32 : path.posix;
  const value = Object.entries(machine.env).find(([name]) =>
    machine.platform === 'win32' ? name.toUpperCase() === 'PATH' : name === 'PATH')?.[1];
  const before = misses.length;
  for (const entry of (value ?? '').split(paths.delimiter)) {
    const folder = entry.replace(/^"(.*)"$/, '$1');
    // An entry such as "." would run a program out of the folder that is open.
    if (!paths.isAbsolute(folder)) {
      continue;
    }
    const executable = paths.join(folder, program(machine));
    if (await machine.canRun(executable)) {
      const found = await judge('the PATH', executable, machine, misses);
      if (found) {
        return found;
      }
    }
  }
  if (misses.length === before) {
    misses.push({ place: 'the PATH', reason: 'has no java' });
  }
  return undefined;
}

async function look(place: string, folders: string[], machine: Machine, misses: Miss[]): Promise<Java | undefined> {
  const paths = machine.platform === 'win32' ? path.win32 : path.posix;
  for (const folder of folders) {
    if (!paths.isAbsolute(folder)) {
      misses.push({ place, reason: `is no full path: ${folder}` });
      continue;
    }
    // People also name the bin folder or, on a Mac, the bundle.
    const candidates = [
      paths.join(folder, 'bin', program(machine)),
      paths.join(folder, program(machine)),
      paths.join(folder, 'Contents', 'Home', 'bin', program(machine)),
    ];
    for (const executable of candidates) {
      if (await machine.canRun(executable)) {
        return judge(place, executable, machine, misses);
      }
    }
    misses.push({ place, reason: `has no ${paths.join('bin', program(machine))}: ${folder}` });
  }
  return undefined;
}

async function judge(place: string, executable: string, machine: Machine, misses: Miss[]): Promise<Java | undefined> {
  const version = await versionOf(executable, machine);
  if (version === undefined) {
    misses.push({ place, reason: `does not start or does not say its version: ${executable}` });
    return undefined;
  }
  if (majorOf(version) < LEAST_JAVA) {
    misses.push({ place, reason: `is Java ${version}: ${executable}` });
    return undefined;
  }
  return { executable, version };
}

/** A Java folder states its version in a file, which is much quicker to read than Java to ask. */
async function versionOf(executable: string, machine: Machine): Promise<string | undefined> {
  const paths = machine.platform === 'win32' ? path.win32 : path.posix;
  const home = paths.dirname(paths.dirname(await machine.follow(executable)));
  const release = await machine.read(paths.join(home, 'release'));
  const stated = release?.match(/^JAVA_VERSION="?([^"\r\n]+)"?/m)?.[1];
  if (stated) {
    return stated;
  }
  return (await machine.ask(executable, ['-version']))?.match(/ version "([^"]+)"/)?.[1];
}

/** The number people speak of: 17 for "17.0.12", 8 for "1.8.0_402". */
export function majorOf(version: string): number {
  const numbers = version.match(/^(\d+)(?:\.(\d+))?/);
  const first = Number(numbers?.[1] ?? 0);
  return first === 1 ? Number(numbers?.[2] ?? 0) : first;
}

function program(machine: Machine): string {
  return machine.platform === 'win32' ? 'java.exe' : 'java';
}

/** The machine the editor runs on. */
export const thisMachine: Machine = {
  platform: process.platform,
  env: process.env,
  canRun: file => access(file, process.platform === 'win32' ? constants.F_OK : constants.X_OK).then(() => true, () => false),
  read: file => readFile(file, 'utf8').catch(() => undefined),
  follow: file => realpath(file).catch(() => file),
  ask: (file, args) =>
    new Promise(answer =>
      execFile(file, args, { timeout: 20_000, windowsHide: true }, (problem, out, err) =>
        answer(problem ? undefined : `${out}\n${err}`))),
};
