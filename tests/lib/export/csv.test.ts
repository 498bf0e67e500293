import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvOf } from '@/lib/export/file';

describe('CSV', () => {
  it('ends every record with CRLF and quotes commas, quotes and line ends (RFC 4180, 2.1 and 2.5 to 2.7)', () => {
    expect(
      csvOf(
        ['a', 'b'],
        [
          ['x,y', 'say "hm"'],
          ['one\r\ntwo', 3],
        ],
      ),
    ).toBe('\uFEFFa,b\r\n"x,y","say ""hm"""\r\n"one\r\ntwo",3\r\n');
  });

  // The beginnings that OWASP lists for CSV injection.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', '＋1', '－1', '＠x'])(
    'lets no cell become a formula: %j',
    (cell) => {
      const [, row] = Papa.parse<string[]>(csvOf(['a'], [[cell]]).slice(1), { delimiter: ',' }).data;
      expect(row![0]).toBe(`'${cell}`);
    },
  );

  it('leaves numbers, empty cells and names as they are', () => {
    const [, row] = Papa.parse<string[]>(csvOf(['a', 'b', 'c'], [[12.5, null, 'Ximena Ó-Dálaigh']]).slice(1), {
      delimiter: ',',
    }).data;
    expect(row).toEqual(['12.5', '', 'Ximena Ó-Dálaigh']);
  });
});
