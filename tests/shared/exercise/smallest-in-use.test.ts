import { describe, expect, it } from 'vitest';
import { smallestInUse } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';

const px = (value: number): Size => ({ value, unit: 'px' });
const pt = (value: number): Size => ({ value, unit: 'pt' });

/** 1 pt is 4/3 px (CSS Values and Units 4, 6.2). */
describe('smallestInUse', () => {
  it.each([
    [px(72), px(14), px(14)],
    [px(12), px(14), px(12)],
    [px(72), null, px(72)],
    // 10 pt are 13.3 px; 11 pt are 14.7 px.
    [px(14), pt(10), pt(10)],
    [px(14), pt(11), px(14)],
  ])('of %j and %j takes %j', (size, smallest, taken) => expect(smallestInUse(size, smallest)).toEqual(taken));
});
