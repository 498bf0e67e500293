import { describe, expect, it } from 'vitest';
import { whatTheBenchTells } from '@/shared/exercise/what-the-bench-tells';

const quiet = { benchTells: 'nothing', benchTellsAfterProof: 'evenness' } as const;

describe('whatTheBenchTells', () => {
  it('tells nothing before a proof is sent unless the exercise allows it', () => {
    expect(whatTheBenchTells(quiet, {}, false)).toEqual({
      level: 'nothing',
      contact: false,
      evenness: false,
      suggestions: false,
    });
    expect(whatTheBenchTells({ ...quiet, benchTells: 'contact' }, {}, false)).toEqual({
      level: 'contact',
      contact: true,
      evenness: false,
      suggestions: false,
    });
  });
  it('tells each step with the ones before it', () => {
    expect(whatTheBenchTells(quiet, {}, true)).toMatchObject({ contact: true, evenness: true, suggestions: false });
    expect(whatTheBenchTells({ ...quiet, benchTells: 'everything' }, {}, false)).toMatchObject({
      contact: true,
      evenness: true,
      suggestions: true,
    });
  });
  it('never tells less after a proof than before', () => {
    expect(whatTheBenchTells({ benchTells: 'everything', benchTellsAfterProof: 'nothing' }, {}, true).level).toBe(
      'everything',
    );
  });
  it('tells nothing, before or after a proof, where the course hides measured figures', () => {
    const open = { benchTells: 'everything', benchTellsAfterProof: 'everything' } as const;
    for (const sent of [false, true])
      expect(whatTheBenchTells(open, {}, sent, true)).toEqual({
        level: 'nothing',
        contact: false,
        evenness: false,
        suggestions: false,
      });
    expect(whatTheBenchTells(open, { benchTells: 'contact' }, true, true).level).toBe('contact');
  });
  it('puts a member’s accommodation first, whichever way it goes', () => {
    expect(whatTheBenchTells(quiet, { benchTells: 'everything' }, false).level).toBe('everything');
    expect(whatTheBenchTells({ ...quiet, benchTells: 'everything' }, { benchTells: 'contact' }, true).level).toBe(
      'contact',
    );
  });
});
