import { describe, expect, it } from 'vitest';
import { signIn } from '@/lib/account/sign-in';
import { AppError } from '@/lib/access/errors';
import { refuseUnstorable } from '@/lib/access/unstorable';
import { listPeople } from '@/lib/course/people';
import { getCourse } from '@/lib/course/courses';
import { asAppError } from '@/lib/http/error-response';
import { describeOnBothDatabases } from '../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../fixtures/people';

describe('what no database can hold', () => {
  it.each([
    ['a NUL', 'a\0b'],
    ['a NUL in a list in an object', { a: [{ b: 'x\0' }] }],
    ['a NUL in a name', { 'a\0': 1 }],
    ['a number past 2^53', { n: 2 ** 53 }],
    ['infinity', [Infinity]],
    ['what is not a number', [Number.NaN]],
  ])('%s is refused with 400', (_, input) => {
    expect(() => refuseUnstorable(input)).toThrow(expect.objectContaining({ code: 'INVALID', status: 400 }));
  });

  it('may be as deep as 64 kB of brackets', () => {
    refuseUnstorable(JSON.parse('['.repeat(32_000) + ']'.repeat(32_000)));
  });

  it.each([null, undefined, '', 0, -1.5, [], {}, [undefined, 'x'], { at: new Date(0), n: 2 ** 53 - 1 }])(
    'lets %j through',
    (input) => refuseUnstorable(input),
  );
});

describeOnBothDatabases('malformed input', (suite) => {
  it('answers 400 and not 500, signed in or not', async () => {
    const instructor = await addPerson(suite.db);
    const courseId = await addCourse(suite.db);
    await addMember(suite.db, courseId, instructor.id, 'instructor');
    for (const call of [
      () => signIn(visitor(), { email: 'a\0@school.example', password: 'paper boats in rain' }),
      () => getCourse(instructor.caller, { courseId: `${courseId}\0` }),
      () => listPeople(instructor.caller, { courseId, find: 'a\0' }),
      () => listPeople(instructor.caller, { courseId, page: 1e300 }),
    ]) {
      const error = await call().catch((refused: unknown) => refused);
      expect(error).toBeInstanceOf(AppError);
      expect((error as AppError).status).toBe(400);
    }
  });

  it('with a number that a column can’t hold answers 400', async () => {
    const error = await suite.db.member
      .findMany({ where: { version: 3_000_000_000 } })
      .catch((refused: unknown) => refused);
    if (suite.provider === 'postgresql') expect(error).toBeInstanceOf(Error);
    if (error instanceof Error) expect(asAppError(error)).toMatchObject({ code: 'INVALID' });
  });
});
