import { channel } from 'node:diagnostics_channel';
import { $ZodError, type $ZodType, type output, parse } from 'zod/v4/core';
import { scopedData, type ScopedData } from '@/lib/data';
import type { Caller } from './caller';
import type { Actor } from '@/lib/data/actor';
import { AppError, fieldErrors, notFound, fieldErrorsText, signedOut } from './errors';
import { type Permission, permissions } from './permissions';
import { refuseUnstorable } from './unstorable';

export type Context<Of extends Actor = Actor> = {
  readonly actor: Of;
  readonly caller: Caller;
  /** Every query already narrowed to what this actor may see. */
  readonly data: ScopedData;
  readonly now: Date;
};

type Spec<Schema extends $ZodType, Result> = {
  readonly name: string;
  readonly allow: Permission;
  readonly input: Schema;
  readonly run: (context: Context, input: output<Schema>) => Promise<Result>;
};

export type Operation<Result = unknown, Schema extends $ZodType = $ZodType> = {
  (caller: Caller, input: unknown, at?: { now: Date }): Promise<Result>;
  readonly operationName: string;
  readonly allow: Permission;
  readonly input: Schema;
};

/** Each run of an operation is told on this channel of `node:diagnostics_channel`; monitoring listens. */
export const operationChannel = 'kerncrit:operation';
/** `outcome`: done, the code of its refusal, or INTERNAL. No input and nobody's name. */
export type OperationRun = { name: string; outcome: string; seconds: number };

const runs = channel(operationChannel);

const registry = new Map<string, Operation>();

/**
 * The only way to make something that the outside can call: permission, input schema and body are all needed,
 * so nothing is open by omission. It alone turns a caller into an actor.
 * Errors: INVALID with a text per field; SIGNED_OUT; NOT_FOUND for everything that is not the caller's.
 */
export function operation<Schema extends $ZodType, Result>(spec: Spec<Schema, Result>): Operation<Result, Schema> {
  const call = (caller: Caller, input: unknown, at?: { now: Date }): Promise<Result> =>
    timed(spec.name, async () => {
      const now = at?.now ?? new Date();
      const actor = await admit(caller, spec.allow);
      return spec.run({ actor, caller, data: scopedData(actor), now }, check(spec.input, input));
    });
  const made = Object.assign(call, { operationName: spec.name, allow: spec.allow, input: spec.input });
  registry.set(spec.name, made as unknown as Operation);
  return made;
}

async function timed<Result>(name: string, run: () => Promise<Result>): Promise<Result> {
  if (!runs.hasSubscribers) return run();
  const begun = performance.now();
  const tell = (outcome: string) =>
    runs.publish({ name, outcome, seconds: (performance.now() - begun) / 1000 } satisfies OperationRun);
  try {
    const result = await run();
    tell('done');
    return result;
  } catch (error) {
    tell(error instanceof AppError ? error.code : 'INTERNAL');
    throw error;
  }
}

/** All operations loaded so far, for the access table. */
export const allOperations = (): readonly Operation[] => [...registry.values()];

async function admit(caller: Caller, allow: Permission): Promise<Actor> {
  const grant = permissions[allow];
  if (caller.kind === 'system') return { kind: 'system', reason: caller.reason };
  if (grant === 'system') throw notFound();
  if (caller.kind === 'visitor') {
    if (grant === 'anyone') return { kind: 'visitor' };
    throw signedOut();
  }
  const { userId, sessionId } = caller;
  const actor: Actor = { kind: 'person', userId, sessionId, roles: Array.isArray(grant) ? grant : [] };
  if (grant === 'course-maker' && !(await scopedData(actor).account.mayMakeCourses())) throw notFound();
  return actor;
}

function check<Schema extends $ZodType>(schema: Schema, input: unknown): output<Schema> {
  refuseUnstorable(input);
  try {
    return parse(schema, input);
  } catch (error) {
    if (!(error instanceof $ZodError)) throw error;
    const fields = fieldErrors(error, input);
    throw new AppError('INVALID', fieldErrorsText(fields), { fields });
  }
}

/**
 * The queries of one person's own data, for an operation that the server's operator runs on that person's behalf (a
 * request to receive or erase one's data).
 * @throws Error for every actor but the system itself.
 */
export function actingFor(actor: Actor, userId: string): ScopedData {
  if (actor.kind !== 'system') throw new Error(`Only the system acts for others, not a ${actor.kind}.`);
  return scopedData({ kind: 'person', userId, sessionId: 'console', roles: [] });
}
