import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { Deviations } from '@/app/critique/_desk/deviations';
import { usePlace, Where } from '@/app/critique/_desk/place';
import { lettersOf } from '@/shared/critique/run';
import { reportLine } from '@/shared/scoring';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const spacing = { tracking: 30, offsets: [12] };
const letters = ['H', 'O'];

it('until a pair is chosen, a note is on the line and not on the first pair', () => {
  let chosen: unknown = 'not asked';
  function Start() {
    const place = usePlace(spacing);
    chosen = place.run;
    return createElement(Where, { letters, place, sent: spacing.offsets });
  }
  const markup = renderToStaticMarkup(createElement(Start));
  expect(chosen).toBeNull();
  expect(lettersOf(letters, null)).toBe('HO');
  expect(markup).toMatch(/<button(?=[^>]*aria-pressed="true")[^>]*aria-label="the whole line"/);
});

it('the table of pairs shows the offset by itself; tracking is said once beside it', () => {
  const measure = reportLine(drawnPack('HO'), spacing, { size: { value: 96, unit: 'px' }, ground: 'light' });
  const markup = renderToStaticMarkup(
    createElement(Deviations, { measure, comparison: null, across: [], letters, choose: () => {}, chosen: null }),
  );
  expect(markup).toContain('tracking +30 on every gap');
  expect(markup.match(/<td class="number">([^<]*)<\/td>/)?.[1]).toBe('+12');
});
