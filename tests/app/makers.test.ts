import { expect, it } from 'vitest';
import { makerOf } from '@/app/faces/family';
import { listFaces } from '@/lib/face/catalogue';

it.each([
  ['Copyright 2011 The Bitter Project Authors (https://fonts.example/bitter)', 'Bitter Project Authors'],
  ['Copyright (c) 2010-2011 by A. Maker (a@maker.example) with Reserved Font Name "A".', 'A. Maker'],
  ['Copyright (c) 2011, Copyright (c) 2011, Foundry (www.foundry.example)', 'Foundry'],
])('names the maker in “%s”', (attribution, maker) => expect(makerOf(attribution)).toBe(maker));

it('names a maker of every installed face, without notice, year or address', () => {
  for (const { key, licence } of listFaces()) {
    expect(makerOf(licence.attribution), key).toMatch(/^\p{L}[^@]*$/u);
    expect(makerOf(licence.attribution), key).not.toMatch(/copyright|\(c\)|https?:|\d{4}|licensed|reserved/i);
  }
});
