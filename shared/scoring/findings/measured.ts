import { round2 } from '@/shared/measure/round';
import type { Finding, LineMeasure, PairMeasure } from '@/shared/schemas/measure';

/** A line as measured, before anything is said of it. */
export type Measured = Omit<LineMeasure, 'findings'>;

/** A finding with the usual answers filled in: it speaks of the whole line, in 1/1000 em, and informs only. */
export function makeFinding(said: Pick<Finding, 'kind' | 'value' | 'sentence'> & Partial<Finding>): Finding {
  return {
    kind: said.kind,
    weight: said.weight ?? 'fact',
    from: said.from ?? null,
    to: said.to ?? said.from ?? null,
    letter: said.letter ?? null,
    value: round2(said.value),
    unit: said.unit ?? 'per-mille',
    direction: said.direction ?? null,
    sentence: said.sentence,
    comparison: said.comparison ?? null,
  };
}

/** Pairs of letters, which evenness is judged on; figures, punctuation and word spaces have their own standing. */
export function letterPairs({ pairs }: Measured): PairMeasure[] {
  return pairs.filter(({ group }) => group === 'letters' || group === 'capitals');
}

/** Pixels of one 1/1000 em at the size the line is set: 1 pt is 4/3 px (CSS Values and Units 4, 6.2). */
export function pixelsPerMille({ size }: Measured): number {
  return (size.unit === 'pt' ? (size.value * 4) / 3 : size.value) / 1000;
}
