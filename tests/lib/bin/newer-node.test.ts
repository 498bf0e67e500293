import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { isOldNode, neededNode, newerNode } from '@/lib/bin/newer-node.mjs';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const manifest = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
  scripts: Record<string, string>;
};

describe('a Node that is too old', () => {
  it.each([
    ['20.20.2', true],
    ['22.21.0', true],
    ['22.22.0', false],
    ['24.21.0', false],
    ['26.10.0', false],
  ])('%s: %s', (version, old) => expect(isOldNode(version, '22.22')).toBe(old));

  it('is found by every npm command', () => {
    for (const [name, command] of Object.entries(manifest.scripts))
      for (const part of command.split(' && ')) expect(part, name).toMatch(/^node lib\/bin\/run\.mjs /);
  });

  it('is refused in words where none can be fetched', () => {
    expect(() => newerNode({ platform: 'aix', arch: 'ppc64' })).toThrow(
      `This is Node ${process.versions.node}; Kerncrit needs ${neededNode()} or later, and none can be fetched for aix on ppc64`,
    );
  });

  it('has a pinned one for each kind of machine, new enough and with its checksum', () => {
    const lock = JSON.parse(readFileSync(`${root}lib/bin/newer-node/package-lock.json`, 'utf8')) as {
      packages: Record<string, { version: string; integrity: string; os: string[]; cpu: string[] }>;
    };
    const pinned = Object.entries(lock.packages).filter(([place]) => place !== '');
    expect(pinned.map(([, { os, cpu }]) => `${os} ${cpu}`).sort()).toEqual([
      'darwin arm64',
      'darwin x64',
      'linux arm64',
      'linux x64',
      'win32 x64',
    ]);
    for (const [place, { version, integrity }] of pinned) {
      expect(isOldNode(version), place).toBe(false);
      expect(integrity, place).toMatch(/^sha512-/);
    }
  });
});

describe('what goes on under another Node', () => {
  const under = (program: string, ...words: string[]) =>
    spawn(
      process.execPath,
      [
        '--input-type=module',
        '-e',
        `import { goOnUnder } from '${root}lib/bin/newer-node.mjs'; goOnUnder(process.execPath, ${JSON.stringify(['-e', program, ...words])});`,
      ],
      { stdio: ['pipe', 'pipe', 'pipe'] },
    );

  it('has the same input, output and words, and the way it ends is how the command ends', async () => {
    const child = under(
      'process.stdin.on("data", (said) => { console.log(String(said), process.argv[1]); process.exit(7); })',
      'AVON',
    );
    child.stdin.write('quay');
    const [said, [code]] = await Promise.all([text(child.stdout), once(child, 'exit')]);
    expect(said).toContain('quay AVON');
    expect(code).toBe(7);
  });

  it('is told to stop when the command is, and may end in its own time', async () => {
    const child = under(
      'process.on("SIGTERM", () => { console.log("put away"); process.exit(0); }); console.log("here"); setInterval(() => {}, 1000)',
    );
    const said: string[] = [];
    child.stdout.on('data', (part) => said.push(String(part)));
    await expect.poll(() => said.join('')).toContain('here');
    child.kill('SIGTERM');
    const [code] = await once(child, 'exit');
    expect(code).toBe(0);
    expect(said.join('')).toContain('put away');
  });

  it('ends by the signal that ended it', async () => {
    const child = under('process.kill(process.pid, "SIGKILL")');
    expect(await once(child, 'exit')).toEqual([null, 'SIGKILL']);
  });
});
