import { expect, it } from 'vitest';
import { quoted } from '@/shared/text/quoted';

it.each([
  ['Totals', '“Totals”'],
  ['Totals of “AVA”', '“Totals of ‘AVA’”'],
  ['I read "open" as wide', '“I read ‘open’ as wide”'],
  ['27" wide', '“27" wide”'],
])('puts %s into quotation marks', (text, expected) => expect(quoted(text)).toBe(expected));
