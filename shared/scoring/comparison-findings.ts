import type { Finding, LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
import { round2 } from '@/shared/measure/round';
import { misplacedLetters } from './misplaced-letters';
import { asShareOfStemGap, betweenLetters, thousandths } from './words';

type Compared = { tightness: number; tightnessTolerance: number; reference: ReferenceSpacing; pairs: PairComparison[] };

/** What a comparison says: tightness, letters out of place, then the pairs left outside their tolerance. */
export function comparisonFindings(line: LineMeasure, compared: Compared): { findings: Finding[]; outside: number } {
  const misplaced = misplacedLetters(line, compared.pairs);
  const told = new Set(misplaced.flatMap(({ letter }) => [letter - 1, letter]));
  const alone = compared.pairs.filter((pair) => !pair.within && !told.has(pair.index));
  const stem = line.line.stemGap;
  const findings: Finding[] = [
    ...tightnessFinding(compared, stem),
    ...misplaced.map(({ letter, shift }): Finding => ({
      kind: 'misplaced', weight: 'remark', from: letter - 1, to: letter, letter, value: round2(shift), unit: 'per-mille', direction: shift > 0 ? 'right' : 'left',
      sentence: `The letter “${line.letters[letter]}” stands too far ${shift > 0 ? 'right' : 'left'}, by ${thousandths(shift)}.`,
      comparison: asShareOfStemGap(shift, stem),
    })),
    ...alone.map((pair): Finding => ({
      kind: 'deviation', weight: 'remark', from: pair.index, to: pair.index, letter: null, value: pair.rest, unit: 'per-mille', direction: pair.rest > 0 ? 'wide' : 'tight',
      sentence: `The gap ${betweenLetters(line.letters[pair.index]!, line.letters[pair.index + 1]!)} is ${thousandths(pair.rest)} ${pair.rest > 0 ? 'wider' : 'tighter'} than the reference, beside the rest of the line.`,
      comparison: asShareOfStemGap(pair.rest, stem),
    })),
  ];
  return { findings, outside: misplaced.length + alone.length };
}

function tightnessFinding({ tightness, tightnessTolerance }: Compared, stem: number | null): Finding[] {
  if (Math.abs(tightness) <= tightnessTolerance) return [];
  return [{
    kind: 'tightness', weight: 'remark', from: null, to: null, letter: null, value: round2(tightness), unit: 'per-mille', direction: tightness > 0 ? 'wide' : 'tight',
    sentence: `The whole line is set ${tightness > 0 ? 'wider' : 'tighter'} than the reference, by ${thousandths(tightness)} at every gap.`,
    comparison: asShareOfStemGap(tightness, stem),
  }];
}
