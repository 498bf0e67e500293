import { Table } from '@/app/_ui/Table';
import { LineChart } from '@/app/_ui/charts/LineChart';
import type { SameText } from '@/lib/work/same-text';
import { faceName } from '@/lib/rows/specimen';
import type { ResponsePoint } from '@/shared/scoring/response';
import { numberText, signed, withUnit } from '@/shared/text/number';
import { perMilleEm } from '@/shared/wording/lengths';
import type { ShownLine } from './same-text-line';

type Props = { lines: readonly ShownLine[]; response: NonNullable<SameText['response']> };

/** A chart shows no more spacings than can be told apart. */
const mostSeries = 5;

/** The student's gaps beside designers' own data, over size and over weight, and every figure in a table. */
export function ResponseCharts({ lines, response: { points, hints } }: Props) {
  const named = points.map((point, index): NamedPoint => ({ name: faceName(lines[index]!.pack), point }));
  const faces = byFace(named)
    .filter(({ points: own }) => new Set(own.map(({ point }) => point.pixels)).size > 1)
    .slice(0, mostSeries);
  const families = byFamily(named)
    .filter(({ points: own }) => new Set(own.map(({ point }) => point.weight)).size > 1)
    .slice(0, mostSeries);
  const percent = (share: number | null) => (share === null ? null : 100 * share);
  return (
    <>
      {hints.length > 0 && (
        <ul className="reading">
          {hints.map((hint) => (
            <li key={hint}>{hint}</li>
          ))}
        </ul>
      )}
      {faces.length > 0 && (
        <>
          <LineChart
            title="Added to a typical gap, over size"
            fileName="gaps-over-size"
            reading={sizeReading(faces[0]!)}
            x={{ label: 'Size', unit: 'px', scale: 'log2' }}
            y={{ label: 'Added (tracking and offset)', unit: '1/1000 em', include: [0], digits: 1, plus: true }}
            series={[
              ...faces.map(({ name, points: own }) => ({
                name,
                points: own.map(({ point }) => ({ x: point.pixels, y: point.added })),
              })),
              ...expectedSeries(faces),
            ]}
          />
          <LineChart
            title="The middle gap as a share of the stem gap, over size"
            fileName="share-over-size"
            reading="A hundred per cent is a gap as open as two straight stems beside each other in that face. From 16 px on, faces with optical sizes lose about five per cent of their stem gap with each doubling."
            x={{ label: 'Size', unit: 'px', scale: 'log2' }}
            y={{ label: 'Middle gap', unit: '% of the stem gap', digits: 1, include: [100] }}
            series={faces.flatMap((face) => shareSeries(face, faces.length === 1))}
          />
        </>
      )}
      {families.length > 0 && (
        <LineChart
          title="The middle gap as a share of the stem gap, over weight"
          fileName="share-over-weight"
          reading={weightReading(families[0]!)}
          x={{ label: 'Weight', scale: 'linear' }}
          y={{ label: 'Middle gap', unit: '% of the stem gap', digits: 1, include: [100] }}
          series={families.flatMap(({ name, points: own }) => [
            { name: `${name}, as set`, points: own.map(({ point }) => ({ x: point.weight, y: percent(point.share) })) },
            {
              name: `${name}, as its designer spaced it`,
              points: own.map(({ point }) => ({ x: point.weight, y: percent(point.shareAsBuilt) })),
            },
          ])}
        />
      )}
      <FiguresTable lines={lines} named={named} />
      <p className="quiet note-size">
        Size: spacing of n, H and o along the optical-size axes of Fraunces, Literata, Newsreader, Roboto Flex and
        Source Serif 4, about 10 thousandths tighter with each doubling above 16 px and 15 wider with each halving
        below; the five differ much, so the band is as wide as the answer. Weight: 19 families, whose stem gaps fall by
        about 30 to 40 thousandths from 400 to 700, since counters shrink more.
      </p>
    </>
  );
}

