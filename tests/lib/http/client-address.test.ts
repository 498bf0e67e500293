import { expect, test } from 'vitest';
import { clientAddress } from '@/lib/http/client-address';

const seen = (forwarded: string | null, proxies: number) => clientAddress({ get: () => forwarded }, proxies);

test('behind one proxy the last entry counts: what stands before it was written by the sender', () => {
  expect(seen('203.0.113.9, 198.51.100.4', 1)).toBe('198.51.100.4');
  expect(seen('198.51.100.4', 1)).toBe('198.51.100.4');
});

test('behind two proxies it is the last but one', () => {
  expect(seen('203.0.113.9, 198.51.100.4, 10.0.0.2', 2)).toBe('198.51.100.4');
});

test('fewer entries than proxies, or none, still give a key', () => {
  expect(seen('198.51.100.4', 2)).toBe('198.51.100.4');
  expect(seen(null, 1)).toBe('unknown');
  expect(seen('x'.repeat(500), 1)).toHaveLength(64);
});

// RFC 4291 §2.2: the same address written in three ways.
test('IPv6 counts by its first 64 bits, however it is written', () => {
  expect(seen('2001:DB8:0:0:8:800:200C:417A', 1)).toBe('2001:db8:0:0::/64');
  expect(seen('2001:db8::8:800:200c:417a', 1)).toBe('2001:db8:0:0::/64');
  expect(seen('2001:0db8:0000:0000:ffff::1', 1)).toBe('2001:db8:0:0::/64');
  expect(seen('::1', 1)).toBe('0:0:0:0::/64');
  expect(seen('::ffff:198.51.100.4', 1)).toBe('198.51.100.4');
});
