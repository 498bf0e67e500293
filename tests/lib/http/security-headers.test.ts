import { expect, test } from 'vitest';
import { commonHeaders, contentSecurityPolicy } from '@/lib/http/security-headers';

const rules = (policy: string) =>
  new Map(policy.split('; ').map((rule) => [rule.split(' ')[0]!, rule.split(' ').slice(1)]));
const inUse = { page: true, nonce: 'n0nce', production: true, https: true, issuer: null };

test('a page runs scripts by its nonce alone and asks nothing of anyone else', () => {
  const policy = contentSecurityPolicy(inUse);
  expect(rules(policy).get('script-src')).toEqual(["'nonce-n0nce'", "'strict-dynamic'"]);
  expect(rules(policy).get('default-src')).toEqual(["'none'"]);
  expect(rules(policy).get('frame-ancestors')).toEqual(["'none'"]);
  expect(rules(policy).get('base-uri')).toEqual(["'none'"]);
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
});

test('forms may lead on to the school’s own sign-in where there is one', () => {
  expect(
    rules(contentSecurityPolicy({ ...inUse, issuer: 'https://id.school.example/realms/one' })).get('form-action'),
  ).toEqual(["'self'", 'https://id.school.example']);
});

test('answers for programs load nothing', () => {
  expect(contentSecurityPolicy({ ...inUse, page: false })).toBe(
    "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
  );
});

test('HTTPS is asked for in future only where it is in use', () => {
  expect(new Map(commonHeaders(true)).get('strict-transport-security')).toBe('max-age=31536000');
  expect(new Map(commonHeaders(false)).has('strict-transport-security')).toBe(false);
  expect(new Map(commonHeaders(false)).get('x-content-type-options')).toBe('nosniff');
});
