import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderedRows } from '@/shared/class/map-order';
import type { ClassMap } from '@/shared/class/map';
import { classRow, columnsOf, shadeOf, mapNumbers, mapWords, noShade, valueAt } from '@/shared/class/map-view';
import { drawnPack } from '../../fixtures/drawn-pack';

/** Three gaps of one line; a row of tenths a student, null for one who has not set it. */
function mapOf(rows: ((number | null)[] | null)[], tolerance = 8): ClassMap {
  return {
    students: rows.map((_, index) => ({ name: `Student ${index}`, token: `${index}` })),
    namesShown: true,
    lines: [
      {
        specimenVersionId: 'v',
        specimenId: 's',
        text: 'HOLT',
        letters: ['H', 'O', 'L', 'T'],
        pack: drawnPack('HOLT'),
        ground: 'light',
        ownTolerance: 5,
        tolerances: [[tolerance, tolerance, tolerance]],
        references: [],
        rows: rows.map((tenths) =>
          tenths === null ? null : { tracking: 0, offsets: [0, 0, 0], against: 0, nearest: null, tenths },
        ),
      },
    ],
  };
}
const names = (map: ClassMap, order: Parameters<typeof orderedRows>[1]) => orderedRows(mapNumbers(map), order);

// Expected values by hand.
describe('the map of a class', () => {
  it('has a column a pair', () => {
    expect(columnsOf(mapOf([]).lines).map(({ letters, first }) => [letters, first])).toEqual([
      ['HO', true],
      ['OL', false],
      ['LT', false],
    ]);
  });

  it.each([
    [8, 0],
    [-8, 0],
    [8.1, 1],
    [16, 1],
    [-16.5, -2],
    [24, 2],
    [24.1, 3],
    [-90, -3],
  ] as const)('%d beside a tolerance of 8 is shade %d', (far, shade) => expect(shadeOf(far, 8)).toBe(shade));

  it('keeps what was not set apart from what nothing is held against', () => {
    const map = mapOf([[100, null, -90], null]);
    const columns = columnsOf(map.lines);
    expect([...mapNumbers(map).shades]).toEqual([1, noShade, -1, noShade, noShade, noShade]);
    expect(columns.map((column) => mapWords(valueAt(map, 0, column), 'reference'))).toEqual([
      '10 wider than the reference, outside the tolerance of 8',
      'not held against anything',
      '9 tighter than the reference, outside the tolerance of 8',
    ]);
    expect(mapWords(valueAt(map, 1, columns[0]!), 'reference')).toBe('not set');
  });

  it('takes the exercise’s own tolerance where there is no reference', () => {
    const map = mapOf([[60, 0, 0]]);
    map.lines[0]!.rows[0]!.against = null;
    expect(valueAt(map, 0, columnsOf(map.lines)[0]!)).toEqual({ far: 6, tolerance: 5 });
  });

  it('sums the class up by the median of each pair', () => {
    const map = mapOf([[10, 20, null], [30, 20, null], [50, 90, null], null]);
    expect(classRow(mapNumbers(map))).toEqual([3, 2, null]);
  });

  it('orders by how far off, by one pair, by likeness; who has nothing stands last', () => {
    const map = mapOf([null, [10, -10, 0], [-300, 0, 0], [-290, 5, 0], [90, 80, 70]]);
    expect(names(map, { by: 'farthest' })).toEqual([2, 3, 4, 1, 0]);
    expect(names(map, { by: 'nearest' })).toEqual([1, 4, 3, 2, 0]);
    expect(names(map, { by: 'pair', column: 1 })).toEqual([4, 3, 2, 1, 0]);
    // 2 is farthest; 3 differs from it by 15 in all, 1 from 3 by 315, and so on.
    expect(names(map, { by: 'alike' })).toEqual([2, 3, 1, 4, 0]);
  });

  it('loses nobody, whatever the order', () => {
    const cell = fc.option(fc.integer({ min: -900, max: 900 }), { nil: null });
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.tuple(cell, cell, cell), { nil: null }), { maxLength: 12 }),
        fc.constantFrom('farthest', 'nearest', 'alike', 'name'),
        (rows, by) => {
          expect(names(mapOf(rows), { by } as { by: 'alike' }).sort((one, other) => one - other)).toEqual(
            rows.map((_, index) => index),
          );
        },
      ),
    );
  });
});
