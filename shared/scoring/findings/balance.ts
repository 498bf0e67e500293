import type { Finding } from '@/shared/schemas/measure';
import { asShareOfStemGap, shareWords, thousandths } from '../words';
import { makeFinding, type Measured } from './make-finding';

/** From this much off what the face gives the line on it is worth a word. Our own band, wide on purpose. */
const OFF_BALANCE = 0.2;
/** A line whose middle is within this share of what the face gives it is as tight as the face. */
const AS_THE_FACE = 0.05;

/** Gaps beside counters, and the line's own tightness beside the face as it comes. */
export function balanceFindings({ line }: Measured): Finding[] {
  const findings: Finding[] = [];
  const { reference, asBuilt, counter, stemGap } = line;
  if (reference !== null && asBuilt !== null) {
    const more = reference - asBuilt;
    const same = Math.abs(more) < AS_THE_FACE * asBuilt;
    findings.push(
      makeFinding({
        kind: 'tightness-face',
        value: more,
        direction: same ? null : more > 0 ? 'wide' : 'tight',
        sentence: same
          ? 'As a whole the line is about as tight as the face comes.'
          : `As a whole the line is set ${more > 0 ? 'wider' : 'tighter'} than the face comes, by ${thousandths(more)} at a typical gap.`,
        comparison: same ? null : asShareOfStemGap(more, stemGap),
      }),
    );
  }
  if (reference === null || counter === null) return findings;
  const ratio = reference / counter;
  const off = asBuilt === null ? 0 : reference / asBuilt - 1;
  const judged =
    off < -OFF_BALANCE
      ? ' That is little for this face: the letters begin to close up into lumps.'
      : off > OFF_BALANCE
        ? ' That is much for this face: the letters begin to fall apart.'
        : '';
  return [
    ...findings,
    makeFinding({
      kind: 'balance',
      weight: judged ? 'hint' : 'fact',
      value: ratio,
      unit: 'ratio',
      direction: judged ? (off < 0 ? 'tight' : 'wide') : null,
      sentence: `A typical gap is ${shareWords(ratio)} the white inside the letters.${judged}`,
    }),
  ];
}
