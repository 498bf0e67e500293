import { counted, withUnit } from '@/shared/text/number';

/**
 * The source of the level that counts. `first`: only one marker looks at this. `agreed`: both gave it. `settled`: it
 * was settled, with a reason. `differs`: the two differ and it is not settled. `second-waits`: the second marker has
 * not finished. In the last two the first marker's level counts until there is more, and every page that shows it says
 * so.
 */
export type MarkSource = 'first' | 'agreed' | 'settled' | 'differs' | 'second-waits';
export type EffectiveMark = { level: number | null; from: MarkSource };

/** The levels that were given for one criterion; null where none was, or where there is no such work. */
export type GivenLevels = { first: number | null; second: number | null; settled: number | null };

/** How far the second marking of a proof is: not wanted and not begun, under way, finished by both. */
export type SecondState = 'none' | 'waits' | 'done';

/** The level of one criterion that counts: the settled one, else the one both gave, else the first marker's. */
export function effectiveMark({ first, second, settled }: GivenLevels, state: SecondState): EffectiveMark {
  if (settled !== null) return { level: settled, from: 'settled' };
  if (state === 'none') return { level: first, from: 'first' };
  if (state === 'waits') return { level: first, from: 'second-waits' };
  // A criterion that was added after the second marker had finished was seen by one marker only.
  if (second === null) return { level: first, from: 'first' };
  return first === second ? { level: first, from: 'agreed' } : { level: first, from: 'differs' };
}

/**
 * A proof that arrived after its due instant: days begun since, and the percent of the mark that the late rule takes,
 * at most 100.
 */
export type Late = { startedDays: number; deduct: number };

/**
 * The total once the late rule has been applied, with a sentence that shows it; a proof in time keeps its total and
 * gets no sentence.
 */
export function afterLateRule(
  percent: number | null,
  late: Late | null,
): { percent: number | null; sentence: string | null } {
  if (late === null) return { percent, sentence: null };
  const days = `${counted(late.startedDays, 'day')} late, every begun day counted`;
  if (late.deduct === 0) return { percent, sentence: `${days}; the late rule takes nothing off.` };
  const takes = `the late rule takes ${withUnit(late.deduct, '%', 2)} of the mark`;
  if (percent === null) return { percent, sentence: `${days}; ${takes}.` };
  const after = (percent * (100 - late.deduct)) / 100;
  return {
    percent: after,
    sentence: `${days}; ${takes}: ${withUnit(percent, '%', 2)} × ${withUnit(100 - late.deduct, '%', 2)} = ${withUnit(after, '%', 2)}.`,
  };
}

/** What decides which proof of a member counts in a round. */
type ProofInRound = { id: string; number: number; receivedAt: Date };

export type Counted<Of extends ProofInRound> = {
  proof: Of | null;
  /**
   * Why this one: the last before marking started, the one that a first note or mark fixed, or the instructor's pick.
   */
  why: 'last' | 'marked' | 'chosen' | 'none';
  /** Proofs that arrived after marking started, or after the one that it fixed, and so do not count unless picked. */
  tooLate: Of[];
};

/**
 * Which proof was singled out: by an instructor, or automatically by the first note or mark after the round was due.
 */
export type Choice = { proofId: string; chosenById: string | null };

/**
 * The proof that counts: the one that was singled out, else the last received before marking started.
 * Numbers decide among proofs of one instant. A choice that names no proof of the list is not looked at.
 */
export function countedProof<Of extends ProofInRound>(
  proofs: readonly Of[],
  markingStartedAt: Date | null,
  choice: Choice | null,
): Counted<Of> {
  const chosen = proofs.find((proof) => proof.id === choice?.proofId);
  const byMarking = chosen !== undefined && choice?.chosenById === null;
  const tooLate = proofs.filter(
    (proof) =>
      (markingStartedAt !== null && proof.receivedAt.getTime() > markingStartedAt.getTime()) ||
      (byMarking && isLater(proof, chosen)),
  );
  if (chosen) return { proof: chosen, why: byMarking ? 'marked' : 'chosen', tooLate };
  const inTime = proofs.filter((proof) => !tooLate.includes(proof));
  const last = inTime.reduce<Of | null>((best, proof) => (best === null || isLater(proof, best) ? proof : best), null);
  return { proof: last, why: last === null ? 'none' : 'last', tooLate };
}

/** The status of one of a student's proofs: it counts, a later one replaced it, or it is stored and does not count. */
export type Standing = 'counts' | 'replaced' | 'kept';

export function standingOf(
  proofId: string,
  { proof, tooLate }: Pick<Counted<ProofInRound>, 'proof' | 'tooLate'>,
): Standing {
  if (proof?.id === proofId) return 'counts';
  return tooLate.some(({ id }) => id === proofId) ? 'kept' : 'replaced';
}

const isLater = (one: ProofInRound, other: ProofInRound): boolean => one.number > other.number;
