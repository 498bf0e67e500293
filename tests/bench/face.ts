import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { gzipSync } from 'node:zlib';
import opentype from 'opentype.js';
import decompress from 'wawoff2/decompress.js';
import { pairFigures } from '@/lib/bin/measure/pair-figures';
import { buildPack, buildPairs } from '@/lib/face/build-pack';
import { listFaces } from '@/lib/face/catalogue';
import { composePack } from '@/lib/face/compose-pack';
import { readFace } from '@/lib/face/read-face';
import { compareReaders } from '@/lib/face/second-reader';
import { startFaceProcesses } from '@/lib/face/processes/pool';
import { median } from '@/shared/stats/median';

/** Twelve letters. */
const LINE = 'Hamburgefont';
const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];
const PAIRS = LETTERS.flatMap((left) => LETTERS.map((right) => left + right));

/** One upright face of each family: none of them opened before. */
function coldFaces() {
  const families = new Map(
    listFaces()
      .filter((face) => !face.italic)
      .map((face) => [face.family, face]),
  );
  return [...families.values()];
}

/** A pack from a face not opened before, through a face process and back, beside opentype.js reading the same file. */
export default async function benchFace(): Promise<void> {
  await timed('face processes ready', startFaceProcesses);
  process.stdout.write(
    `  ${cpus().length} cores, ${loadavg()[0]!.toFixed(1)} processes running or waiting over the last minute\n`,
  );
  const cold: number[] = [],
    processor: number[] = [],
    withSecond: number[] = [],
    again: number[] = [],
    otherReader: number[] = [],
    bytes: number[] = [],
    packed: number[] = [];
  for (const face of coldFaces()) {
    const source = { kind: 'catalogue', key: face.key } as const;
    const started = performance.now();
    const pack = await buildPack(source, LINE);
    cold.push(performance.now() - started);
    const second = performance.now();
    await buildPack(source, `${LINE}s`);
    again.push(performance.now() - second);
    const before = process.cpuUsage();
    const opened = await readFace(readFileSync(face.path));
    composePack(opened, LINE);
    const used = process.cpuUsage(before);
    processor.push((used.user + used.system) / 1000);
    compareReaders(opened.harfbuzz, opened.font.face, opened.tables);
    const usedByBoth = process.cpuUsage(before);
    withSecond.push((usedByBoth.user + usedByBoth.system) / 1000);
    const third = performance.now();
    readWithOpentype(await decompress(readFileSync(face.path)));
    otherReader.push(performance.now() - third);
    const json = JSON.stringify(pack);
    bytes.push(Buffer.byteLength(json));
    packed.push(gzipSync(json).byteLength);
  }
  report('pack of a 12-letter line, cold face (limit 60 ms)', cold, 'ms');
  report('processor time of the same work in this process', processor, 'ms');
  report('the same and the second reader, every letter', withSecond, 'ms');
  report('the next line in that face', again, 'ms');
  report('baseline: opentype.js reads the file and 12 outlines', otherReader, 'ms');
  report('bytes of the pack', bytes, 'B');
  report('bytes of the pack, gzip', packed, 'B');
  const started = performance.now();
  const table = await buildPairs({ kind: 'catalogue', key: 'vollkorn-400' }, PAIRS);
  report('2704 pairs of a face, outlines and built-in values', [performance.now() - started], 'ms');
  const before = process.cpuUsage();
  pairFigures(table);
  const used = process.cpuUsage(before);
  report('processor time of measuring them', [(used.user + used.system) / 1000], 'ms');
  const all = performance.now() - started;
  report('the same, measured in full as the command does (limit 2000 ms)', [all], 'ms');
  if (Math.max(...cold) >= 60 || all >= 2_000) process.exitCode = 1;
}

/** Reads as much as a pack of the line needs, without kerning (which it finds in few faces). */
function readWithOpentype(sfnt: Uint8Array): void {
  const font = opentype.parse(sfnt.slice().buffer);
  for (const letter of LINE) font.charToGlyph(letter).getPath(0, 0, font.unitsPerEm);
}

async function timed(name: string, run: () => Promise<void>): Promise<void> {
  const started = performance.now();
  await run();
  report(name, [performance.now() - started], 'ms');
}

function report(name: string, values: number[], unit: string): void {
  const digits = unit === 'ms' ? 1 : 0;
  const most = Math.max(...values).toFixed(digits);
  process.stdout.write(
    `  ${name}: ${values.length > 1 ? `median ${median(values).toFixed(digits)}, most ${most} of ${values.length}` : most} ${unit}\n`,
  );
}
