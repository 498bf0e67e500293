import Link from 'next/link';
import { BarChart } from '@/app/_ui/charts/BarChart';
import { Section } from '@/app/_ui/Page';
import { sideWords } from '@/shared/class/side-words';
import type { MissedSides } from '@/shared/class/summary';
import { withUnit } from '@/shared/text/number';

type Props = {
  sides: readonly MissedSides[];
  /** The address of the page with them drawn. */ drawnAt: string;
  drawn: boolean;
};

/**
 * The kinds of side that face each other, those the class misses most first; all of them are drawn on request. Derived
 * from the outlines, not from a list of letters.
 */
export function ClassSides({ sides, drawnAt, drawn }: Props) {
  const [most] = sides;
  if (!most) return null;
  // Where no gap is outside there is nothing to draw: only the number is given.
  const missed = sides.filter(({ outside }) => outside > 0);
  const reading = readingOf(most, missed.length, sides.length - missed.length);
  return (
    <Section title="Kinds of side" id="sides">
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
      : ` ${missed === 1 ? 'This kind alone is' : `${missed} kinds of side are`} missed by at least one student; the other ${rest === 1 ? 'one is' : `${rest} are`} within throughout.`;
  const [first, ...more] = most.letters.map((letters) => [...letters].join(' beside '));
  const like = more.length === 0 ? '' : `, like ${more.join(' and ')},`;
  return `Most often at ${first}${like} where ${sideWords[most.left]} meets ${sideWords[most.right]}: ${withUnit(share(most), '%')} of ${most.pairs} gaps.${others}`;
}
