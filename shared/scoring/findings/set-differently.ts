import type { Finding, PairMeasure } from '@/shared/schemas/measure';
import { asShareOfStemGap, thousandths } from '../words';
import { makeFinding, type Measured } from './make-finding';

/** Under this nobody sees that one of two equal pairs is set wider, 1/1000 em. Our own figure. */
const SEEN = 6;

/** The same two letters, more than once in the line, set differently: widest and narrowest of them. */
export function setDifferentlyFindings({ pairs, line }: Measured): Finding[] {
  const byLetters = new Map<string, PairMeasure[]>();
  for (const pair of pairs) {
    if (pair.wordSpace > 0) continue;
    const key = `${pair.left} ${pair.right}`;
    byLetters.set(key, [...(byLetters.get(key) ?? []), pair]);
  }
  return [...byLetters.values()].flatMap((same) => {
    const sorted = [...same].sort((a, b) => a.total - b.total || a.index - b.index);
    const narrow = sorted[0]!,
      wide = sorted[sorted.length - 1]!;
    const difference = wide.total - narrow.total;
    if (difference < SEEN) return [];
    return [
      makeFinding({
        kind: 'set-differently',
        weight: 'remark',
        from: Math.min(narrow.index, wide.index),
        to: Math.max(narrow.index, wide.index),
        value: difference,
        direction: null,
        sentence: `“${wide.left}${wide.right}” comes more than once, and is not set alike: ${place(wide.index)} gap is ${thousandths(difference)} wider than ${place(narrow.index)}.`,
        comparison: asShareOfStemGap(difference, line.stemGap),
      }),
    ];
  });
}

/** 0 → “the 1st” */
function place(index: number): string {
  const number = index + 1,
    tens = number % 100,
    ones = number % 10;
  const ending = tens > 10 && tens < 14 ? 'th' : ones === 1 ? 'st' : ones === 2 ? 'nd' : ones === 3 ? 'rd' : 'th';
  return `the ${number}${ending}`;
}
