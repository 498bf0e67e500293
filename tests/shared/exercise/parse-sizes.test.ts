import { describe, expect, it } from 'vitest';
import { parseSizes, sizesText } from '@/shared/exercise/sizes';

describe('parseSizes', () => {
  it('reads sizes as people type them', () => {
    expect(parseSizes('72 px')).toEqual([{ value: 72, unit: 'px' }]);
    expect(parseSizes('72px,24pt; 10,5 pt\n 9.5PT')).toEqual([
      { value: 72, unit: 'px' },
      { value: 24, unit: 'pt' },
      { value: 10.5, unit: 'pt' },
      { value: 9.5, unit: 'pt' },
    ]);
  });
  it('gives back what it reads', () => {
    expect(
      parseSizes(
        sizesText([
          { value: 72, unit: 'px' },
          { value: 10.5, unit: 'pt' },
        ]),
      ),
    ).toEqual([
      { value: 72, unit: 'px' },
      { value: 10.5, unit: 'pt' },
    ]);
  });
  it.each([
    ['', 'Give at least one size'],
    ['72', '“72” is not a size'],
    ['72 px, 24 em', '“24 em” is not a size'],
    ['big', '“big” is not a size'],
    ['-3 px', '“-3 px” is not a size'],
    ['5 px', '“5 px” is out of reach'],
    ['2001 px', '“2001 px” is out of reach'],
  ])('refuses %j and quotes it', (typed, said) => {
    expect(() => parseSizes(typed)).toThrow(said);
  });
});
