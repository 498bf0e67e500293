import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, it } from 'vitest';
import { csvOf } from '@/shared/text/csv';

const plain = fc.string().filter((text) => !/^[=+\-@＝＋－＠\t\r\n]/.test(text));

// Read back by papaparse, which follows RFC 4180.
it('comes back as it was written, whatever is in the cells', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(plain, fc.integer()), { minLength: 1 }), (rows) => {
      const read = Papa.parse<string[]>(csvOf(['word', 'number'], rows).slice(1), {
        // Left to guess, it takes another sign for the comma where cells are full of it.
        delimiter: ',',
        newline: '\r\n',
        skipEmptyLines: false,
      }).data;
      expect(read.slice(1, -1)).toEqual(rows.map(([word, number]) => [word, String(number)]));
    }),
  );
});
