import { isPunctuation } from '@/shared/measure/pair-group';
import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure } from '@/shared/schemas/measure';
import { atPair, WHOLE_LINE, yardstickOf } from './measured';

/** Word spaces that differ by less than this share of the narrowest look alike. Our own figure. */
const ALIKE = 0.15;
/** A word space that looks less than this many letter gaps wide does not part the words. Our own figure. */
const PARTS = 1.5;

/** All-capital lines are usually opened, and word spaces are held against one another only. */
export function capitalsAndSpacesFindings(measured: LineMeasure): Finding[] {
  return [...capitals(measured), ...hardlySpaces(measured), ...unlikeSpaces(measured)];
}

function capitals({ pairs, line }: LineMeasure): Finding[] {
  const together = pairs.filter(({ group }) => group === 'capitals').length;
  if (together < 3 || line.reference === null || line.asBuilt === null || line.reference > line.asBuilt * 1.02)
    return [];
  // A line set tighter than the face gets that finding, and not the same again in other words.
  if (line.reference < line.asBuilt * 0.95) return [];
  return [
    {
      kind: 'capitals',
      weight: 'hint',
      ...WHOLE_LINE,
      value: round2(line.reference - line.asBuilt),
      unit: 'per-mille',
      direction: null,
    },
  ];
}

function hardlySpaces(measured: LineMeasure): Finding[] {
  const letterGap = measured.line.reference;
  if (letterGap === null) return [];
  return measured.pairs
    .filter(({ group, apparentGap }) => group === 'word-space' && apparentGap < PARTS * letterGap)
    .map((pair) => ({
      kind: 'word-space',
      weight: 'hint',
      ...atPair(pair),
      gap: pair.apparentGap,
      value: round2(pair.apparentGap - letterGap),
      unit: 'per-mille',
      direction: 'tight',
      beside: yardstickOf(measured),
    }));
}

/** Beside a comma or a quotation mark a space looks wider, and that is not the setter's doing. */
function unlikeSpaces(measured: LineMeasure): Finding[] {
  const plain = measured.pairs.filter(
    ({ group, left, right }) => group === 'word-space' && !isPunctuation(left) && !isPunctuation(right),
  );
  if (plain.length < 2) return [];
  const sorted = [...plain].sort((a, b) => a.apparentGap - b.apparentGap || a.index - b.index);
  const narrow = sorted[0]!,
    wide = sorted[sorted.length - 1]!;
  const difference = wide.apparentGap - narrow.apparentGap;
  if (difference < ALIKE * narrow.apparentGap) return [];
  return [
    {
      kind: 'word-spaces-differ',
      weight: 'fact',
      ...atPair(wide),
      narrow: [narrow.left, narrow.right],
      value: round2(difference),
      unit: 'per-mille',
      direction: 'wide',
      beside: yardstickOf(measured),
    },
  ];
}
