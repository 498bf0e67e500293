import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
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
  const told = new Set(misplaced.flatMap(({ letter }) => [letter - 1, letter]));
  const alone = compared.pairs.filter((pair) => !pair.within && !told.has(pair.index));
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

/** A letter that is too far right (shift above 0) or left, 1/1000 em. */
export type MisplacedLetter = { letter: number; shift: number };

type Gap = { rest: number; tolerance: number; within: boolean };

/**
 * Letters whose two gaps are wrong only because the letter between them is out of place: one gap too wide, the next too
 * tight, and a shift of the letter that brings both within their tolerances, each its own. Of the shifts that do, the one
 * nearest to making both gaps equally good. Greatest shift first; no gap is explained twice.
 */
export function misplacedLetters(letters: number, gaps: readonly Gap[]): MisplacedLetter[] {
  const found: MisplacedLetter[] = [];
  for (let letter = 1; letter < letters - 1; letter += 1) {
    const before = gaps[letter - 1]!,
      after = gaps[letter]!;
    if (before.within || after.within || before.rest * after.rest >= 0) continue;
    const least = Math.max(before.rest - before.tolerance, -after.rest - after.tolerance);
    const most = Math.min(before.rest + before.tolerance, -after.rest + after.tolerance);
    if (least > most) continue;
    found.push({ letter, shift: Math.min(most, Math.max(least, (before.rest - after.rest) / 2)) });
  }
  const used = new Set<number>();
  return found
    .sort((a, b) => Math.abs(b.shift) - Math.abs(a.shift) || a.letter - b.letter)
    .filter(({ letter }) => {
      if (used.has(letter - 1) || used.has(letter)) return false;
      used.add(letter - 1).add(letter);
      return true;
    })
    .sort((a, b) => a.letter - b.letter);
}
