import * as z from 'zod/mini';

/**
 * One remark being left for students who share a fault: who has had it, and who was skipped. Stored on the device, so
 * that it survives a reload.
 */
const runSchema = z.strictObject({
  /** Makes the key of each note: a note of one run goes to one proof once, however often it is sent. */
  id: z.string(),
  body: z.string(),
  /** Whether each line gets what the measure suggests for it. */
  suggests: z.boolean(),
  /** By the token of the proof. */
  decided: z.record(z.string(), z.enum(['left', 'passed'])),
});
export type RemarkRun = z.infer<typeof runSchema>;

export const newRun = (id: string): RemarkRun => ({ id, body: '', suggests: false, decided: {} });

/** A run as it was stored; a new one where nothing was stored, or nothing readable. */
export function readRun(text: string, id: string): RemarkRun {
  try {
    return z.parse(runSchema, JSON.parse(text));
  } catch {
    return newRun(id);
  }
}

/** The next of these proofs that is not decided on, or null when all are. */
export const nextOpen = (run: RemarkRun, tokens: readonly string[]): string | null =>
  tokens.find((token) => run.decided[token] === undefined) ?? null;

export const decide = (run: RemarkRun, token: string, decision: 'left' | 'passed'): RemarkRun => ({
  ...run,
  decided: { ...run.decided, [token]: decision },
});

/** Opens a decision again. What was left before keeps its key, so the run goes on under another. */
export const reopen = (run: RemarkRun, token: string, id: string): RemarkRun => {
  const { [token]: _, ...decided } = run.decided;
  return { ...run, id, decided };
};

/** How many of these proofs have had the remark and how many were passed over. */
export function tallyOf(run: RemarkRun, tokens: readonly string[]): { left: number; passed: number } {
  const decisions = tokens.map((token) => run.decided[token]);
  return {
    left: decisions.filter((one) => one === 'left').length,
    passed: decisions.filter((one) => one === 'passed').length,
  };
}

/** @example requestKeyOf(run, 'K7M-2QX') // '1f0c4a7be2d94c51-K7M-2QX' */
export const requestKeyOf = ({ id }: RemarkRun, token: string): string => `${id}-${token}`;
