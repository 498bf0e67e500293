import { apparentGap, totalForGap } from '@/shared/measure/apparent-gap';
import { apparentGapAt, prepareLine } from '@/shared/measure';
import { compareLine, reportLine } from '@/shared/scoring';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { faceOf, sharesOfPair } from '@/shared/usual-range/usual-range';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const AT = { size: { value: 96, unit: 'px' }, ground: 'light' } as const;

/** npm run bench -- measure: what measuring costs. */
export default async function measure(): Promise<void> {
  const face = await registryFace('lato-400');
  const pack = registryPack(face, 'Vantarolyneb');
  const offsets = pack.builtIn.map((_, index) => ((index * 7) % 19) - 9);
  const line = prepareLine(pack),
    white = line.pairs[3]!.white;
  const reference: ReferenceSpacing = {
    author: 'A',
    tracking: 0,
    offsets: offsets.map((offset) => -offset),
    tolerances: offsets.map(() => 8),
    reasons: offsets.map(() => null),
  };
  const { shapeOf, controlGap: wanted } = line.face;
  const [a, b] = [shapeOf(pack.letters[0]!), shapeOf(pack.letters[1]!)];
  const usual = faceOf(pack, line.face)!;
  const rows = [
    timed('apparent gap of a cached pair', 1, 400_000, (i) => apparentGapAt(line, i % 11, (i % 40) - 20)),
    timed('solve: the total for an apparent gap', 2, 200_000, (i) => totalForGap(white, wanted! + (i % 30)) ?? 0),
    timed(
      'all findings of a 12-letter line, beside a reference',
      1000,
      2_000,
      (i) => compareLine(reportLine(pack, { tracking: i % 5, offsets }, AT), [reference]).findings.length,
    ),
    timed('usual range of a pair', 30, 20_000, () => sharesOfPair(usual, a, b).mean),
    timed('the same apparent gap without looking up the pair', null, 400_000, (i) => apparentGap(white, (i % 40) - 20)),
  ];
  for (const { name, micros, limit } of rows)
    console.log(
      `${name}: ${micros.toFixed(2)} µs${limit === null ? '' : `, figure to reach ${limit} µs: ${micros < limit ? 'reached' : 'MISSED'}`}`,
    );
}

/**
 * Least of nine rounds, after warming up, in microseconds of processor time a call: what others run beside it hardly
 * counts.
 */
function timed(
  name: string,
  limit: number | null,
  times: number,
  run: (i: number) => number,
): { name: string; micros: number; limit: number | null } {
  let sink = 0;
  const round = (count: number) => {
    const start = process.cpuUsage();
    for (let i = 0; i < count; i += 1) sink += run(i);
    return process.cpuUsage(start).user / count;
  };
  round(times);
  const rounds = Array.from({ length: 9 }, () => round(Math.ceil(times / 9))).sort((x, y) => x - y);
  if (Number.isNaN(sink)) throw new Error(`${name} gave no number.`);
  return { name, micros: rounds[0]!, limit };
}
