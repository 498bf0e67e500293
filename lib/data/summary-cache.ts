import * as z from 'zod/mini';
import type { ScopedData } from './.';
import { letOthersIn } from '@/lib/let-others-in';
import { isConflict } from './retry';
import { canonicalJson } from '@/shared/text/canonical-json';

type SummaryRequest<Of> = {
  roundId: string;
  kind: string;
  basis: string;
  schema: z.ZodMiniType<Of>;
  make: () => Promise<Of>;
  now: Date;
};

/**
 * What is worked out once for a state of a round and read from its row after, as long as the state (`basis`) is the
 * same. A row in the form of an earlier version of ours counts as none.
 */
export async function summaryOf<Of>(
  data: ScopedData,
  { roundId, kind, basis, schema, make, now }: SummaryRequest<Of>,
): Promise<Of> {
  const stored = await data.classSummary.find(roundId, kind);
  const known = stored && stored.basis === basis ? readOnce(stored.payload, schema) : null;
  if (known !== null) return known;
  const made = await make();
  try {
    await letOthersIn();
    const payload = canonicalJson(made);
    await letOthersIn();
    await data.classSummary.save(roundId, kind, basis, payload, now);
  } catch (error) {
    // Two who look at once both work it out, and either row will do.
    if (!isConflict(error)) throw error;
  }
  return made;
}

const read = new Map<string, unknown>();
const mostRead = 40;

/** A payload read a moment ago is not parsed again. Stored ones never change, so it can be shared. */
function readOnce<Of>(payload: string, schema: z.ZodMiniType<Of>): Of | null {
  const known = read.get(payload) as Of | undefined;
  const found = known ?? z.safeParse(schema, JSON.parse(payload)).data ?? null;
  if (found === null) return null;
  read.delete(payload);
  read.set(payload, found);
  if (read.size > mostRead) read.delete(read.keys().next().value!);
  return found;
}
