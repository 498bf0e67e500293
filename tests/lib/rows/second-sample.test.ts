import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { newId } from '@/lib/data/ids';
import { isSampled, secondMarkingOf } from '@/lib/rows/exercise';

describe('which proofs a second marker looks at', () => {
  const ids = Array.from({ length: 2000 }, () => newId());

  it('is none, all, or about the share', () => {
    expect(ids.filter((id) => isSampled(id, { which: 'none', percent: 50 }))).toHaveLength(0);
    expect(ids.filter((id) => isSampled(id, { which: 'all', percent: 1 }))).toHaveLength(2000);
    // 2000 draws at 20 %: mean 400, standard deviation 17.9; five of them on either side.
    const share = ids.filter((id) => isSampled(id, { which: 'share', percent: 20 })).length;
    expect(share).toBeGreaterThan(310);
    expect(share).toBeLessThan(490);
  });

  it('keeps every proof of a smaller share in a larger one, and asks nothing but the id', () => {
    for (const id of ids)
      if (isSampled(id, { which: 'share', percent: 10 }))
        expect(isSampled(id, { which: 'share', percent: 11 })).toBe(true);
    // SHA-256 (FIPS 180-4) as Node carries it out, first four bytes as a share of 2^32.
    const place =
      parseInt(createHash('sha256').update('second marker of a-proof').digest('hex').slice(0, 8), 16) / 4294967296;
    expect(isSampled('a-proof', { which: 'share', percent: Math.ceil(place * 100) })).toBe(true);
    expect(isSampled('a-proof', { which: 'share', percent: Math.floor(place * 100) })).toBe(false);
  });

  it('reads a round that says nothing as none', () => {
    expect(secondMarkingOf({ secondMarker: '{}' })).toEqual({ which: 'none', percent: 20 });
  });
});
