import { describe, expect, it } from 'vitest';
import { countedProof } from '@/shared/marking/marks';

const at = (clock: string) => new Date(`2026-11-24T${clock}:00Z`);
const one = { id: 'a', number: 1, receivedAt: at('10:00') };
const two = { id: 'b', number: 2, receivedAt: at('11:00') };
const three = { id: 'c', number: 3, receivedAt: at('12:30') };

describe('the proof that counts', () => {
  it('is the last while nobody has started marking', () => {
    expect(countedProof([two, three, one], null, null)).toEqual({ proof: three, why: 'last', tooLate: [] });
  });
  it('is the last received before marking started', () => {
    expect(countedProof([one, two, three], at('12:00'), null)).toEqual({ proof: two, why: 'last', tooLate: [three] });
  });
  it('may have come in at that very instant', () => {
    expect(countedProof([one, two], at('11:00'), null).proof).toBe(two);
  });
  it('is the one that the instructor picked, early or late', () => {
    const picked = (proofId: string) => ({ proofId, chosenById: 'an instructor' });
    expect(countedProof([one, two, three], at('12:00'), picked('a'))).toMatchObject({ proof: one, why: 'chosen' });
    expect(countedProof([one, two, three], at('12:00'), picked('c'))).toMatchObject({ proof: three, why: 'chosen' });
  });
  it('is the one that a first note or mark fixed; those after it came too late', () => {
    const fixed = { proofId: 'b', chosenById: null };
    expect(countedProof([one, two, three], null, fixed)).toEqual({ proof: two, why: 'marked', tooLate: [three] });
  });
  it('is none where nothing came in time', () => {
    expect(countedProof([three], at('12:00'), null)).toEqual({ proof: null, why: 'none', tooLate: [three] });
    expect(countedProof([], null, null).why).toBe('none');
  });
});
