import { describe, expect, it } from 'vitest';
import { ladderSizes } from '@/app/_bench/drawing/sizes';

const px = (value: number) => ({ value, unit: 'px' as const });

describe('the ladder', () => {
  it('goes down by two thirds to 12 px where no smallest size is named', () => {
    // 72/1.5 = 48, 32, 21.3, 14.2; 9.5 is under 12.
    expect(ladderSizes(px(72))).toEqual([48, 32, 21, 14].map(px));
  });
  it('ends at the smallest size of use, in even steps', () => {
    // 96 to 12 is a factor of 8: five steps of 1.516.
    expect(ladderSizes(px(96), px(12))).toEqual([63, 42, 28, 18, 12].map(px));
    expect(ladderSizes(px(24), px(16))).toEqual([px(16)]);
  });
  it('keeps the unit that the smallest size is named in', () => {
    // 9 pt are 12 px.
    expect(ladderSizes(px(96), { value: 9, unit: 'pt' }).at(-1)).toEqual({ value: 9, unit: 'pt' });
  });
  it('takes no notice of a smallest size that is not smaller', () =>
    expect(ladderSizes(px(72), px(72))).toEqual(ladderSizes(px(72))));
});
