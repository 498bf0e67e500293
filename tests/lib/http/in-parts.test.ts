import { expect, it } from 'vitest';
import { inParts, jsonParts } from '@/lib/http/in-parts';

it.each([
  { names: ['ä “b”'], shown: true, lines: [{ a: 1 }, null, [2, 'c']] },
  { lines: [] as unknown[] },
  { lines: ['one'], after: null },
])('writes the same JSON in parts: %j', async (whole) => {
  const { lines, ...rest } = whole;
  const text = await new Response(inParts(jsonParts(whole, 'lines'))).text();
  expect(text).toBe(JSON.stringify({ ...rest, lines }));
});
