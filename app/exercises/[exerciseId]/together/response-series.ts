import { thousandths, type ResponsePoint } from '@/shared/scoring';
import { withUnit } from '@/shared/text/number';

export type NamedPoint = { name: string; point: ResponsePoint };
export type PointGroup = { name: string; points: NamedPoint[] };

/** Lines of one face, smallest first. */
export const byFace = (named: readonly NamedPoint[]): PointGroup[] =>
  grouped(
    named,
    ({ name }) => name,
    (one, other) => one.pixels - other.pixels,
  );

/** Lines of one family at one size, lightest first. */
export const byFamily = (named: readonly NamedPoint[]): PointGroup[] =>
  grouped(
    named,
    ({ point }) => `${point.family}, ${withUnit(point.pixels, 'px', 1)}`,
    (one, other) => one.weight - other.weight,
  );

/** What faces with optical sizes do over the same sizes, with its band; one series for all faces that are expected to do the same. */
export function expectedSeries(faces: readonly PointGroup[]) {
  const found = new Map<
    string,
    { names: string[]; points: { x: number; y: number; lower: number; upper: number }[] }
  >();
  for (const { name, points } of faces) {
    const own = [
      ...new Map(
        points.map(({ point }) => [
          point.pixels,
          { x: point.pixels, y: point.expected, lower: point.lower, upper: point.upper },
        ]),
      ).values(),
    ];
    const reading = points.every(({ point }) => point.readingFace);
    const key = reading ? 'reading' : name;
    const before = found.get(key)?.points ?? [];
    const fresh = own.filter(({ x }) => !before.some((one) => one.x === x));
    found.set(key, {
      names: [...(found.get(key)?.names ?? []), name],
      points: [...before, ...fresh].sort((one, other) => one.x - other.x),
    });
  }
  return [...found].map(([key, { names, points }]) => ({
    name: key === 'reading' ? 'Faces with optical sizes' : `Expected of ${names[0]}`,
    points,
    band: true,
  }));
}

/** The shares of one face over its sizes: as set, as it comes, and what faces with optical sizes would make of it. */
export function shareSeries({ name, points }: PointGroup, alone: boolean) {
  const share = (value: number | null) => (value === null ? null : 100 * value);
  const set = {
    name: alone ? 'As set' : name,
    points: points.map(({ point }) => ({ x: point.pixels, y: share(point.share) })),
  };
  if (!alone) return [set];
  const all = points.map(({ point }) => point);
  const expected = all.flatMap(({ pixels, asBuilt, stemGap, expected: by, lower, upper }) => {
    if (asBuilt === null || stemGap === null || stemGap <= 0) return [];
    const at = (added: number) => (100 * (asBuilt + added)) / stemGap;
    return [{ x: pixels, y: at(by), lower: at(lower), upper: at(upper) }];
  });
  return [set, { name: 'Faces with optical sizes', points: expected, band: true }];
}

/** What is to be seen in the chart over size, for its first face. */
export function sizeReading({ name, points }: PointGroup): string {
  const small = points[0]!.point,
    large = points.at(-1)!.point;
  const done = large.added - small.added,
    expected = large.expected - small.expected;
  const from = `${name} from ${withUnit(small.pixels, 'px', 1)} to ${withUnit(large.pixels, 'px', 1)}`;
  return `${from}: you set a typical gap ${change(done)}. Faces with optical sizes are ${change(expected)} there, in the mean of five; the band round them is wide, since they differ much.`;
}

/** What is to be seen in the chart over weight, for its first family. */
export function weightReading({ name, points }: PointGroup): string {
  const light = points[0]!.point,
    bold = points.at(-1)!.point;
  if (light.share === null || bold.share === null || light.shareAsBuilt === null || bold.shareAsBuilt === null)
    return 'These faces have no H, so there is no stem gap to hold a gap against.';
  const percent = (share: number) => withUnit(100 * share, '%');
  return `${name}, from weight ${light.weight} to ${bold.weight}: as you set it the middle gap goes from ${percent(light.share)} to ${percent(bold.share)} of the face’s own stem gap; as its designer spaced it, from ${percent(light.shareAsBuilt)} to ${percent(bold.shareAsBuilt)}. A bold usually keeps its share, since gap and counter shrink together.`;
}

const change = (by: number): string =>
  Math.round(by) === 0 ? 'neither tighter nor wider' : `${thousandths(by)} ${by < 0 ? 'tighter' : 'wider'}`;

function grouped(
  named: readonly NamedPoint[],
  keyOf: (one: NamedPoint) => string,
  order: (one: ResponsePoint, other: ResponsePoint) => number,
): PointGroup[] {
  const groups = new Map<string, NamedPoint[]>();
  for (const one of named) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups].map(([name, points]) => ({
    name,
    points: points.sort((one, other) => order(one.point, other.point)),
  }));
}
