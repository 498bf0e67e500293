import Link from 'next/link';
import { BarChart } from '@/app/_ui/charts/BarChart';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Section } from '@/app/_ui/Page';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { sideWords } from '@/shared/class/side-words';
import type { ClassLine, MissedSides } from '@/shared/class/summary';
import { pairOfLine } from '@/shared/line/excerpt';
import { withUnit } from '@/shared/text/number';
import type { Sheets } from './class-lines';

type Props = {
  sides: readonly MissedSides[];
  lines: readonly ClassLine[];
  sheets: Sheets;
  /** The address of the page with them drawn. */ drawnAt: string;
  drawn: boolean;
};

/**
 * The kinds of side that face each other, those the class misses most first; all of them are drawn on request. Derived
 * from the outlines, not from a list of letters.
 */
export function ClassSides({ sides, lines, sheets, drawnAt, drawn }: Props) {
  const [most] = sides;
  if (!most) return null;
  // Where no gap is outside there is nothing to draw: only the number is given.
  const missed = sides.filter(({ outside }) => outside > 0);
  const reading = readingOf(most, missed.length, sides.length - missed.length);
  return (
    <Section title={missed.length > 0 ? 'What the class misses' : 'Kinds of side'} id="sides">
      {missed.length > 0 && (
        <ul className="class-sides" role="list">
          {missed.slice(0, 4).map((side) => (
            <Kind key={`${side.left} ${side.right}`} side={side} lines={lines} sheets={sheets} />
          ))}
        </ul>
      )}
      {drawn ? (
        <SidesChart missed={missed} reading={reading} />
      ) : (
        <p>
          {reading}{' '}
          {missed.length > 0 && (
            <Link href={`${drawnAt}#sides`} prefetch={false}>
              All kinds as a chart
            </Link>
          )}
        </p>
      )}
    </Section>
  );
}

/** One kind of side by the pair that is missed most, drawn as the middle of the class spaced it. */
function Kind({ side, lines, sheets }: { side: MissedSides; lines: readonly ClassLine[]; sheets: Sheets }) {
  const [letters = ''] = side.letters;
  const line = lineWith(letters, lines);
  const sheet = line && sheets.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId);
  const drawn =
    line?.middle && sheet
      ? pairOfLine(
          { pack: sheet.pack, spacing: line.middle },
          line.pairs.findIndex((pair) => pair.letters === letters),
        )
      : null;
  return (
    <li>
      {drawn && (
        <SheetFrame ground={sheet!.ground}>
          <LineDrawing {...drawn} size={PAIR_SIZE} label={null} />
        </SheetFrame>
      )}
      <p>
        <strong>{[...letters].join(' beside ')}</strong>
        {side.letters.length > 1 && `, like ${side.letters.slice(1).join(', ')}`}
        <br />
        <span className="quiet">
          {withUnit(share(side), '%')} of {side.pairs} gaps outside
        </span>
      </p>
    </li>
  );
}

/** Large enough that the white of one gap is seen: what is shown is the pair, not a line at its size. */
const PAIR_SIZE = { value: 112, unit: 'px' } as const;

/** The line in which most of the class misses this pair. */
function lineWith(letters: string, lines: readonly ClassLine[]): ClassLine | undefined {
  const missed = (line: ClassLine) => line.pairs.find((pair) => pair.letters === letters)?.outside ?? -1;
  return lines.filter((line) => missed(line) >= 0).toSorted((one, other) => missed(other) - missed(one))[0];
}

function SidesChart({ missed, reading }: { missed: readonly MissedSides[]; reading: string }) {
  return (
    <BarChart
      level={3}
      title="How often the class is outside, by the two sides that face each other"
      fileName="kinds-of-side"
      rowName="Sides (left letter’s right, right letter’s left)"
      reading={reading}
      x={{ label: 'Outside', unit: '%', digits: 0 }}
      empty="no gap is outside."
      bars={missed.map((side) => ({
        name: `${side.letters.join(', ')}: ${sideWords[side.left]}, then ${sideWords[side.right]}`,
        value: share(side),
        more: [side.outside, side.pairs, side.median],
      }))}
      moreColumns={[
        { name: 'Gaps outside', digits: 0 },
        { name: 'Gaps in all', digits: 0 },
        { name: 'Median deviation', unit: '1/1000 em', digits: 1, plus: true },
      ]}
    />
  );
}

const share = ({ outside, pairs }: MissedSides) => (100 * outside) / pairs;

function readingOf(most: MissedSides, missed: number, rest: number): string {
  if (most.outside === 0) return 'No student is outside tolerance or the usual range anywhere.';
  const others =
    rest === 0
      ? ''
      : ` ${missed === 1 ? 'This kind alone is' : `${missed} kinds of side are`} missed by at least one student; the other ${rest === 1 ? 'one is' : `${rest} are`} never outside.`;
  const [first, ...more] = most.letters.map((letters) => [...letters].join(' beside '));
  const like = more.length === 0 ? '' : `, and like it ${more.join(' and ')}`;
  return `Most often at ${first}${like}: ${withUnit(share(most), '%')} of ${most.pairs} gaps.${others}`;
}
