// Replaces vitest while mutants are tried: collects the tests of a program, to be run one by one in the same process.
import { GLOBAL_EXPECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from '@vitest/expect';
import * as chai from 'chai';

export type CollectedTest = { name: string; run: () => Promise<void> };
type Step = () => unknown;
type Scope = { name: string; beforeAll: Step[]; beforeEach: Step[]; afterEach: Step[]; ready: Promise<void> | null };

let collected: CollectedTest[] = [];
let scopes: Scope[] = [newScope('')];

function newScope(name: string): Scope {
  return { name, beforeAll: [], beforeEach: [], afterEach: [], ready: null };
}

/** What the program that was just loaded has collected. */
export function takeTests(): CollectedTest[] {
  const taken = collected;
  collected = [];
  scopes = [newScope('')];
  return taken;
}

function describe(name: string, body: Step): void {
  scopes.push(newScope(name));
  body();
  scopes.pop();
}

function it(name: string, ...rest: unknown[]): void {
  const body = rest.find((each) => typeof each === 'function') as Step;
  const around = [...scopes];
  collected.push({
    name: [...around.map((scope) => scope.name), name].filter(Boolean).join(' › '),
    async run() {
      for (const scope of around) await (scope.ready ??= all(scope.beforeAll));
      for (const scope of around) await all(scope.beforeEach);
      await body();
      for (const scope of around.toReversed()) await all(scope.afterEach);
    },
  });
}

async function all(steps: readonly Step[]): Promise<void> {
  for (const step of steps) await step();
}

/** A row is an array of arguments, or one argument. */
const each =
  (make: (name: string, body: Step) => void) =>
  (table: readonly unknown[]) =>
  (name: string, body: (...row: unknown[]) => unknown): void =>
    table.forEach((row, index) => make(`${name} #${index}`, () => body(...(Array.isArray(row) ? row : [row]))));

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
const expect = Object.assign((value: unknown, message?: string) => chai.expect(value, message), chai.expect);
Object.assign(globalThis, { [GLOBAL_EXPECT]: expect });
setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect as never);

const hook = (kind: 'beforeAll' | 'beforeEach' | 'afterEach') => (step: Step) => void scopes.at(-1)![kind].push(step);

/** What `import … from 'vitest'` gives in these programs (stand-in.ts). */
Object.assign(globalThis, {
  __vitest: {
    describe: Object.assign(describe, { each: each(describe) }),
    it: Object.assign(it, { each: each(it) }),
    expect,
    beforeAll: hook('beforeAll'),
    beforeEach: hook('beforeEach'),
    afterEach: hook('afterEach'),
    // Nothing is left behind by tests of the core.
    afterAll: () => undefined,
  },
});
