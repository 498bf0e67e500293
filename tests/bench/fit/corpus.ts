import { fork } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { CACHE, faceFiles, type FaceFile } from './face-files';
import type { FaceRows } from './face-rows';

export type CorpusFace = FaceFile & FaceRows;

const WORKERS = 2;

/** All faces of the corpus that kern, read once for one state of the sources that say what is looked at. */
export async function corpus(): Promise<CorpusFace[]> {
  const files = faceFiles();
  const kept = join(CACHE, `rows-${sourcesKey()}.bin`);
  if (existsSync(kept)) {
    const rows = deserialize(readFileSync(kept)) as Record<string, FaceRows>;
    return together(files, rows);
  }
  const rows = await readAll(files);
  writeFileSync(kept, serialize(rows));
  return together(files, rows);
}

function together(files: FaceFile[], rows: Record<string, FaceRows>): CorpusFace[] {
  return files.flatMap((file) => {
    const read = rows[file.path];
    return read ? [{ ...file, ...read }] : [];
  });
}

function readAll(files: FaceFile[]): Promise<Record<string, FaceRows>> {
  const rows: Record<string, FaceRows> = {};
  const waiting = files.map(({ path }) => path);
  let working = 0;
  return new Promise((resolve, reject) => {
    for (let index = 0; index < WORKERS; index += 1) {
      const worker = fork(new URL('./face-rows.worker.ts', import.meta.url).pathname, {
        execArgv: ['--import', 'tsx'],
        serialization: 'advanced',
      });
      const next = () => {
        const path = waiting.shift();
        if (path !== undefined) return worker.send(path);
        worker.disconnect();
        working -= 1;
        if (working === 0) resolve(rows);
      };
      working += 1;
      worker.on('error', reject);
      worker.on('message', (message) => {
        const answer = message as { path: string; rows: FaceRows | null; why?: string };
        if (answer.rows) rows[answer.path] = answer.rows;
        else process.stderr.write(`left out: ${answer.path.split('/').at(-1)} ${answer.why ?? ''}\n`);
        if (waiting.length % 50 === 0) process.stderr.write(`${waiting.length} faces to read\n`);
        next();
      });
      next();
    }
  });
}

/** Changes when anything changes that decides what is read of a face. */
function sourcesKey(): string {
  const looks = new URL('../../../shared/usual-range/', import.meta.url).pathname;
  const own = new URL('./', import.meta.url).pathname;
  const texts = [
    ...readdirSync(looks)
      .filter((name) => /-(look|mean)\.ts$/.test(name))
      .sort()
      .map((name) => join(looks, name)),
    join(own, 'families.ts'),
    join(own, 'face-rows.ts'),
    join(own, 'face-files.ts'),
  ].map((path) => readFileSync(path, 'utf8'));
  return createHash('sha256').update(texts.join('\n')).digest('hex').slice(0, 12);
}
