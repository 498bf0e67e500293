import { describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { listFaces } from '@/lib/face/catalogue';
import { overlaps, united } from '@/lib/face/shaping/unite';
import { inkRuns } from '@/shared/geometry/ink-runs';
import { counters, prepareLine } from '@/shared/measure';
import { flatten } from '@/shared/outline/flatten';
import { outlineArea } from '@/shared/outline/outline-area';
import { parsePath } from '@/shared/outline/parse-path';

const shape = (path: string) => flatten(parsePath(path), 1);

describe('contours that overlap', () => {
  // A stem 100 wide and 700 high with a frame pushed 50 into it.
  const pushedIn = 'M0 0L100 0L100 700L0 700ZM50 100L300 100L300 500L50 500ZM150 200L150 400L200 400L200 200Z';
  it('become one, with the white inside them as a hole', () => {
    const one = united(pushedIn, 1000);
    expect(one.match(/M/g)).toHaveLength(2);
    // The stem, the frame without its part in the stem, less its hole.
    expect(Math.abs(outlineArea(parsePath(one)))).toBe(100 * 700 + 200 * 400 - 50 * 200);
    for (const y of [50, 150, 300, 450, 600]) expect(inkRuns(shape(one), y)).toEqual(inkRuns(shape(pushedIn), y));
  });
  it('keep their curves, and whole numbers', () => {
    const one = united('M0 0L100 0L100 700L0 700ZM50 100C300 100 300 500 50 500Z', 1000);
    expect(one).toMatch(/^(?:[MLCZ](?:-?\d+(?: -?\d+)*)?)+$/);
    expect(one).toContain('C');
  });
  it('that do not overlap stay as they are, to the letter', () => {
    for (const path of ['M0 0L100 0L100 700L0 700Z', 'M0 0L400 0L400 400L0 400ZM100 100L100 300L300 300L300 100Z'])
      expect(united(path, 1000)).toBe(path);
  });
});

/** Variable faces have overlapping strokes. */
describe.each(
  listFaces()
    .filter(({ axes }) => axes.length > 0)
    .map(({ key }) => key)
    .slice(0, 4),
)('%s', (key) => {
  it('has no letter whose contours still overlap, and white where its bowls shut it in', async () => {
    const pack = await buildPack({ kind: 'catalogue', key }, 'ABDPRVWabdpqoegkx&');
    for (const { cluster, path } of pack.glyphs)
      expect([cluster, overlaps(flatten(parsePath(path), 1000 / pack.unitsPerEm))]).toEqual([cluster, false]);
    const line = prepareLine(pack);
    for (const letter of 'Bdo') {
      const kinds = counters(line.letters[line.clusters.indexOf(letter)]!).map(({ kind }) => kind);
      expect([letter, kinds.includes('closed')]).toEqual([letter, true]);
    }
  });
});
