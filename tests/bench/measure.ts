import { nearGap, totalForNearGap } from '@/shared/measure/near-gap';
import { apparentGapAt, prepareLine } from '@/shared/measure';
import { areaGap, REACH, whiteArea } from '@/shared/measure/area';
import { compareLine, reportLine } from '@/shared/scoring';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { faceOf, sharesOfPair } from '@/shared/usual-range/usual-range';
import { paper } from '@/tests/fixtures/paper';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const AT = { size: { value: 96, unit: 'px' }, ground: 'light' } as const;

/** Pairs of which nothing lies hidden behind an edge, so that “white between” means the same to both. */
const OPEN_PAIRS = ['OO', 'HH', 'AV', 'VA', 'LT', 'TL', 'IV', 'VI', 'OI', 'IO', 'oo', 'TT'];

/** npm run bench -- measure: what measuring costs, and area beside paper.js for the same answer. */
export default async function measure(): Promise<void> {
  const face = await registryFace('lato-400');
  const pack = registryPack(face, 'Vantarolyneb');
  const offsets = pack.builtIn.map((_, index) => ((index * 7) % 19) - 9);
  const line = prepareLine(pack),
    seen = line.pairs[3]!.seen;
  const reference: ReferenceSpacing = {
    author: 'A',
    tracking: 0,
    offsets: offsets.map((offset) => -offset),
    tolerances: offsets.map(() => 8),
    reasons: offsets.map(() => null),
  };
  const { shapeOf, reference: wanted } = line.face;
  const [a, b] = [shapeOf(pack.letters[0]!), shapeOf(pack.letters[1]!)];
  const usual = faceOf(pack, line.face)!;
  const rows = [
    timed('apparent gap of a cached pair', 1, 400_000, (i) => apparentGapAt(line, i % 11, (i % 40) - 20)),
    timed('solve: the total for an apparent gap', 2, 200_000, (i) => totalForNearGap(seen, wanted! + (i % 30)) ?? 0),
    timed(
      'all findings of a 12-letter line, beside a reference',
      300,
      2_000,
      (i) => compareLine(reportLine(pack, { tracking: i % 5, offsets }, AT), [reference]).findings.length,
    ),
    timed('usual range of a pair', 30, 20_000, () => sharesOfPair(usual, a, b).mean),
    timed('the same apparent gap without looking up the pair', null, 400_000, (i) => nearGap(seen, (i % 40) - 20)),
  ];
  for (const { name, micros, limit } of rows)
    console.log(
      `${name}: ${micros.toFixed(2)} µs${limit === null ? '' : `, figure to reach ${limit} µs: ${micros < limit ? 'reached' : 'MISSED'}`}`,
    );
  areaBesidePaper(registryPack(face, 'HOAVLTInoe'));
}

/** Least of nine rounds, after warming up, in microseconds of processor time a call: what others run beside it hardly counts. */
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

/** The white between two letters at a total: by the cached profile, and by paper.js taking both outlines from a rectangle. */
function areaBesidePaper(pack: ReturnType<typeof registryPack>): void {
  paper.setup(new paper.Size(100, 100));
  const { shapeOf } = prepareLine(pack).face;
  const place = (letter: string) => pack.glyphs.findIndex(({ cluster }) => cluster === letter);
  const scale = 1000 / pack.unitsPerEm;
  const outline = (letter: string, shift: number) => {
    const item = new paper.CompoundPath(pack.glyphs[place(letter)]!.path);
    item.scale(scale, scale, new paper.Point(0, 0));
    item.translate(new paper.Point(shift, 0));
    return item;
  };
  let ours = 0,
    theirs = 0,
    worst = 0;
  for (const pair of OPEN_PAIRS) {
    const [l, r] = [...pair] as [string, string];
    const left = shapeOf(place(l)),
      right = shapeOf(place(r));
    const gap = areaGap(left, right),
      total = 10;
    const shift = left.advance + total;
    const bottom = Math.min(left.box.bottom, right.box.bottom),
      top = Math.max(left.box.top, right.box.top);
    const from = Math.max(left.box.left, left.box.right - REACH),
      to = shift + Math.min(right.box.right, right.box.left + REACH);
    const leftItem = outline(l, 0),
      rightItem = outline(r, shift);
    const boolean = () => {
      const white = new paper.Path.Rectangle(new paper.Point(from, bottom), new paper.Point(to, top))
        .subtract(leftItem)
        .subtract(rightItem);
      const middle = between(white, left.box.right, shift + right.box.left);
      white.remove();
      return middle;
    };
    const wanted = boolean();
    const found = whiteArea(gap, total);
    worst = Math.max(worst, Math.abs(found / wanted - 1));
    ours += timed(pair, null, 100_000, (i) => whiteArea(gap, 10 + (i % 2) * 1e-9)).micros / OPEN_PAIRS.length;
    theirs += timed(pair, null, 27, boolean).micros / OPEN_PAIRS.length;
  }
  const times = theirs / ours;
  console.log(
    `area of white, ${OPEN_PAIRS.length} pairs: ${ours.toFixed(3)} µs, paper.js ${theirs.toFixed(0)} µs, ${times.toFixed(0)} times as fast (figure to reach 200: ${times >= 200 ? 'reached' : 'MISSED'}); answers differ by ${(worst * 100).toFixed(2)} % at most (0.5: ${worst <= 0.005 ? 'reached' : 'MISSED'})`,
  );
}

/** Of the pieces left over, the one that spans the middle of the gap; a counter or the white behind a letter is another piece. */
function between(white: paper.PathItem, leftEdge: number, rightEdge: number): number {
  const pieces = white instanceof paper.CompoundPath ? (white.children as paper.Path[]) : [white as paper.Path];
  const middle = (leftEdge + rightEdge) / 2;
  return Math.max(
    ...pieces
      .filter(({ bounds }) => bounds.left <= middle && bounds.right >= middle)
      .map((piece) => Math.abs(piece.area)),
  );
}
