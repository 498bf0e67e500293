import type { Pack } from '@/shared/schemas/pack';
import type { PerMille } from '@/shared/units';
import { numberText } from '@/shared/text/number';
import type { SpacingDocument } from './document';

/** What one pair gets, in whole thousandths. total = builtIn + tracking + offset. */
export type PairAmounts = {
  readonly builtIn: PerMille;
  readonly tracking: PerMille;
  readonly offset: PerMille;
  readonly total: PerMille;
};

export function pairAmounts(pack: Pack, document: SpacingDocument, pair: number): PairAmounts {
  const builtIn = Math.floor(((pack.builtIn[pair] ?? 0) * 1000) / pack.unitsPerEm + 0.5) + 0;
  const offset = document.offsets[pair] ?? 0;
  return { builtIn, tracking: document.tracking, offset, total: builtIn + document.tracking + offset };
}

/** The two letters of a pair. A pair outside the line throws. */
export function pairLetters(pack: Pack, pair: number): { left: string; right: string; wordSpace: boolean } {
  const left = pack.glyphs[pack.letters[pair] ?? -1];
  const right = pack.glyphs[pack.letters[pair + 1] ?? -1];
  if (!left || !right)
    throw new RangeError(`“${pack.text}” has no gap ${pair}; they are counted from 0 to ${pack.letters.length - 2}.`);
  return { left: left.cluster, right: right.cluster, wordSpace: (pack.wordSpace[pair] ?? 0) > 0 };
}

/** A gap's name for speech: `gap between V and a`, with capitals announced. */
export function gapName(pack: Pack, pair: number): string {
  const { left, right, wordSpace } = pairLetters(pack, pair);
  return `${wordSpace ? 'word space' : 'gap'} between ${spokenLetter(left)} and ${spokenLetter(right)}`;
}

/** Its value for the ear: `offset minus 12, total minus 80`. */
export function gapValueWords(amounts: PairAmounts): string {
  return `offset ${spokenNumber(amounts.offset)}, total ${spokenNumber(amounts.total)}`;
}

/** `minus 12`, `plus 5`, `0`. */
function spokenNumber(value: PerMille): string {
  return value < 0 ? `minus ${numberText(-value)}` : value > 0 ? `plus ${numberText(value)}` : '0';
}

/** A screen reader says V and v alike, so capitals are named. */
function spokenLetter(cluster: string): string {
  return cluster !== cluster.toLowerCase() ? `capital ${cluster}` : cluster;
}
