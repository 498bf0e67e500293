import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { atPair, letterPairs, wideOrTight, WHOLE_LINE, yardstickOf } from './measured';

/** Nearer than this share of the stem gap two letters nearly meet. */
const NEAR = 0.2;

/**
 * How even the gaps are, by apparent gap, with the two furthest from the middle; for a line too short for that, each
 * gap by itself.
 */
export function evennessFindings(measured: LineMeasure): Finding[] {
  const { evennessGap } = measured.line;
  if (evennessGap === null) return letterPairs(measured).map((pair) => single(measured, pair));
  return [
    {
      kind: 'evenness-gap',
      weight: 'fact',
      ...WHOLE_LINE,
      value: round2(evennessGap * 100),
      unit: 'percent',
      direction: null,
    },
    ...extremes(measured),
  ];
}

/** The pairs with most and with least white; none where all have the same. */
function extremes(measured: LineMeasure): Finding[] {
  const pairs = letterPairs(measured);
  const middle = median(pairs.map(({ apparentGap }) => apparentGap));
  const sorted = [...pairs].sort((a, b) => a.apparentGap - b.apparentGap || a.index - b.index);
  const common = { weight: 'fact', by: 'apparent-gap', unit: 'per-mille', beside: yardstickOf(measured) } as const;
  return [sorted[sorted.length - 1]!, sorted[0]!].flatMap((pair): Finding[] => {
    const value = round2(pair.apparentGap - middle);
    if (Math.abs(value) < 0.5) return [];
    return value > 0
      ? [{ kind: 'widest', ...common, ...atPair(pair), why: whyOpen(measured, pair), value, direction: 'wide' }]
      : [{ kind: 'narrowest', ...common, ...atPair(pair), value, direction: 'tight' }];
  });
}

/** Why the widest gap is no fault: its letters nearly meet, or designers leave it so; null where neither holds. */
function whyOpen({ line }: LineMeasure, { clearance, outside }: PairMeasure): 'near' | 'usual' | null {
  if (line.stemGap !== null && clearance < NEAR * line.stemGap) return 'near';
  return outside === false ? 'usual' : null;
}

function single(measured: LineMeasure, pair: PairMeasure): Finding {
  return {
    kind: 'gap',
    weight: 'fact',
    ...atPair(pair),
    value: round2(pair.apparentGap),
    unit: 'per-mille',
    direction: null,
    beside: yardstickOf(measured),
  };
}

/** Tightness of the whole line under this share of the white between stems is not worth a word. Our own figure. */
const AS_THE_FACE = 0.05;

/**
 * The line's own tightness compared with the face's, and a typical gap compared with the counters. Capitals and lines
 * that are opened on purpose get no remark: opening is usual for them.
 */
export function balanceFindings(measured: LineMeasure): Finding[] {
  const { reference, counter, tightness, stemToStem, faceCounter } = measured.line;
  const findings: Finding[] = [];
  if (letterPairs(measured).length > 0) {
    const same = Math.abs(tightness) < AS_THE_FACE * (stemToStem ?? faceCounter ?? 0);
    findings.push({
      kind: 'tightness-face',
      weight: !same && tightness < 0 ? 'remark' : 'fact',
      ...WHOLE_LINE,
      value: round2(tightness),
      unit: 'per-mille',
      direction: same ? null : wideOrTight(tightness),
      beside: yardstickOf(measured),
    });
  }
  if (reference === null || counter === null) return findings;
  findings.push({
    kind: 'balance',
    weight: 'fact',
    ...WHOLE_LINE,
    value: round2(reference / counter),
    unit: 'ratio',
    direction: null,
  });
  return findings;
}

/** A difference between two equal pairs that is too small to be seen, 1/1000 em. Our own figure. */
const SEEN = 6;

/** The same two letters, more than once in the line, set differently: widest and narrowest of them. */
export function setDifferentlyFindings(measured: LineMeasure): Finding[] {
  const byLetters = new Map<string, PairMeasure[]>();
  for (const pair of measured.pairs) {
    if (pair.wordSpace > 0) continue;
    const key = `${pair.left} ${pair.right}`;
    byLetters.set(key, [...(byLetters.get(key) ?? []), pair]);
  }
  return [...byLetters.values()].flatMap((same): Finding[] => {
    const sorted = [...same].sort((a, b) => a.total - b.total || a.index - b.index);
    const narrow = sorted[0]!,
      wide = sorted[sorted.length - 1]!;
    const difference = wide.total - narrow.total;
    if (difference < SEEN) return [];
    return [
      {
        kind: 'set-differently',
        weight: 'remark',
        from: Math.min(narrow.index, wide.index),
        to: Math.max(narrow.index, wide.index),
        letters: [wide.left, wide.right],
        wide: wide.index,
        narrow: narrow.index,
        value: round2(difference),
        unit: 'per-mille',
        direction: null,
        beside: yardstickOf(measured),
      },
    ];
  });
}
