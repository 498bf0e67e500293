import { database, type Db } from './client';

/** What an operator watches: whether the database answers, and what waits to be done. Nothing of any person. */
export type DatabaseCondition = {
  /** How long it took to answer, seconds. */
  answerSeconds: number;
  /** Jobs whose time has come and that are not done, and since when the oldest of them waits. */
  jobsWaiting: number;
  oldestJobDueAt: Date | null;
};

/** @throws when the database doesn't answer within `withinMs` */
export async function databaseCondition(now: Date, withinMs: number, db: Db = database()): Promise<DatabaseCondition> {
  const begun = performance.now();
  const waiting = await inTime(
    db.job.aggregate({ where: { doneAt: null, dueAt: { lte: now } }, _count: { id: true }, _min: { dueAt: true } }),
    withinMs,
  );
  return {
    answerSeconds: (performance.now() - begun) / 1000,
    jobsWaiting: waiting._count.id,
    oldestJobDueAt: waiting._min.dueAt,
  };
}

function inTime<Result>(work: Promise<Result>, ms: number): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`The database did not answer within ${ms / 1000} s.`)), ms);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
