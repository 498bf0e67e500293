// npm run generate: from prisma/schema.prisma to a schema and a client for each database.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const generated = path.join(root, 'prisma/generated');
const stampFile = path.join(generated, 'stamp');
const providers = ['sqlite', 'postgresql'];

/** Generates both clients, unless they were already made from this very schema by this very Prisma. */
export function generate() {
  const source = readFileSync(path.join(root, 'prisma/schema.prisma'), 'utf8');
  const stamp = stampOf(source);
  if (isUpToDate(stamp)) return false;
  rmSync(generated, { recursive: true, force: true });
  for (const provider of providers) {
    const folder = path.join(generated, provider);
    mkdirSync(folder, { recursive: true });
    writeFileSync(path.join(folder, 'schema.prisma'), schemaFor(source, provider));
    runPrisma(path.join(folder, 'schema.prisma'));
  }
  writeFileSync(stampFile, stamp);
  return true;
}

/** The schema with its provider filled in: the only difference between the two. */
export function schemaFor(source, provider) {
  const line = /^( {2}provider = )"sqlite"$/m;
  if (!line.test(source)) throw new Error('prisma/schema.prisma: no line `  provider = "sqlite"` in datasource db.');
  return source.replace(line, `$1"${provider}"`);
}

function stampOf(source) {
  const prisma = readFileSync(path.join(root, 'node_modules/prisma/package.json'), 'utf8');
  const self = readFileSync(fileURLToPath(import.meta.url), 'utf8');
  return createHash('sha256')
    .update([source, JSON.parse(prisma).version, self].join('\0'))
    .digest('hex');
}

function isUpToDate(stamp) {
  return (
    existsSync(stampFile) &&
    readFileSync(stampFile, 'utf8') === stamp &&
    providers.every((provider) => existsSync(path.join(generated, provider, 'client/client.ts')))
  );
}

/**
 * Prisma wants to fetch a schema engine here, though generating does not use one: naming any executable as that
 * engine keeps it from the network.
 */
function runPrisma(schema) {
  const cli = path.join(root, 'node_modules/prisma/build/index.js');
  const result = spawnSync(process.execPath, [cli, 'generate', '--schema', schema], {
    cwd: root,
    encoding: 'utf8',
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  });
  if (result.status !== 0)
    throw new Error(`Prisma could not generate from ${schema}:\n${result.stdout}${result.stderr}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log(generate() ? 'Generated both database clients.' : 'Both database clients are up to date.');
}
