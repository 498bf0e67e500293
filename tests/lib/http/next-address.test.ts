import { expect, test } from 'vitest';
import { safeNext } from '@/lib/http/next-address';

test.each(['/courses', '/exercises/018f?round=2#lines', '/join/abc', '/courses/a%20b', '/'])(
  '%s leads there',
  (address) => {
    expect(safeNext(address)).toBe(address);
  },
);

// Ways to write another site's address that browsers follow (WHATWG URL standard, special schemes).
test.each([
  'https://evil.example',
  '//evil.example',
  '/\\evil.example',
  '\\\\evil.example',
  '/\t/evil.example',
  '/\n/evil.example',
  ' //evil.example',
  'javascript:alert(1)',
  '/.//evil.example',
  '/..//evil.example',
  '/%2e//evil.example',
  'data:text/html,x',
  'courses',
  '',
  '/sign-in',
  '/sign-in?next=/sign-in',
  '/api/account/data',
  '/api',
  `/${'a'.repeat(2001)}`,
  undefined,
  null,
  ['/courses'],
  7,
])('%j leads to the courses', (address) => {
  expect(safeNext(address)).toBe('/courses');
});

test('whatever it answers stays on this site', () => {
  for (const address of [
    '/.//evil.example',
    '/a/..//evil.example',
    '/%2f%2fevil.example',
    '/@evil.example',
    '/:80',
    '/?//evil.example',
  ]) {
    const answer = safeNext(address);
    expect(new URL(answer, 'https://school.example').host).toBe('school.example');
    expect(answer.startsWith('//')).toBe(false);
  }
});
