/**
 * The place of each pair of the old line in the new one, or null where it is gone.
 * Pairs are matched by a longest common subsequence: the same two letters, with or without a space between as before,
 * in the same order along the line.
 * @example pairMap(lineOf('HAT'), lineOf('CHAT')) // [1, 2]
 */
export function pairMap(before: LineOfLetters, after: LineOfLetters): (number | null)[] {
  const old = pairsOf(before);
  const fresh = pairsOf(after);
  const longest = commonLengths(old, fresh);
  const map: (number | null)[] = [];
  let place = 0;
  for (let pair = 0; pair < old.length; pair++) {
    // Walk past new pairs that a longest match from here can do without.
    while (
      place < fresh.length &&
      old[pair] !== fresh[place] &&
      longest[pair]![place + 1]! >= longest[pair + 1]![place]!
    )
      place++;
    map.push(place < fresh.length && old[pair] === fresh[place] ? place++ : null);
  }
  return map;
}

/** The clusters of a line and, per pair, whether there is a word space in it (one fewer than letters). */
export type LineOfLetters = { readonly letters: readonly string[]; readonly spaced: readonly boolean[] };

/** Values of the old pairs put in their new places; `fill` for pairs that are new. */
export function moveByMap<Value>(
  values: readonly Value[],
  map: readonly (number | null)[],
  newLength: number,
  fill: Value,
): Value[] {
  if (values.length !== map.length)
    throw new RangeError(`The map is for ${map.length} pairs, but ${values.length} values were given.`);
  const moved: Value[] = Array.from({ length: newLength }, () => fill);
  map.forEach((to, from) => {
    if (to !== null) moved[to] = values[from]!;
  });
  return moved;
}

/** U+0000 is in no line, so that two pairs are the same text only when they are the same pair. */
const pairsOf = ({ letters, spaced }: LineOfLetters): string[] =>
  spaced.map((space, pair) => `${letters[pair]}\u0000${space ? ' ' : ''}\u0000${letters[pair + 1]}`);

/** lengths[i][j]: the longest common subsequence of before[i…] and after[j…]. O(n·m); lines are short. */
function commonLengths(before: readonly string[], after: readonly string[]): number[][] {
  const lengths = Array.from({ length: before.length + 1 }, () => new Array<number>(after.length + 1).fill(0));
  for (let i = before.length - 1; i >= 0; i--) {
    for (let j = after.length - 1; j >= 0; j--) {
      lengths[i]![j] =
        before[i] === after[j] ? lengths[i + 1]![j + 1]! + 1 : Math.max(lengths[i + 1]![j]!, lengths[i]![j + 1]!);
    }
  }
  return lengths;
}
