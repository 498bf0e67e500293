import type { Finding } from '@/shared/schemas/measure';
import { asShareOfStemGap } from '../words';
import { makeFinding, type Measured } from './make-finding';

/** Two letters that read as one when they stand close (common practice), and the letter they are taken for. */
const MISTAKABLE: Record<string, string> = { rn: 'm', cl: 'd', vv: 'w', ri: 'n' };

/** Nearer than this share of the stem gap the two begin to close up. Our own figure. */
const CLOSE = 0.35;

/** Letters so close that they may be read as another letter. Only this finding knows letters by name, since reading does. */
export function mistakableFindings({ pairs, line }: Measured): Finding[] {
  const { stemGap } = line;
  if (stemGap === null) return [];
  return pairs.flatMap((pair) => {
    const other = MISTAKABLE[pair.left + pair.right];
    if (other === undefined || pair.wordSpace > 0 || pair.clearance >= CLOSE * stemGap) return [];
    return [
      makeFinding({
        kind: 'mistakable',
        weight: 'hint',
        from: pair.index,
        value: pair.clearance,
        direction: 'tight',
        sentence: `Between “${pair.left}” and “${pair.right}” there is so little room that the two may be read as “${other}”.`,
        comparison: asShareOfStemGap(pair.clearance, stemGap),
      }),
    ];
  });
}
