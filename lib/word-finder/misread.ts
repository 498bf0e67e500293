/** Letters that close up into others, as the eye takes them. */
const RISKS = [
  ['rn', 'm'],
  ['cl', 'd'],
  ['LI', 'U'],
] as const;

/**
 * What a line may be read as when its letters close up: another word of the language where there is one (modern,
 * modem), else the letters (rn as m); null where nothing is likely.
 */
export function misreadOf(text: string, words: readonly string[]): string | null {
  const present = RISKS.filter(([from]) => text.includes(from));
  if (present.length === 0) return null;
  const known = knownIn(words);
  for (const reading of misreadings(text)) if (known.has(reading.toLowerCase())) return reading;
  return present.map(([from, to]) => `${from} as ${to}`).join(', ');
}

/** Every word of a text as it may be misread, each kind of closing up by itself. */
export function misreadings(text: string): string[] {
  return RISKS.flatMap(([from, to]) =>
    text.split(' ').flatMap((word) => (word.includes(from) ? [word.replaceAll(from, to)] : [])),
  );
}

const sets = new WeakMap<readonly string[], ReadonlySet<string>>();

function knownIn(words: readonly string[]): ReadonlySet<string> {
  const set = sets.get(words) ?? new Set(words.map((word) => word.toLowerCase()));
  sets.set(words, set);
  return set;
}
