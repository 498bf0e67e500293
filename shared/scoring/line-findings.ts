import type { Finding, LineMeasure, PairMeasure } from '@/shared/schemas/measure';
import { round2 } from '@/shared/measure/round';
import { asShareOfStemGap, betweenLetters } from './words';

/** Everything that can be said of a line by itself, in a fixed order. */
export function lineFindings(measure: Omit<LineMeasure, 'findings'>): Finding[] {
  return [...contacts(measure), ...evenness(measure)];
}

function contacts({ pairs }: Omit<LineMeasure, 'findings'>): Finding[] {
  return pairs.filter((pair) => pair.contact === 'touching' || pair.contact === 'crossing').map((pair): Finding => ({
    kind: pair.contact === 'crossing' ? 'crossing' : 'touching', weight: 'remark', from: pair.index, to: pair.index, letter: null,
    value: pair.clearance, unit: 'per-mille', direction: 'tight',
    sentence: pair.contact === 'crossing' ? `“${pair.left}” and “${pair.right}” run into each other.` : `“${pair.left}” and “${pair.right}” touch.`,
    comparison: null,
  }));
}

function evenness(measure: Omit<LineMeasure, 'findings'>): Finding[] {
  const { line } = measure;
  const pairs = measure.pairs.filter((pair) => pair.group === 'letters' || pair.group === 'capitals');
  if (line.evennessGap === null || line.reference === null) return [];
  const sorted = [...pairs].sort((a, b) => a.apparentGap - b.apparentGap || a.index - b.index);
  return [extreme(sorted[sorted.length - 1]!, line.reference, line.stemGap), extreme(sorted[0]!, line.reference, line.stemGap)];
}

function extreme(pair: PairMeasure, reference: number, stem: number | null): Finding {
  const more = pair.apparentGap - reference;
  return {
    kind: more > 0 ? 'widest' : 'narrowest', weight: 'fact', from: pair.index, to: pair.index, letter: null,
    value: round2(more), unit: 'per-mille', direction: more > 0 ? 'wide' : 'tight',
    sentence: `The ${more > 0 ? 'widest' : 'narrowest'} gap of the line is ${betweenLetters(pair.left, pair.right)}.`,
    comparison: asShareOfStemGap(more, stem),
  };
}
