import { isIPv6 } from 'node:net';

/**
 * The network address of a request, for loose limits only. Each of the `trustedProxies` proxies in front of this server
 * adds the address it saw to the right end of X-Forwarded-For; anything further left was written by the sender and can
 * be anything. IPv6 counts by its first 64 bits, which is what one household or school gets. Without a proxy the
 * framework itself fills in the address of the connection.
 */
export function clientAddress(headers: { get(name: string): string | null }, trustedProxies: number): string {
  const seen = (headers.get('x-forwarded-for') ?? '')
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean);
  const address = seen.at(-Math.max(trustedProxies, 1)) ?? seen[0] ?? 'unknown';
  if (!isIPv6(address)) return address.slice(0, 64);
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address);
  return mapped ? mapped[1]! : `${firstFourGroups(address)}::/64`;
}

function firstFourGroups(address: string): string {
  const [left = '', right] = address.replace(/%.*$/, '').toLowerCase().split('::');
  const before = left === '' ? [] : left.split(':');
  const after = right === undefined || right === '' ? [] : right.split(':');
  const filled =
    right === undefined
      ? before
      : [...before, ...Array<string>(Math.max(0, 8 - before.length - after.length)).fill('0'), ...after];
  return filled
    .slice(0, 4)
    .map((group) => group.replace(/^0+(?=.)/, ''))
    .join(':');
}
