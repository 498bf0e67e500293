import { BarChart } from '@/app/_ui/charts/BarChart';
import { Section } from '@/app/_ui/Section';
import { sideWords } from '@/shared/class/side-words';
import type { MissedSides } from '@/shared/class/summary';
import { withUnit } from '@/shared/text/number';

/** The kinds of side that face each other, those the class misses most first. Read from the outlines, not from a list of letters. */
export function ClassSides({ sides }: { sides: readonly MissedSides[] }) {
  const [most] = sides;
  if (!most) return null;
  // Where nobody is outside tolerance there is nothing to draw: those are told by their number.
  const missed = sides.filter(({ outside }) => outside > 0);
  const rest = sides.length - missed.length;
  const share = ({ outside, pairs }: MissedSides) => (100 * outside) / pairs;
  return (
    <Section title="Kinds of side">
      <BarChart
        level={3} title="How often the class is outside tolerance, by the two sides that face each other" fileName="kinds-of-side" rowName="Sides (left letter’s right, right letter’s left)"
        reading={most.outside === 0 ? 'Nobody is outside tolerance anywhere.' : `Most often where ${sideWords[most.left]} meets ${sideWords[most.right]}: ${withUnit(share(most), '%')} of ${most.pairs} gaps.${rest > 0 ? ` The other ${rest === 1 ? 'kind is' : `${rest} kinds are`} within tolerance throughout.` : ''}`}
        x={{ label: 'Outside tolerance', unit: '%', digits: 0 }} empty="every gap is within tolerance."
        bars={missed.map((side) => ({ name: `${sideWords[side.left]}, then ${sideWords[side.right]}`, value: share(side), more: [side.outside, side.pairs, side.median] }))}
        moreColumns={[{ name: 'Gaps outside', digits: 0 }, { name: 'Gaps in all', digits: 0 }, { name: 'Median deviation', unit: '1/1000 em', digits: 1, plus: true }]}
      />
    </Section>
  );
}
