import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AppError } from '@/lib/access/errors';
import { allOperations } from '@/lib/access/operation';
import { everyone, type Answer, type Row, type Rows, type Who } from './row';
import { notFor } from './neighbour';
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

const wordsOf = ({ userMessage, body, fields }: AppError) => ({ userMessage, body, fields });

/** Everything in an answer as one text: maps and bytes, too. */
const textOf = (value: unknown): string =>
  JSON.stringify(value, (_key, one: unknown) => {
    if (one instanceof Map) return [...one];
    if (one instanceof Set) return [...one];
    if (one instanceof Uint8Array) return new TextDecoder().decode(one);
    return one;
  }) ?? '';

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
        const { answer, told: amiss } = await ask(who);
        expect(answer).toBe(row.answers[who]);
        expect(amiss, 'rows, names or words that are not theirs').toEqual([]);
      });
    }

    async function ask(who: Who): Promise<{ answer: Answer; told: string[] }> {
      const input = row!.input(world, who);
      try {
        const result = await operation(world.callers[who], input, { now: world.now });
        return { answer: 'ok', told: told(result, input, who) };
      } catch (error) {
        if (error instanceof AppError) return { answer: error.code, told: told(wordsOf(error), input, who) };
        throw error;
      }
    }

    /** What an answer holds that is not for them. What they asked with, they know already. */
    function told(answered: unknown, asked: unknown, who: Who): string[] {
      const [text, question] = [textOf(answered), textOf(asked)];
      const known = [...(row!.tells?.(world, who) ?? [])];
      return notFor(who, world).filter((one) => text.includes(one) && !question.includes(one) && !known.includes(one));
    }
  });
}
