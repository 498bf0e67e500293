import type { Finding, PairMeasure } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { asShareOfStemGap, betweenLetters, shareWords, thousandths, typeset } from '@/shared/wording/lengths';
import { letterPairs, makeFinding, type Measured } from './measured';

/** How even the gaps are, by apparent gap and by area; for a line too short for that, each gap by itself. */
export function evennessFindings(measured: Measured): Finding[] {
  const pairs = letterPairs(measured);
  const { evennessGap, evennessArea, stemGap } = measured.line;
  if (evennessGap === null || evennessArea === null) return pairs.map((pair) => single(pair, stemGap));
  return [
    spread('evenness-gap', evennessGap, 'as they look (apparent gap)'),
    ...extremes(pairs, (pair) => pair.apparentGap, 'looks', stemGap),
    spread('evenness-area', evennessArea, 'by plain area of white'),
    ...extremesByArea(pairs, stemGap),
  ];
}

function spread(kind: 'evenness-gap' | 'evenness-area', share: number, how: string): Finding {
  return makeFinding({
    kind,
    value: share * 100,
    unit: 'percent',
    sentence: `Half of the gaps stray by less than ${typeset(share * 100)}\u2009% from the middle gap, ${how}.`,
  });
}

function extremes(
  pairs: PairMeasure[],
  value: (pair: PairMeasure) => number,
  verb: string,
  stemGap: number | null,
): Finding[] {
  const middle = median(pairs.map(value));
  const sorted = [...pairs].sort((a, b) => value(a) - value(b) || a.index - b.index);
  return [sorted[sorted.length - 1]!, sorted[0]!].flatMap((pair) => {
    const more = value(pair) - middle;
    if (Math.abs(more) < 0.5) return [];
    const wide = more > 0;
    return [
      makeFinding({
        kind: wide ? 'widest' : 'narrowest',
        from: pair.index,
        value: more,
        direction: wide ? 'wide' : 'tight',
        sentence: `The gap that ${verb} ${wide ? 'widest' : 'narrowest'} is ${betweenLetters(pair.left, pair.right)}: ${thousandths(more)} ${wide ? 'more' : 'less'} than the middle of the line.`,
        comparison: asShareOfStemGap(more, stemGap),
      }),
    ];
  });
}

function extremesByArea(pairs: PairMeasure[], stemGap: number | null): Finding[] {
  return extremes(pairs, (pair) => pair.area, 'measures', stemGap).map((finding) => ({
    ...finding,
    sentence: finding.sentence.replace('The gap', 'By area, the gap'),
  }));
}

function single(pair: PairMeasure, stemGap: number | null): Finding {
  return makeFinding({
    kind: 'gap',
    from: pair.index,
    value: pair.apparentGap,
    sentence: `The gap ${betweenLetters(pair.left, pair.right)} looks as wide as ${thousandths(pair.apparentGap)} between two straight stems.`,
    comparison: asShareOfStemGap(pair.apparentGap, stemGap),
  });
}

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
