import { faultsOf, type PairFault } from '@/shared/critique/faults';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import type { Spacing } from '@/shared/schemas/spacing';
import { fillStockNote, firstStockNotes } from '@/shared/critique/stock-note';

/** A note that the demo's assistant writes: at a pair, at a run of pairs, or about the whole line (`at` null). */
export type Remark = {
  /** What it says of the line, so that its truth can be tried. */
  says: 'wide' | 'tight' | 'left' | 'right' | 'touching' | 'whole-wide' | 'whole-tight' | 'uneven' | 'well';
  at: { first: number; last: number } | null;
  body: string;
  /** Offsets for the pairs of the note, 1/1000 em. */
  suggestion: number[] | null;
};

type Line = {
  /** One a letter, with the space after those that end a word. */
  letters: readonly string[];
  /** The face's own kerning, 1/1000 em. */
  builtIn: readonly number[];
  spacing: Spacing;
  measure: StoredMeasure;
  comparison: StoredComparison;
};

/**
 * What there is to say of a line beside its reference: the whole line first where it is too tight or too open, then the
 * two gaps that are furthest out, the first with a suggestion; of a line without a fault, what is well done in it.
 * @param turn which of several wordings is taken, so that not every note sounds alike.
 */
export function remarksOn(line: Line, turn: number): Remark[] {
  const { letters, spacing, measure, comparison } = line;
  const faults = faultsOf(measure, comparison);
  const whole = wholeLine(comparison);
  if (faults.length === 0 && whole === null) return praise(line);
  const lines = whole ? [whole] : faults.length > 2 ? [uneven(letters, faults)] : [];
  const gaps = faults.slice(0, 2).map((fault, index): Remark => {
    const { first, last } = fault;
    const rest = comparison.pairs[first]?.rest ?? 0;
    const suggest = index === 0 && first === last && Math.abs(rest) >= 1;
    return {
      says: fault.fault,
      at: { first, last },
      body: fillStockNote(wording(fault, turn + index), letters.slice(first, last + 2), fault.fault),
      suggestion: suggest ? [Math.round(spacing.offsets[first]! - rest)] : null,
    };
  });
  return [...lines, ...gaps];
}

const WIDE = [
  '{pair} is too wide: the eye stops there before it reads the word.',
  '{pair} leaves a hole. Close it until it matches the rest of the line.',
];
const TIGHT = ['{pair} makes a dark spot. Open it a little.', '{pair} is too tight: it reads as one shape.'];

function wording({ fault }: PairFault, turn: number): string {
  const own = fault === 'wide' ? WIDE : fault === 'tight' ? TIGHT : [];
  const stock = firstStockNotes.filter((note) => note.fault === fault).map(({ body }) => body);
  const all = [...own, ...stock];
  return all[turn % all.length]!;
}

function wholeLine({ tightness, tightnessTolerance }: StoredComparison): Remark | null {
  if (Math.abs(tightness) <= tightnessTolerance) return null;
  return tightness < 0
    ? {
        says: 'whole-tight',
        at: null,
        body: 'The whole line is too tight. Open it with tracking first; then look at single gaps again.',
        suggestion: null,
      }
    : {
        says: 'whole-wide',
        at: null,
        body: 'The whole line is too open. Draw it together with tracking first; then look at single gaps again.',
        suggestion: null,
      };
}

function uneven(letters: readonly string[], faults: readonly PairFault[]): Remark {
  const { first, last } = faults[0]!;
  const body = `The line is uneven: it is out at ${faults.length} places. Begin with {pair}, which is furthest out.`;
  return {
    says: 'uneven',
    at: null,
    body: fillStockNote(body, letters.slice(first, last + 2), ''),
    suggestion: null,
  };
}

/** Of the line; and of the pair that its face closes most, where that is well judged. */
function praise({ letters, builtIn, measure, comparison }: Line): Remark[] {
  const best = measure.pairs
    .filter(
      ({ index, contact }) => contact === 'apart' && comparison.pairs[index]?.within && !letters[index]!.endsWith(' '),
    )
    .sort((one, other) => builtIn[one.index]! - builtIn[other.index]!)[0];
  const line: Remark = {
    says: 'well',
    at: null,
    body: 'This line is well judged; no gap catches the eye.',
    suggestion: null,
  };
  if (!best || builtIn[best.index]! > -20) return [line];
  const at = { first: best.index, last: best.index };
  const body = '{pair} is well judged: close, and still with a clear channel between.';
  return [
    line,
    { says: 'well', at, body: fillStockNote(body, letters.slice(at.first, at.last + 2), ''), suggestion: null },
  ];
}
