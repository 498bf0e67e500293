import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';

/** The rounds of an exercise, and the one that is looked at: the one asked for, else the latest with proofs, else the first. */
export async function roundAskedFor(data: ScopedData, exerciseId: string, asked: number | null) {
  const rounds = await data.classSummary.roundNumbers(exerciseId);
  const number = asked ?? rounds.findLast(({ proofs }) => proofs > 0)?.number ?? rounds[0]?.number;
  if (number === undefined) throw notFound();
  return { rounds, number };
}
