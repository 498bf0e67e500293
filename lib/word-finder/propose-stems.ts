import type { AffInfo } from 'hunspell-reader';

/** One way in which a stem may have changed: what was added at an end, and what was taken away for it. */
type Change = { flag: string; removed: string };

/**
 * For a word, the entries of a dictionary that it may be a form of: those that are left when an ending, a beginning or
 * both are taken off again, and that name the rule. Each comes with no other rule than those that it was found by, so
 * that a verb with a thousand forms is quickly expanded; whether the word is among its forms, the expansion tells.
 * @param entries lines of the dictionary, `stem/flags`.
 */
export function proposeStems(rules: AffInfo, entries: readonly string[]): (word: string) => string[] {
  const endings = changesByAddition(rules.SFX),
    beginnings = changesByAddition(rules.PFX);
  const longest = (changes: Map<string, Change[]>) => Math.max(0, ...[...changes.keys()].map(({ length }) => length));
  const longestEnding = longest(endings),
    longestBeginning = longest(beginnings);
  const byStem = new Map<string, string[]>();
  for (const entry of entries) {
    const stem = stemOf(entry).toLowerCase();
    const own = byStem.get(stem);
    if (own) own.push(entry);
    else byStem.set(stem, [entry]);
  }
  const isRule = (flag: string) => rules.SFX?.has(flag) || rules.PFX?.has(flag);
  /** The entry with these rules alone, and whatever flag is no rule; null where it lacks one of them. */
  const withOnly = (entry: string, wanted: readonly string[]): string | null => {
    const flags = flagsOf(entry, rules.FLAG);
    if (!wanted.every((flag) => flags.includes(flag))) return null;
    return `${stemOf(entry)}/${flags.filter((flag) => !isRule(flag) || wanted.includes(flag)).join('')}`;
  };

  const withoutEnding = (word: string, before: readonly string[]): string[] => {
    const own = (byStem.get(word) ?? []).flatMap((entry) => withOnly(entry, before) ?? []);
    const lengths = Array.from({ length: Math.min(longestEnding, word.length) + 1 }, (_, length) => length);
    const changed = lengths.flatMap((length) => {
      const rest = word.slice(0, word.length - length);
      return (endings.get(word.slice(word.length - length)) ?? []).flatMap(({ flag, removed }) =>
        (byStem.get(rest + removed) ?? []).flatMap((entry) => withOnly(entry, [...before, flag]) ?? []),
      );
    });
    return [...own, ...changed];
  };

  return (word) => {
    const found = withoutEnding(word, []);
    for (let length = 1; length <= Math.min(longestBeginning, word.length - 1); length += 1)
      for (const { flag, removed } of beginnings.get(word.slice(0, length)) ?? [])
        found.push(...withoutEnding(removed + word.slice(length), [flag]));
    return [...new Set(found)];
  };
}

function changesByAddition(affixes: AffInfo['SFX']): Map<string, Change[]> {
  const found = new Map<string, Map<string, Change>>();
  for (const [flag, affix] of affixes ?? [])
    for (const { substitutions } of affix.substitutionSets.values())
      for (const { attach, remove } of substitutions) {
        const [added, removed] = [attach, remove].map(asWritten) as [string, string];
        const own = found.get(added) ?? new Map<string, Change>();
        own.set(`${flag} ${removed}`, { flag, removed });
        found.set(added, own);
      }
  return new Map([...found].map(([added, changes]) => [added, [...changes.values()]]));
}

/** Nothing is written as 0 (Hunspell's form). */
function asWritten(part: string): string {
  return part === '0' ? '' : part.toLowerCase();
}

function stemOf(entry: string): string {
  return entry.split(/[/\s]/, 1)[0] ?? '';
}

/** The flags of an entry: of one character each, or of two where the dictionary says `long`. */
function flagsOf(entry: string, kind: string | undefined): string[] {
  const flags = entry.split(/\s/, 1)[0]?.split('/')[1] ?? '';
  return kind === 'long' ? (flags.match(/../gu) ?? []) : [...flags];
}
