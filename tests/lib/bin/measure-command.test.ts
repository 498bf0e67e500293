import { spawn } from 'node:child_process';
import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readArguments } from '@/lib/bin/measure/arguments';
import { CommandError } from '@/lib/bin/measure/command-error';
import { measureLines } from '@/lib/bin/measure/measure-lines';
import { measurePairs } from '@/lib/bin/measure/measure-pairs';
import { measureText } from '@/lib/bin/measure/measure-text';
import { findFace } from '@/lib/face/catalogue';
import { FaceError } from '@/lib/face/face-error';
import { MeasureError } from '@/shared/measure-error';
import type { PairMeasure } from '@/shared/schemas/measure';
import type { UsualRange } from '@/shared/usual-range/range';
import { tinyFace, GLYPH } from '../../fixtures/faces/tiny-face';

type Ended = { code: number | null; out: string; error: string };

/** The command as package.json starts it, in a process of its own. */
function run(given: string[], input = ''): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'lib/bin/measure.ts', ...given]);
    let out = '',
      error = '';
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (error += chunk.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, error }));
    child.stdin.end(input);
  });
}

let folder = '';
let handmade = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'measure-'));
  handmade = join(folder, 'handmade.ttf');
  await writeFile(handmade, tinyFace({ unitsPerEm: 2000, kern: [[GLYPH.A, GLYPH.V, -80]] }));
});

describe('measure --pairs', () => {
  it('prints one object a line in 1/1000 em (figures by hand from the handmade face)', async () => {
    const { code, out, error } = await run(['--face', handmade, '--pairs', '-'], 'AV\nVA\n');
    expect(error).toBe('');
    expect(code).toBe(0);
    const [first, second] = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    // Em of 2000: A is 600 wide with its box from 100 to 500, V 600 wide with its box from 50 to 550; kerning −80.
    expect(first).toMatchObject({ pair: 'AV', advance: 300, kern: -40, clearance: 75, suggestion: null });
    expect(second).toMatchObject({ pair: 'VA', advance: 300, kern: 0, clearance: 75 });
    // Two upright edges 75 apart; over them, up to the top of d, the sight line opens.
    expect(first!['apparentGap']).toBeGreaterThanOrEqual(75);
    expect(second!['apparentGap']).toBe(first!['apparentGap']);
    expect(Object.keys(first!)).toEqual([
      'pair',
      'advance',
      'kern',
      'apparentGap',
      'area',
      'clearance',
      'suggestion',
      'usual',
    ]);
  });

  it('measures all 2704 Latin pairs of a face', async () => {
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];
    const pairs = letters.flatMap((left) => letters.map((right) => left + right));
    const { code, out } = await run(['--face', 'lato-400', '--pairs', '-'], pairs.join('\r\n'));
    expect(code).toBe(0);
    const lines = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { pair: string; kern: number; usual: UsualRange });
    expect(lines.map((line) => line.pair)).toEqual(pairs);
    expect(lines.find((line) => line.pair === 'AV')?.kern).toBeLessThan(-30);
    const usual = (pair: string) => lines.find((line) => line.pair === pair)!.usual;
    expect(usual('AV').halfHigh).toBeLessThan(-30);
    expect(usual('AV').leftAlone).toBeLessThan(0.2);
    expect(usual('HH').leftAlone).toBeGreaterThan(0.8);
    expect(Math.abs(usual('HH').middle)).toBeLessThan(5);
    // A capital after a small letter is not spoken of.
    expect(usual('aV')).toBeNull();
  });

  it('takes pairs with accents, and a file instead of standard input', async () => {
    const list = join(folder, 'pairs.txt');
    await writeFile(list, 'Åv\ne\u0301l\n');
    const { code, out } = await run(['--face', findFace('lato-400').path, '--pairs', list]);
    expect(code).toBe(0);
    expect(
      out
        .trim()
        .split('\n')
        .map((line) => (JSON.parse(line) as { pair: string }).pair),
    ).toEqual(['Åv', 'él']);
  });
});

