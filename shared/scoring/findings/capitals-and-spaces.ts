import { isPunctuation } from '@/shared/measure/pair-group';
import type { Finding } from '@/shared/schemas/measure';
import { asShareOfStemGap, betweenLetters, thousandths } from '@/shared/wording/lengths';
import { makeFinding, type Measured } from './measured';

/** Word spaces that differ by less than this share of their middle look alike. Our own figure. */
const ALIKE = 0.15;
/** A word space that looks less than this many letter gaps wide does not part the words. Our own figure. */
const PARTS = 1.5;

/** All-capital lines are usually opened, and word spaces are held against one another only. */
export function capitalsAndSpacesFindings(measured: Measured): Finding[] {
  return [...capitals(measured), ...wordSpaces(measured)];
}

function capitals({ pairs, line }: Measured): Finding[] {
  const together = pairs.filter(({ group }) => group === 'capitals').length;
  if (together < 3 || line.reference === null || line.asBuilt === null || line.reference > line.asBuilt * 1.02)
    return [];
  return [
    makeFinding({
      kind: 'capitals',
      weight: 'hint',
      value: line.reference - line.asBuilt,
      sentence:
        'A line of capitals is usually opened a little beyond what the face gives (common practice); this one is not.',
      comparison: null,
    }),
  ];
}

function wordSpaces({ pairs, line }: Measured): Finding[] {
  const spaces = pairs.filter(({ group }) => group === 'word-space');
  const findings: Finding[] = [];
  if (line.reference !== null)
    for (const pair of spaces) {
      if (pair.apparentGap >= PARTS * line.reference) continue;
      findings.push(
        makeFinding({
          kind: 'word-space',
          weight: 'hint',
          from: pair.index,
          value: pair.apparentGap - line.reference,
          direction: 'tight',
          sentence: `The word space ${betweenLetters(pair.left, pair.right)} is hardly wider than the gaps between letters, so the two words may run into one.`,
          comparison: asShareOfStemGap(pair.apparentGap, line.stemGap),
        }),
      );
    }
  // Beside a comma or a quotation mark a space looks wider, and that is not the setter's doing.
  const plain = spaces.filter(({ left, right }) => !isPunctuation(left) && !isPunctuation(right));
  if (plain.length < 2) return findings;
  const sorted = [...plain].sort((a, b) => a.apparentGap - b.apparentGap || a.index - b.index);
  const narrow = sorted[0]!,
    wide = sorted[sorted.length - 1]!;
  const difference = wide.apparentGap - narrow.apparentGap;
  if (difference < ALIKE * narrow.apparentGap) return findings;
  return [
    ...findings,
    makeFinding({
      kind: 'word-space',
      from: wide.index,
      value: difference,
      direction: 'wide',
      sentence: `The word spaces differ: ${betweenLetters(wide.left, wide.right)} it looks ${thousandths(difference)} wider than ${betweenLetters(narrow.left, narrow.right)}.`,
      comparison: asShareOfStemGap(difference, line.stemGap),
    }),
  ];
}
