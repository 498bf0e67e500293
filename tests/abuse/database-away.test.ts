import { beforeAll, expect, it } from 'vitest';
import { exchangeLog, makeLog } from '@/lib/log';
import { openDatabase } from '@/lib/data/open';
import { asAppError, errorResponse } from '@/lib/http/error-response';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

// What failed is written to the log, too.
beforeAll(() => {
  exchangeLog(makeLog('error', { write: () => {} }));
  return () => exchangeLog(undefined);
});

it('a database that is away answers 503 in words, and when to try again', async () => {
  const db = openDatabase('postgresql://kerncrit@127.0.0.1:1/kerncrit');
  const error: unknown = await db.user.findMany().catch((failure: unknown) => failure);
  await db.$disconnect();
  const known = asAppError(error);
  expect(known).toMatchObject({ code: 'UNAVAILABLE', retryAfterSeconds: 30 });
  expect(known.userMessage).toContain('The database can’t be reached');
  const response = errorResponse(error);
  expect([response.status, response.headers.get('retry-after')]).toEqual([503, '30']);
});

it('a plain statement to a database that is away is no other case', async () => {
  const db = openDatabase('postgresql://kerncrit@127.0.0.1:1/kerncrit');
  const error: unknown = await db.$queryRaw`SELECT 1`.catch((failure: unknown) => failure);
  await db.$disconnect();
  expect(asAppError(error).code).toBe('UNAVAILABLE');
});

it('a fault of our own stays one', () => {
  expect(asAppError(new Error('a slip')).code).toBe('INTERNAL');
});

describeOnBothDatabases('a statement', (suite) => {
  it('has a time limit, and waits for a lock no longer than its own', async () => {
    if (suite.provider === 'sqlite') return;
    const [row] = await suite.db.$queryRawUnsafe<Record<string, string>[]>(
      `SELECT current_setting('statement_timeout') AS statement, current_setting('lock_timeout') AS lock,
        current_setting('idle_in_transaction_session_timeout') AS idle`,
    );
    expect(row).toEqual({ statement: '1min', lock: '15s', idle: '1min' });
  });
});
