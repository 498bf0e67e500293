import type { Actor } from '@/lib/access/actor';
import { accountData } from './account';
import { database, type Db } from './client';

/**
 * All queries, bound to one actor. A file a concept; add yours here.
 * `transaction` gives the same queries inside one database transaction; never catch a unique-constraint error inside it
 * (PostgreSQL aborts the whole transaction): retry from outside with retryOnConflict.
 */
export function scopedData(actor: Actor, db: Db = database()) {
  return {
    account: accountData(actor, db),
    transaction: <Result>(body: (data: ScopedData) => Promise<Result>): Promise<Result> =>
      '$transaction' in db ? db.$transaction((inside) => body(scopedData(actor, inside))) : body(scopedData(actor, db)),
  };
}

export type ScopedData = ReturnType<typeof scopedData>;
