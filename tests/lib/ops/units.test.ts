import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = path.join(root, 'lib/ops/systemd');
const units = readdirSync(folder);
const { scripts } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
  scripts: Record<string, string>;
};

it('the units run commands that there are', () => {
  const commands = units.flatMap((unit) => [
    ...readFileSync(path.join(folder, unit), 'utf8').matchAll(/npm (?:run -s )?(\w[\w-]*)(?= )/g),
  ]);
  expect(commands.map(([, name]) => name).sort()).toEqual(expect.arrayContaining(['backup', 'start']));
  for (const [, name] of commands) expect(scripts).toHaveProperty([name!]);
});

// By systemd itself, where a machine has it.
it.runIf(existsSync('/usr/bin/systemd-analyze'))('systemd reads them without a complaint', () => {
  const { status, stderr } = spawnSync(
    '/usr/bin/systemd-analyze',
    ['verify', ...units.map((unit) => path.join(folder, unit))],
    { encoding: 'utf8', env: { ...process.env, SYSTEMD_LOG_LEVEL: 'warning' } },
  );
  expect(stderr.split('\n').filter((line) => /kerncrit/.test(line))).toEqual([]);
  expect(status).toBe(0);
});