describe('measure --text', () => {
  it('prints findings, with offsets that begin with a minus', async () => {
    const { code, out } = await run([
      '--face',
      'lato-400',
      '--text',
      'AVATAR',
      '--offsets',
      '-20,0,5,0,−3',
      '--tracking',
      '10',
      '--size',
      '36pt',
      '--ground',
      'dark',
    ]);
    expect(code).toBe(0);
    const printed = JSON.parse(out) as {
      text: string;
      size: unknown;
      ground: string;
      pairs: { offset: number; tracking: number; total: number; builtIn: number }[];
      findings: unknown[];
      pack: { hash: string };
    };
    expect(printed).toMatchObject({ text: 'AVATAR', size: { value: 36, unit: 'pt' }, ground: 'dark' });
    expect(printed.pairs.map((pair) => pair.offset)).toEqual([-20, 0, 5, 0, -3]);
    for (const pair of printed.pairs) expect(pair.total).toBeCloseTo(pair.builtIn + pair.tracking + pair.offset, 1);
    expect(printed.findings.length).toBeGreaterThan(0);
    expect(printed.pack.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it('draws a proof and warns about the licence', async () => {
    const picture = join(folder, 'proof.svg');
    const { code, error } = await run([
      '--face',
      'fraunces-opsz',
      '--axes',
      'opsz=72,wght=600',
      '--text',
      'To <&>',
      '--proof',
      picture,
    ]);
    expect(code).toBe(0);
    expect(error).toContain('licence');
    const svg = await readFile(picture, 'utf8');
    expect(svg).toContain('licence');
    expect(svg.match(/<polygon/g)).toHaveLength(4);
    expect(svg).toContain('<title>To &lt;&amp;&gt;</title>');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('measure --lines', () => {
  it('prints a line for each line, with ranges, surprise, outside and tightness', async () => {
    const asked = [
      { text: 'HAVANA' },
      { text: 'HAVANA', offsets: [0, 120, 0, 0, 0], size: 72 },
      { text: 'HAVANA 17', tracking: 25, size: '36pt' },
    ];
    const { code, out, error } = await run(
      ['--face', 'lato-400', '--lines', '-'],
      asked.map((line) => JSON.stringify(line)).join('\n'),
    );
    expect(error).toBe('');
    expect(code).toBe(0);
    const [plain, moved, tracked] = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { text: string; tightness: number; size: unknown; pairs: PairMeasure[] });
    expect(plain).toMatchObject({ text: 'HAVANA', size: { value: 48, unit: 'px' }, tightness: 0 });
    expect(plain!.pairs[1]).toMatchObject({ index: 1, left: 'A', right: 'V', offset: 0, outside: false });
    expect(plain!.pairs[1]!.total).toBe(plain!.pairs[1]!.builtIn);
    // Opened by 120, AV is the widest beside what is usual, and beyond it.
    expect(moved!.pairs[1]).toMatchObject({ offset: 120, outside: true });
    expect(moved!.pairs[1]!.surprise).toBeGreaterThan(1);
    expect(moved!.pairs[1]!.usual).toEqual(plain!.pairs[1]!.usual);
    // The word space and the figures are not spoken of; tracking is the line's, not a pair's.
    expect(tracked).toMatchObject({ size: { value: 36, unit: 'pt' } });
    expect(tracked!.pairs.slice(-2).map(({ usual, surprise, outside }) => [usual, surprise, outside])).toEqual([
      [null, null, null],
      [null, null, null],
    ]);
    expect(tracked!.tightness).toBe(25);
    expect(tracked!.pairs[1]!.outside).toBe(false);
  });

  it('says which line is not understood, and how', async () => {
    const { code, error } = await run(['--face', 'lato-400', '--lines', '-'], '{"text":"Tavern"}\n{"txt":"Tavern"}\n');
    expect(code).toBe(1);
    expect(error).toMatch(/Line 2[^]*"text"/);
    expect((await run(['--face', 'lato-400', '--lines', '-'], 'Tavern\n')).error).toMatch(/Line 1 is no JSON/);
  });

  it('answers --help on standard output', async () => {
    const { code, out, error } = await run(['--help']);
    expect([code, error]).toEqual([0, '']);
    expect(out).toMatch(/^Usage:[^]*--lines -/);
  });
});

describe('measure refuses', () => {
  it.each<[string, string[], string, number, string]>([
    ['no face', ['--text', 'AV'], '', 2, 'Give --face'],
    ['an unknown option', ['--fase', 'lato-400'], '', 2, '--fase'],
    ['neither pairs nor text', ['--face', 'lato-400'], '', 2, '--pairs, --lines and --text'],
    ['no such file', ['--face', './nowhere.ttf', '--text', 'AV'], '', 1, 'no file “./nowhere.ttf”'],
    ['no such key', ['--face', 'lato-450', '--text', 'AV'], '', 1, '“lato-450”'],
    ['a folder', ['--face', 'lib', '--text', 'AV'], '', 1, 'not a file'],
    ['a file that is no face', ['--face', 'package.json', '--text', 'AV'], '', 1, 'no TTF, OTF, WOFF or WOFF2'],
    ['no pairs', ['--face', 'lato-400', '--pairs', 'LIST'], '', 1, 'No pairs'],
    ['no such list', ['--face', 'lato-400', '--pairs', './nowhere.txt'], '', 1, './nowhere.txt'],
    ['three letters', ['--face', 'lato-400', '--pairs', 'LIST'], 'AV\nAVA\n', 1, '“AVA” (pair 2)'],
    ['an empty line between', ['--face', 'lato-400', '--pairs', 'LIST'], 'AV\n\nTo\n', 1, '(pair 2)'],
    ['a letter that the face lacks', ['--face', 'lato-400', '--pairs', 'LIST'], 'AЩ\n', 1, '“Щ”'],
    ['too few offsets', ['--face', 'lato-400', '--text', 'AVA', '--offsets', '5'], '', 1, '2 gaps'],
    ['an offset that is no number', ['--face', 'lato-400', '--text', 'AVA', '--offsets', '5,wide'], '', 2, '“wide”'],
    ['an offset out of range', ['--face', 'lato-400', '--text', 'AVA', '--offsets', '5,3000'], '', 1, '3000'],
    ['a size without a unit', ['--face', 'lato-400', '--text', 'AVA', '--size', '48'], '', 2, '“48”'],
    ['a size of nothing', ['--face', 'lato-400', '--text', 'AVA', '--size', '0px'], '', 2, '“0px”'],
    [
      'an axis that is not there',
      ['--face', 'lato-400', '--text', 'AVA', '--axes', 'wght=700'],
      '',
      1,
      'no axis “wght”',
    ],
    ['a ground of another colour', ['--face', 'lato-400', '--text', 'AVA', '--ground', 'pink'], '', 2, '“pink”'],
  ])('%s', async (_, given, list, exitCode, says) => {
    const file = join(folder, 'list.txt');
    await writeFile(file, list);
    const error = await refusal(given.map((one) => (one === 'LIST' ? file : one)));
    expect(error.message).toContain(says);
    expect(error instanceof CommandError ? error.exitCode : 1).toBe(exitCode);
  });

  it('on standard error, without a trace of the program, and prints nothing', async () => {
    const { code, out, error } = await run(['--face', 'lato-400', '--pairs', '-'], 'AV\nAVA\n');
    expect(error).toBe('“AVA” (pair 2) is not a pair. Give two letters a line, with nothing between them.\n');
    expect(code).toBe(1);
    expect(out).toBe('');
  });

  it('with exit code 2 what it does not understand', async () => {
    const { code, out, error } = await run(['--fase', 'lato-400']);
    expect(error).toMatch(/--fase[^]*Usage:/);
    expect(code).toBe(2);
    expect(out).toBe('');
  });
});

/** What the command throws in this process. */
async function refusal(given: string[]): Promise<Error> {
  try {
    const command = readArguments(given);
    if (command.task === 'pairs') await measurePairs(command);
    else if (command.task === 'lines') await measureLines(command);
    else if (command.task === 'text') await measureText(command);
  } catch (error) {
    if (error instanceof CommandError || error instanceof FaceError || error instanceof MeasureError) return error;
    throw error;
  }
  throw new Error('It was not refused.');
}
