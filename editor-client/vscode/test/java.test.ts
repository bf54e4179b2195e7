import assert from 'node:assert/strict';
import { test } from 'node:test';
import { findJava, majorOf, type Machine } from '../src/java.ts';

/** A machine of files: a program with what it says of its version, and texts. */
function machine(platform: NodeJS.Platform, env: Record<string, string>, programs: Record<string, string | undefined>,
  texts: Record<string, string> = {}, links: Record<string, string> = {}): Machine & { asked: string[] } {
  const asked: string[] = [];
  return {
    platform,
    env,
    asked,
    canRun: file => Promise.resolve(file in programs || file in links),
    read: file => Promise.resolve(texts[file]),
    follow: file => Promise.resolve(links[file] ?? file),
    ask: file => {
      asked.push(file);
      return Promise.resolve(programs[file]);
    },
  };
}
const says = (version: string): string => `openjdk version "${version}" 2024-01-16\nOpenJDK Runtime Environment`;
const java = async (setting: string, on: Machine): Promise<string | undefined> => {
  const search = await findJava(setting, on);
  return 'found' in search ? search.found.executable : undefined;
};
const reasons = async (setting: string, on: Machine): Promise<string> => {
  const search = await findJava(setting, on);
  return 'misses' in search ? search.misses.map(miss => `${miss.place} ${miss.reason}`).join('; ') : 'found';
};

test('the setting goes before JAVA_HOME, and that before the PATH', async () => {
  const programs = { '/a/bin/java': says('21'), '/b/bin/java': says('17'), '/usr/bin/java': says('17.0.9') };
  const env = { JAVA_HOME: '/b', PATH: '/usr/bin' };
  assert.equal(await java('/a', machine('linux', env, programs)), '/a/bin/java');
  assert.equal(await java('', machine('linux', env, programs)), '/b/bin/java');
  assert.equal(await java('', machine('linux', { PATH: '/usr/bin' }, programs)), '/usr/bin/java');
});

test('a setting that leads nowhere is said, and nothing else is taken', async () => {
  const on = machine('linux', { PATH: '/usr/bin' }, { '/usr/bin/java': says('17') });
  assert.match(await reasons('/nowhere', on), /handwheel\.java\.home has no bin\/java: \/nowhere/);
  assert.match(await reasons('tools/java', on), /is no full path/);
});

test('the bin folder and a Mac bundle are understood as well', async () => {
  assert.equal(await java('/a/bin', machine('linux', {}, { '/a/bin/java': says('17') })), '/a/bin/java');
  assert.equal(await java('/j/17.jdk', machine('darwin', {}, { '/j/17.jdk/Contents/Home/bin/java': says('17') })),
    '/j/17.jdk/Contents/Home/bin/java');
});

test('an old Java is passed over with its version', async () => {
  const programs = { '/old/bin/java': says('1.8.0_402'), '/x/java': says('11.0.2'), '/y/java': says('17') };
  assert.equal(await java('', machine('linux', { JAVA_HOME: '/old', PATH: '/x:/y' }, programs)), '/y/java');
  const said = await reasons('', machine('linux', { JAVA_HOME: '/old', PATH: '/x' }, programs));
  assert.match(said, /JAVA_HOME is Java 1\.8\.0_402/);
  assert.match(said, /the PATH is Java 11\.0\.2/);
});

test('the release file is read instead of starting Java, behind links', async () => {
  const on = machine('linux', { PATH: '/usr/bin' }, {}, { '/opt/jdk/release': 'IMPLEMENTOR="x"\nJAVA_VERSION="17.0.12"\n' },
    { '/usr/bin/java': '/opt/jdk/bin/java' });
  assert.equal(await java('', on), '/usr/bin/java');
  assert.deepEqual(on.asked, []);
});

test('Windows: java.exe, Path in any case, quoted folders', async () => {
  const on = machine('win32', { Path: '"C:\\Program Files\\Java\\bin";C:\\x' }, { 'C:\\Program Files\\Java\\bin\\java.exe': says('17') });
  assert.equal(await java('', on), 'C:\\Program Files\\Java\\bin\\java.exe');
  const set = machine('win32', {}, { 'D:\\jdk\\bin\\java.exe': says('21.0.1') });
  assert.equal(await java('D:\\jdk', set), 'D:\\jdk\\bin\\java.exe');
});

test('nothing is run out of the open folder by a relative entry of the PATH', async () => {
  const on = machine('linux', { PATH: '.::bin' }, { java: says('17'), 'bin/java': says('17'), './java': says('17') });
  assert.match(await reasons('', on), /the PATH has no java/);
  assert.deepEqual(on.asked, []);
});

test('a Mac is asked where its Java is', async () => {
  const on = machine('darwin', { PATH: '/usr/bin' }, {
    '/usr/bin/java': undefined, '/usr/libexec/java_home': '/Library/J/Home\n', '/Library/J/Home/bin/java': says('17') });
  assert.equal(await java('', on), '/Library/J/Home/bin/java');
});

test('versions', () => {
  assert.deepEqual(['17', '17.0.12', '1.8.0_402', '9-ea', '21+35', 'x'].map(majorOf), [17, 17, 8, 9, 21, 0]);
});
