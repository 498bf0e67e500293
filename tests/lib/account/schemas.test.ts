import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { emailSchema, linkTokenSchema, newPasswordSchema, personNameSchema } from '@/shared/schemas/account';
import { accommodationsSchema, courseTitleSchema, joinLinkDaysSchema, localDaySchema } from '@/shared/schemas/course';

const taken = <Schema extends z.core.$ZodType>(schema: Schema, value: unknown) => z.safeParse(schema, value);

describe('an e-mail address', () => {
  test('is compared trimmed, in lower case and composed (NFC)', () => {
    expect(z.parse(emailSchema, '  Ines@QuayRow.Example ')).toBe('ines@quayrow.example');
    expect(z.parse(emailSchema, 'ine\u0301s@quayrow.example')).toBe('in\u00e9s@quayrow.example');
  });
  test.each([
    '',
    ' ',
    'ines',
    '@quayrow.example',
    'ines@',
    'a b@c.example',
    'a@b@c.example',
    `${'a'.repeat(250)}@b.example`,
  ])('%j is refused', (value) => {
    expect(taken(emailSchema, value).success).toBe(false);
  });
  test('cannot be the mark of somebody erased', () => {
    expect(taken(emailSchema, 'erased:018f0000').success).toBe(false);
  });
});

test('a name is one line without control characters', () => {
  expect(z.parse(personNameSchema, '  Ines\n Calloway ')).toBe('Ines Calloway');
  expect(taken(personNameSchema, ' ').success).toBe(false);
  expect(taken(personNameSchema, 'Ines\u202eyawollaC').success).toBe(false);
  expect(taken(personNameSchema, 'x'.repeat(121)).success).toBe(false);
});

test('a password has ten characters at least, and is the same however it was typed (NFKC)', () => {
  expect(taken(newPasswordSchema, 'ninechars').success).toBe(false);
  expect(z.parse(newPasswordSchema, 'ﬁne words here')).toBe('fine words here');
  expect(taken(newPasswordSchema, 'x'.repeat(201)).success).toBe(false);
});

test('the secret of a link is 43 characters of base64url', () => {
  expect(taken(linkTokenSchema, 'j'.repeat(43)).success).toBe(true);
  for (const wrong of ['j'.repeat(42), `${'j'.repeat(42)}=`, `${'j'.repeat(42)}/`, ''])
    expect(taken(linkTokenSchema, wrong).success).toBe(false);
});

test('a course has a title, a day has a date, a link has days', () => {
  expect(z.parse(courseTitleSchema, ' Type \t one ')).toBe('Type one');
  for (const wrong of ['2027-02-29', '30.9.2027', '2027-13-01'])
    expect(taken(localDaySchema, wrong).success).toBe(false);
  expect(z.parse(joinLinkDaysSchema, '14')).toBe(14);
  for (const wrong of ['0', '181', '2.5', 'many', '']) expect(taken(joinLinkDaysSchema, wrong).success).toBe(false);
});

test('accommodations take nothing they do not know', () => {
  expect(
    z.parse(accommodationsSchema, { moreTime: 25, workingView: 1.5, benchTells: 'everything', gapsSpoken: true }),
  ).toBeTruthy();
  for (const wrong of [
    { moreTime: -1 },
    { moreTime: 12.5 },
    { moreTime: NaN },
    { workingView: 0 },
    { workingView: 5 },
    { benchTells: 'all' },
    { diagnosis: 'x' },
  ]) {
    expect(taken(accommodationsSchema, wrong).success).toBe(false);
  }
});
