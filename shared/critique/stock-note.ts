import type { Fault } from '@/shared/schemas/note';

const inWords: Record<Exclude<Fault, ''>, string> = {
  wide: 'too wide',
  tight: 'too tight',
  left: 'too far left',
  right: 'too far right',
  touching: 'touching',
};

/** Fills a stock note in. A fault without a name becomes “not yet even”. */
export function fillStockNote(body: string, letters: readonly string[], fault: Fault): string {
  const words: Record<string, string> = {
    '{pair}': letters.join('').trim(),
    '{left}': (letters[0] ?? '').trim(),
    '{right}': (letters[letters.length - 1] ?? '').trim(),
    '{letter}': (letters[Math.floor(letters.length / 2)] ?? '').trim(),
    '{fault}': fault === '' ? 'not yet even' : inWords[fault],
  };
  return body.replace(/\{(?:pair|left|right|letter|fault)\}/g, (name) => words[name] ?? name);
}

/** Stock notes that every course starts with; common practice in plain words. */
export const firstStockNotes: readonly { id: string; body: string; fault: Fault }[] = [
  {
    id: 'first-wide',
    fault: 'wide',
    body: '{pair} is too wide. Compare it with the gaps on either side.',
  },
  { id: 'first-tight', fault: 'tight', body: '{pair} crowds: give it the white that its neighbours have.' },
  {
    id: 'first-left',
    fault: 'left',
    body: '{letter} is too far left: the gap on one side is too tight and the other too wide by as much.',
  },
  {
    id: 'first-right',
    fault: 'right',
    body: '{letter} is too far right: the gap on one side is too wide and the other too tight by as much.',
  },
  { id: 'first-touching', fault: 'touching', body: '{pair} touches. If it is meant, say so; if not, open it.' },
  { id: 'first-seen', fault: '', body: '{pair} is well judged.' },
  {
    id: 'first-heads',
    fault: '',
    body: 'Look at {pair} with the line on its head, then say whether it is still even.',
  },
];
