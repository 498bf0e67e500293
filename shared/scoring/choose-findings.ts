import type { FindingKind, StoredFinding } from '@/shared/schemas/finding';

/**
 * Which of all findings are shown: where a reference decides, none from the usual range; and only one sentence for each
 * pair, the one that matters most, so that no two can disagree. The order is kept.
 * @param found of the line by itself, and of its comparison with the nearest reference; empty without one.
 */
export function chooseFindings(found: readonly StoredFinding[], compared: readonly StoredFinding[]): StoredFinding[] {
  const held = compared.length > 0;
  const all = [...compared, ...(held ? found.filter(({ kind }) => !OWN_JUDGEMENT.has(kind)) : found)];
  const chosen = new Map<number, StoredFinding>();
  for (const finding of all) {
    for (const pair of pairsOf(finding)) {
      const before = chosen.get(pair);
      if (before === undefined || rankOf(finding) < rankOf(before)) chosen.set(pair, finding);
    }
  }
  return all.filter((finding) => pairsOf(finding).every((pair) => chosen.get(pair) === finding));
}

/** Judgements that a reference takes the place of. */
const OWN_JUDGEMENT: ReadonlySet<string> = new Set<FindingKind>(['usual', 'misplaced', 'stands-out', 'tightness-face']);

/**
 * Kinds that judge a pair, in order of importance. Those that only describe (widest, evenness) are shown as well. A new
 * kind does not compile without its place here.
 */
const RANKS: Record<FindingKind, number | null> = {
  crossing: 0,
  touching: 1,
  misplaced: 2,
  deviation: 3,
  joined: 4,
  usual: 5,
  mistakable: 6,
  filling: 7,
  'word-space': 8,
  'evenness-gap': null,
  'evenness-area': null,
  widest: null,
  narrowest: null,
  gap: null,
  balance: null,
  'set-differently': null,
  'tightness-face': null,
  capitals: null,
  'dark-ground': null,
  'word-spaces-differ': null,
  'stands-out': null,
  'set-tight': null,
  'size-response': null,
  'weight-copied': null,
  'weight-share': null,
  'face-copied': null,
  tightness: null,
  agreement: null,
  within: null,
};

function rankOf({ kind }: StoredFinding): number {
  return (RANKS as Record<string, number | null>)[kind] ?? Infinity;
}

/** The pairs that a finding judges; none where it describes, or is about the whole line. */
function pairsOf(finding: StoredFinding): number[] {
  if (finding.from === null || finding.to === null || rankOf(finding) === Infinity) return [];
  return finding.from === finding.to ? [finding.from] : [finding.from, finding.to];
}
