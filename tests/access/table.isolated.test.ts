import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AppError } from '@/lib/access/errors';
import { allOperations } from '@/lib/access/operation';
import { everyone, type Answer, type Row, type Rows, type Who } from './row';
import { openWorld, type OpenWorld } from './world';

// Every operation there is: a file that makes one is loaded here, whichever role it is for.
await Promise.all(
  Object.values(
    import.meta.glob('/lib/{account,course,exercise,reference,work,review,release,class,export,wall}/**/*.ts'),
  ).map((load) => load()),
);
const files = import.meta.glob<Record<string, Rows>>('./rows/*.ts', { eager: true });
const rows = new Map<string, Row>(
  Object.values(files)
    .flatMap((file) => Object.values(file))
    .flatMap((table) => Object.entries(table)),
);

describe('the table of role × operation', () => {
  it('has a row for every operation and none besides', () => {
    expect([...rows.keys()].sort()).toEqual(
      allOperations()
        .map(({ operationName }) => operationName)
        .sort(),
    );
  });
});

for (const operation of allOperations()) {
  const row = rows.get(operation.operationName);
  if (!row) continue;
  describe(operation.operationName, () => {
    let world: OpenWorld;
    beforeAll(async () => {
      world = await openWorld();
    });
    afterAll(() => world.close());

    for (const who of everyone) {
      it(`answers ${who} with ${row.answers[who]}`, async () => {
        await world.reset();
        expect(await ask(who)).toBe(row.answers[who]);
      });
    }

    async function ask(who: Who): Promise<Answer> {
      try {
        await operation(world.callers[who], row!.input(world, who), { now: world.now });
        return 'ok';
      } catch (error) {
        if (error instanceof AppError) return error.code;
        throw error;
      }
    }
  });
}
