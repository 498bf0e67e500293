import type { WordOrder } from '@/shared/schemas/word-search';

/** One figure of a gap each, 1/1000 em. */
export type Ends = { asSet: number; unkerned: number; builtIn: number };

export type Scored = {
  text: string;
  /** The place among the common words; Infinity for others. */
  common: number;
  /** Which of what is looked for is in it, a bit each; how many those are, and how many gaps. */
  bits: number;
  different: number;
  wanted: number;
  /** The least and the most of its gaps. */
  least: Ends;
  most: Ends;
};

/**
 * By pairs: the most different ones first, a common word before a rare one, then the most gaps. Uneven: the widest
 * spread as the face sets it. Common: as the language uses them. What is equal stays as it came.
 */
export function bestFirst(found: readonly Scored[], order: WordOrder): Scored[] {
  const byRarity = (a: Scored, b: Scored) => (a.common === b.common ? 0 : a.common - b.common);
  const byPairs = (a: Scored, b: Scored) => b.different - a.different || b.wanted - a.wanted;
  const by: Record<WordOrder, (a: Scored, b: Scored) => number> = {
    pairs: (a, b) =>
      b.different - a.different ||
      Number(a.common === Infinity) - Number(b.common === Infinity) ||
      b.wanted - a.wanted ||
      byRarity(a, b),
    uneven: (a, b) => spread(b).asSet - spread(a).asSet || byRarity(a, b),
    common: (a, b) => byRarity(a, b) || byPairs(a, b),
  };
  return [...found].sort(by[order]);
}

/** Words that lines of two are made from: the best ones. */
const TO_JOIN = 120;

/** Lines of two of the best words, no word twice, in the same order. */
export function inTwos(best: readonly Scored[], { order, most }: { order: WordOrder; most: number }): Scored[] {
  const words = best.slice(0, TO_JOIN);
  const twos = words.flatMap((a, at) =>
    words.slice(at + 1).flatMap((b) => (a.text.toLowerCase() === b.text.toLowerCase() ? [] : [joined(a, b)])),
  );
  const used = new Set<string>();
  const lines: Scored[] = [];
  for (const line of bestFirst(twos, order)) {
    const own = line.text.split(' ');
    if (lines.length >= most) break;
    if (own.some((word) => used.has(word))) continue;
    own.forEach((word) => used.add(word));
    lines.push(line);
  }
  return lines;
}

function joined(a: Scored, b: Scored): Scored {
  const bits = a.bits | b.bits;
  const ends = (pick: (...values: number[]) => number, one: Ends, other: Ends): Ends => ({
    asSet: pick(one.asSet, other.asSet),
    unkerned: pick(one.unkerned, other.unkerned),
    builtIn: pick(one.builtIn, other.builtIn),
  });
  return {
    text: `${a.text} ${b.text}`,
    common: a.common + b.common,
    bits,
    different: bitsIn(bits),
    wanted: a.wanted + b.wanted,
    least: ends(Math.min, a.least, b.least),
    most: ends(Math.max, a.most, b.most),
  };
}

/** From the narrowest to the widest, 1/1000 em. */
export function spread({ least, most }: Scored): Ends {
  return {
    asSet: most.asSet - least.asSet,
    unkerned: most.unkerned - least.unkerned,
    builtIn: most.builtIn - least.builtIn,
  };
}

export function bitsIn(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
}
