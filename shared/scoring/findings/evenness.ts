import type { Finding, PairMeasure } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { asShareOfStemGap, betweenLetters, thousandths, typeset } from '../words';
import { letterPairs, makeFinding, type Measured } from './make-finding';

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