function FiguresTable({ lines, named }: { lines: readonly ShownLine[]; named: readonly NamedPoint[] }) {
  const share = (value: number | null) => (value === null ? '–' : withUnit(100 * value, '%'));
  const length = (value: number | null) => (value === null ? '–' : numberText(value));
  return (
    <Table caption="Every line in figures, in 1/1000 em unless stated">
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col" className="number">
            Size
          </th>
          <th scope="col" className="number">
            Middle gap
          </th>
          <th scope="col" className="number">
            Stem gap of the face
          </th>
          <th scope="col" className="number">
            Gap as share
          </th>
          <th scope="col" className="number">
            Untouched
          </th>
          <th scope="col" className="number">
            Added to a typical gap
          </th>
          <th scope="col" className="number">
            Designers, from … to
          </th>
        </tr>
      </thead>
      <tbody>
        {named.map(({ name, point }, index) => (
          <tr key={lines[index]!.versionId}>
            <th scope="row">
              {lines[index]!.place}. {name}
            </th>
            <td className="number">{withUnit(lines[index]!.size.value, lines[index]!.size.unit, 1)}</td>
            <td className="number">{length(point.gap)}</td>
            <td className="number">{length(point.stemGap)}</td>
            <td className="number">{share(point.share)}</td>
            <td className="number">{share(point.shareAsBuilt)}</td>
            <td className="number">{signed(point.added, 1)}</td>
            <td className="number">
              {signed(point.lower)} … {signed(point.upper)}
            </td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}

type NamedPoint = { name: string; point: ResponsePoint };
type PointGroup = { name: string; points: NamedPoint[] };

/** Lines of one face, smallest first. */
const byFace = (named: readonly NamedPoint[]): PointGroup[] =>
  grouped(
    named,
    ({ name }) => name,
    (one, other) => one.pixels - other.pixels,
  );

/** Lines of one family at one size, lightest first. */
const byFamily = (named: readonly NamedPoint[]): PointGroup[] =>
  grouped(
    named,
    ({ point }) => `${point.family}, ${withUnit(point.pixels, 'px', 1)}`,
    (one, other) => one.weight - other.weight,
  );

/**
 * What faces with optical sizes do over the same sizes, with its band; one series for all faces with the same
 * expectation.
 */
function expectedSeries(faces: readonly PointGroup[]) {
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

/** The shares of one face over its sizes: as set, built-in, and as faces with optical sizes would have it. */
function shareSeries({ name, points }: PointGroup, alone: boolean) {
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

/** What the chart over size shows, for its first face. */
function sizeReading({ name, points }: PointGroup): string {
  const small = points[0]!.point,
    large = points.at(-1)!.point;
  const done = large.added - small.added,
    expected = large.expected - small.expected;
  const from = `${name} from ${withUnit(small.pixels, 'px', 1)} to ${withUnit(large.pixels, 'px', 1)}`;
  return `${from}: you set a typical gap ${change(done)}. Faces with optical sizes are ${change(expected)} there, in the mean of five; the band round them is wide, since they differ much.`;
}

/** What the chart over weight shows, for its first family. */
function weightReading({ name, points }: PointGroup): string {
  const light = points[0]!.point,
    bold = points.at(-1)!.point;
  if (light.share === null || bold.share === null || light.shareAsBuilt === null || bold.shareAsBuilt === null)
    return 'These faces have no H, so there is no stem gap to hold a gap against.';
  const percent = (share: number) => withUnit(100 * share, '%');
  return `${name}, from weight ${light.weight} to ${bold.weight}: as you set it the middle gap goes from ${percent(light.share)} to ${percent(bold.share)} of the face’s own stem gap; as its designer spaced it, from ${percent(light.shareAsBuilt)} to ${percent(bold.shareAsBuilt)}. A bold usually keeps its share, since gap and counter shrink together.`;
}

const change = (by: number): string =>
  Math.round(by) === 0 ? 'neither tighter nor wider' : `${perMilleEm(by)} ${by < 0 ? 'tighter' : 'wider'}`;

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
