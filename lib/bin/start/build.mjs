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

/** Builds, unless the last build was made from these very files. */
export function buildIfChanged(environment) {
  const stamp = stampOf(environment);
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp && existsSync('.next/BUILD_ID')) return;
  console.log('Building (about a minute) …');
  rmSync(stampFile, { force: true });
  const result = spawnSync(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
    env: environment,
    encoding: 'utf8',
  });
  if (result.status !== 0) throw new Error(`The build failed:\n${result.stdout}${result.stderr}`);
  writeFileSync(stampFile, stamp);
}

function stampOf(environment) {
  const hash = createHash('sha256').update(environment.NEXT_SERVER_ACTIONS_ENCRYPTION_KEY ?? '');
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
