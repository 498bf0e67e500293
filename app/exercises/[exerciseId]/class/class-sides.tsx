import { Section } from '@/app/_ui/Section';
import { Table } from '@/app/_ui/Table';
import { sideWords } from '@/shared/class/side-words';
import type { MissedSides } from '@/shared/class/summary';
import { numberText, signed, withUnit } from '@/shared/text/number';

/** The kinds of side that face each other, those the class misses most first. Read from the outlines, not from a list of letters. */
export function ClassSides({ sides }: { sides: readonly MissedSides[] }) {
  if (sides.length === 0) return null;
  return (
    <Section title="Kinds of side" lead="Which two sides face each other in a gap, and how often the class is outside tolerance there.">
      <Table caption="Kinds of side, most often missed first" narrow captionHidden>
        <thead><tr><th scope="col">Left letter’s right side</th><th scope="col">Right letter’s left side</th><th scope="col" className="number">Outside</th><th scope="col" className="number">Of</th><th scope="col" className="number">Share</th><th scope="col" className="number">Median deviation</th></tr></thead>
        <tbody>
          {sides.map(({ left, right, pairs, outside, median }) => (
            <tr key={`${left} ${right}`}>
              <td>{sideWords[left]}</td><td>{sideWords[right]}</td>
              <td className="number">{outside}</td><td className="number">{numberText(pairs)}</td>
              <td className="number">{withUnit((100 * outside) / pairs, '%')}</td>
              <td className="number">{signed(median, 1)}</td>
            </tr>
          ))}
        </tbody>
      </Table>
    </Section>
  );
}
