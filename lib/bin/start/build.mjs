import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const stampFile = '.next/kerncrit-built';
const sources = [
  'app',
  'lib',
  'shared',
  'public',
  'prisma/schema.prisma',
  'proxy.ts',
  'instrumentation.ts',
  'next.config.mjs',
  'tsconfig.json',
  'package-lock.json',
];

/**
 * Builds, unless the last build was made from these very files. No setting and no secret of an installation goes into a
 * build: starts with different data share it.
 */
export function buildIfChanged() {
  const stamp = stampOf();
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp && existsSync('.next/BUILD_ID')) return;
  console.log('Building (about a minute) …');
  rmSync(stampFile, { force: true });
  const result = spawnSync(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
    env: { ...buildEnvironment(), NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    encoding: 'utf8',
  });
  if (result.status !== 0) throw new Error(`The build failed:\n${result.stdout}${result.stderr}`);
  writeFileSync(stampFile, stamp);
}

/** What programs need of any environment, and nothing of ours; the key of the forms is read when the server runs. */
function buildEnvironment() {
  const needed =
    /^(PATH|PATHEXT|HOME|USERPROFILE|APPDATA|LOCALAPPDATA|SYSTEMROOT|COMSPEC|TMPDIR|TEMP|TMP|LANG|LC_\w+|NODE_OPTIONS|CI)$/i;
  return Object.fromEntries(
    Object.entries(process.env).filter(([name]) => needed.test(name) || name === 'KERNCRIT_BENCH'),
  );
}

function stampOf() {
  const hash = createHash('sha256').update(process.env.KERNCRIT_BENCH ?? '');
  for (const file of sources.flatMap(filesIn)) hash.update(file).update('\0').update(readFileSync(file)).update('\0');
  return hash.digest('hex');
}

function filesIn(place) {
  if (!existsSync(place)) return [];
  if (!statSync(place).isDirectory()) return [place];
  return readdirSync(place)
    .sort()
    .flatMap((name) => filesIn(path.join(place, name)));
}
