import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
import { misplacedLetters, type MisplacedLetter } from './misplaced-letters';
import { atPair, wideOrTight, WHOLE_LINE, yardstickOf } from './findings/measured';

type Compared = {
  tightness: number;
  tightnessTolerance: number;
  reference: ReferenceSpacing;
  pairs: PairComparison[];
  /** How many references the line was held against. */
  references: number;
};

/** What a comparison finds: tightness, letters out of place, then the pairs left outside their tolerance. */
export function comparisonFindings(line: LineMeasure, compared: Compared): { findings: Finding[]; outside: number } {
  const misplaced = misplacedLetters(line.letters.length, compared.pairs);
  const covered = new Set(misplaced.flatMap(({ letter }) => [letter - 1, letter]));
  const alone = compared.pairs.filter((pair) => !pair.within && !covered.has(pair.index));
  const findings = [
    ...tightness(line, compared),
    ...misplaced.map((letter) => misplacedFinding(line, letter)),
    ...alone.map((pair) => deviation(line, pair)),
    ...compared.pairs
      .filter((pair) => pair.referencesDiffer > 2 * pair.tolerance)
      .map((pair) => agreement(line, pair, compared.references)),
  ];
  const outside = misplaced.length + alone.length;
  return {
    findings: outside === 0 && compared.pairs.length > 0 ? [...findings, within(compared.reference)] : findings,
    outside,
  };
}

function tightness(measured: LineMeasure, { tightness: value, tightnessTolerance }: Compared): Finding[] {
  if (Math.abs(value) <= tightnessTolerance) return [];
  return [
    {
      kind: 'tightness',
      weight: 'remark',
      ...WHOLE_LINE,
      value: round2(value),
      unit: 'per-mille',
      direction: wideOrTight(value),
      beside: yardstickOf(measured),
    },
  ];
}

function misplacedFinding(measured: LineMeasure, { letter, shift }: MisplacedLetter): Finding {
  return {
    kind: 'misplaced',
    weight: 'remark',
    from: letter - 1,
    to: letter,
    letter,
    name: measured.letters[letter]!,
    value: round2(shift),
    unit: 'per-mille',
    direction: shift > 0 ? 'right' : 'left',
    beside: yardstickOf(measured),
  };
}

function deviation(measured: LineMeasure, { index, rest, asAnother }: PairComparison): Finding {
  return {
    kind: 'deviation',
    weight: 'remark',
    ...atPair(measured.pairs[index]!),
    asAnother,
    designersVary: measured.pairs[index]!.outside === false,
    value: round2(rest),
    unit: 'per-mille',
    direction: wideOrTight(rest),
    beside: yardstickOf(measured),
  };
}

function agreement(measured: LineMeasure, { index, referencesDiffer }: PairComparison, references: number): Finding {
  return {
    kind: 'agreement',
    weight: 'fact',
    ...atPair(measured.pairs[index]!),
    references,
    value: round2(referencesDiffer),
    unit: 'per-mille',
    direction: null,
    beside: yardstickOf(measured),
  };
}

function within({ author }: ReferenceSpacing): Finding {
  return { kind: 'within', weight: 'fact', ...WHOLE_LINE, author, value: 0, unit: 'count', direction: null };
}
