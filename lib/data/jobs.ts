import { canonicalJson } from '@/shared/text/canonical-json';
import type { Db } from './client';
import { newId } from './ids';

export type Job = { id: string; kind: string; key: string; payload: string; attempts: number; leaseUntil: Date };

/**
 * Puts work in the list unless the same work (kind and key) is there already. Says whether it was new.
 * @param payload is written as canonical JSON
 */
export async function addJob(
  db: Db,
  job: { kind: string; key: string; payload: unknown; dueAt: Date },
  now: Date,
): Promise<boolean> {
  const { kind, key, dueAt } = job;
  const there = await db.job.findUnique({ where: { kind_key: { kind, key } }, select: { id: true } });
  if (there) return false;
  await db.job.create({ data: { id: newId(), kind, key, dueAt, payload: canonicalJson(job.payload), createdAt: now } });
  return true;
}

/**
 * Claims the work that has waited longest, for `minutes`: no other process gets it meanwhile, and after that one may,
 * since the holder must have died. Null when there is none. If two claim one at once its version decides: one gets it,
 * the other looks again.
 */
export async function takeJob(db: Db, kind: string, minutes: number, now: Date): Promise<Job | null> {
  for (;;) {
    const waiting = await db.job.findMany({
      where: { kind, doneAt: null, dueAt: { lte: now }, OR: [{ leaseUntil: null }, { leaseUntil: { lt: now } }] },
      orderBy: { dueAt: 'asc' },
      take: 1,
    });
    const [job] = waiting;
    if (!job) return null;
    const leaseUntil = new Date(now.getTime() + minutes * 60_000);
    const attempts = job.attempts + 1;
    const { count } = await db.job.updateMany({
      where: { id: job.id, version: job.version },
      data: { leaseUntil, attempts, version: job.version + 1 },
    });
    if (count === 1) return { id: job.id, kind, key: job.key, payload: job.payload, attempts, leaseUntil };
  }
}

/** True when the work was still this holder's to finish. */
export async function finishJob(db: Db, job: Job, now: Date): Promise<boolean> {
  const { count } = await db.job.updateMany({
    where: held(job),
    data: { doneAt: now, leaseUntil: null, lastError: null },
  });
  return count === 1;
}

/** Gives the work back, to be tried again at `dueAt`, and keeps why. */
export async function retryJob(db: Db, job: Job, why: string, dueAt: Date): Promise<boolean> {
  const { count } = await db.job.updateMany({
    where: held(job),
    data: { leaseUntil: null, lastError: why.slice(0, 2000), dueAt },
  });
  return count === 1;
}

/** Each taking raises `attempts`, so that a holder whose lease ran out cannot finish what another has taken. */
const held = (job: Job) => ({ id: job.id, attempts: job.attempts, leaseUntil: job.leaseUntil, doneAt: null });
