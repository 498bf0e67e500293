import { Table } from '@/app/_ui/Table';
import { LineChart } from '@/app/_ui/charts/LineChart';
import type { Together } from '@/lib/work/same-text';
import { faceName } from '@/lib/rows/specimen';
import { numberText, signed, withUnit } from '@/shared/text/number';
import type { ShownLine } from './together-line';
import {
  byFace,
  byFamily,
  expectedSeries,
  shareSeries,
  sizeReading,
  weightReading,
  type NamedPoint,
} from './response-series';

type Props = { lines: readonly ShownLine[]; response: NonNullable<Together['response']> };

/** A chart holds no more settings than can be told apart. */
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
    <Table caption="Every line in figures, in thousandths of an em where nothing else is said">
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
            As the face comes
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
