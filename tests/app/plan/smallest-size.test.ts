import { describe, expect, it } from 'vitest';
import { exercise } from '@/app/exercises/[exerciseId]/plan/read-forms';

const read = (typed: string) => {
  const form = new FormData();
  form.set('settings.smallestSize', typed);
  return exercise(form).settings.smallestSize;
};

describe('the smallest size of use, as it is typed', () => {
  it.each([
    ['', null],
    ['  ', null],
    ['14 px', { value: 14, unit: 'px' }],
    ['10,5pt', { value: 10.5, unit: 'pt' }],
  ])('“%s”', (typed, size) => expect(read(typed)).toEqual(size));
  it.each([
    ['14', '“14” is not a size'],
    ['14 px; 9 pt', '“14 px; 9 pt” is more than one size'],
    ['2 px', '“2 px” is out of reach'],
  ])('refuses “%s” and quotes it', (typed, said) => {
    expect(() => read(typed)).toThrow(said);
  });
});
