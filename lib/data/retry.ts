import { setTimeout as wait } from 'node:timers/promises';
import { DriverAdapterError } from '@prisma/driver-adapter-utils';

/**
 * Runs `work` again when another writer was quicker: a unique key taken meanwhile (P2002), a write conflict or deadlock
 * (P2034), or a database that stayed busy (P1008). Always outside of a transaction: after a failed statement PostgreSQL
 * refuses everything else in the same one. `work` must read again what it builds on.
 *
 * @throws the last conflict after `attempts` tries, and anything else at once.
 */
export async function retryOnConflict<T>(work: () => Promise<T>, attempts = 12): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await work();
    } catch (error) {
      if (attempt >= attempts || !isConflict(error)) throw error;
      await wait(Math.random() * Math.min(2 ** attempt, 100));
    }
  }
}

/** Nothing failed in the database, and yet the work has to read again: it counts as a write conflict. */
export class TryAgain extends Error {
  readonly code = 'P2034';
}

const conflictCodes = new Set(['P2002', 'P2034', 'P1008']);

export function isConflict(error: unknown): boolean {
  return conflictCodes.has(codeOf(error));
}

/** A unique key was taken already. */
export function isTaken(error: unknown): boolean {
  return codeOf(error) === 'P2002';
}

function codeOf(error: unknown): string {
  if (error instanceof DriverAdapterError) return codeOfCause(error.cause, '');
  if (typeof error !== 'object' || error === null || !('code' in error)) return '';
  return error.code === 'P2010' ? codeOfRaw(error) : String(error.code);
}

/** A failed plain statement gives only P2010; what the database refused is in the adapter's cause. */
function codeOfRaw(error: object): string {
  const { cause } =
    (error as { meta?: { driverAdapterError?: { cause?: { kind?: string } } } }).meta?.driverAdapterError ?? {};
  return codeOfCause(cause, 'P2010');
}

/** The stock SQLite adapter calls a busy file a timeout of the socket. */
const codesOfCauses: Record<string, string> = {
  UniqueConstraintViolation: 'P2002',
  TransactionWriteConflict: 'P2034',
  SocketTimeout: 'P1008',
};

const codeOfCause = (cause: { kind?: string } | undefined, otherwise: string) =>
  codesOfCauses[cause?.kind ?? ''] ?? otherwise;

/**
 * Another writer was quicker. Carries the code of a write conflict, so that `retryOnConflict` runs the work again, from
 * reading on.
 */
class Overtaken extends Error {
  readonly code = 'P2034';
  constructor(what: string) {
    super(`${what} was changed by another person meanwhile.`);
    this.name = 'Overtaken';
  }
}

/** Every compare and swap names the version it builds on; exactly one row must have had it. @throws Overtaken */
export function swapped({ count }: { count: number }, what: string): void {
  if (count !== 1) throw new Overtaken(what);
}
