import { describe, expect, test } from 'vitest';
import { lineShapes, pathTexts, type PathShape, type Role, type Shape } from '@/shared/line/shapes';
import { noLooks, threeAt, type LookName } from '@/shared/line/looks';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

// Advances of the drawn letters: H 720, O 760, I 220, at 1000 units an em.
const pack = drawnPack('HOIH', { builtIn: [-30, 0, 0] });
const spacing = { tracking: 10, offsets: [-5, 20, 0] };
const rolesOf = (shapes: readonly Shape[]): Role[] => shapes.map(({ role }) => role);
const pathOf = (shapes: readonly Shape[], role: Role) => shapes.find((shape) => shape.role === role) as PathShape;

describe('the shapes of a line', () => {
  test('letters, each at its own place: type uses dx alone', () => {
    const { pieces } = pathOf(lineShapes({ pack, spacing }), 'letters');
    expect(pieces.map(({ place }) => place)).toEqual(
      // Advance, built-in, tracking and offset added up by hand.
      [0, 720 - 30 + 10 - 5, 695 + 760 + 10 + 20, 1485 + 220 + 10].map((dx) => ({ dx, dy: 0, turn: 0 })),
    );
  });

  test('white lies under the letters, edges over them, guides at the very bottom', () => {
    const looks = { ...noLooks, white: true, counters: true, guides: true, why: true };
    expect(rolesOf(lineShapes({ pack, spacing, looks, chosen: 1 }))).toEqual([
      ...(['guides', 'between', 'inside', 'inside-open', 'letters', 'across', 'edge-drawn', 'edge-seen'] as const),
    ]);
  });

  test('hidden letters leave the white, once', () => {
    expect(rolesOf(lineShapes({ pack, spacing, looks: { hidden: true, white: true } }))).toEqual(['between']);
  });

  test('three letters leave three letters and the two gaps between them', () => {
    const shapes = lineShapes({ pack, spacing, looks: { three: true, white: true }, chosen: 1 });
    expect(pathOf(shapes, 'letters').pieces).toHaveLength(3);
    expect(pathOf(shapes, 'between').pieces).toHaveLength(2);
    expect(threeAt(3, 4)).toEqual({ from: 1, to: 3 });
    expect(threeAt(0, 2)).toEqual({ from: 0, to: 1 });
  });

  test('an overlay is held where it is asked to be', () => {
    const overlay = { spacing: { tracking: 0, offsets: [0, 0, 0] }, heldAt: 2 };
    const shapes = lineShapes({ pack, spacing, overlays: [overlay] });
    const at = (role: Role) => pathOf(shapes, role).pieces.map(({ place }) => place.dx);
    expect(at('overlay')[2]).toBe(at('letters')[2]);
    expect(at('overlay')[1]).not.toBe(at('letters')[1]);
    expect(rolesOf(shapes)).toEqual(['overlay', 'letters']);
    expect(rolesOf(lineShapes({ pack, spacing, overlays: [{ ...overlay, over: true }] }))).toEqual([
      'letters',
      'overlay',
    ]);
  });

  test('no line without a chosen gap shows why', () => {
    expect(rolesOf(lineShapes({ pack, spacing, looks: { why: true } }))).toEqual(['letters']);
  });

  test('the same outline is the same object from change to change, so that painters keep what they made of it', () => {
    const looks: Partial<Record<LookName, boolean>> = { white: true, counters: true };
    const one = lineShapes({ pack, spacing, looks });
    const other = lineShapes({ pack, spacing: { ...spacing, offsets: [-5, 20, 7] }, looks });
    for (const role of ['letters', 'inside'] as const)
      pathOf(one, role).pieces.forEach(({ outline }, at) =>
        expect(pathOf(other, role).pieces[at]!.outline).toBe(outline),
      );
    const between = (shapes: readonly Shape[]) => pathOf(shapes, 'between').pieces.map(({ outline }) => outline);
    expect(between(other).slice(0, 2)).toEqual(between(one).slice(0, 2));
    expect(between(other)[0]).toBe(between(one)[0]);
    expect(between(other)[2]).not.toEqual(between(one)[2]);
  });
});

describe('path text', () => {
  const square = { unit: 2, lines: [[0, 0, 10, 0, 10, 5]], closed: true };

  test('moves by dx and dy, in font units', () => {
    expect(pathTexts([{ outline: square, place: { dx: 100, dy: -7, turn: 0 } }])).toEqual([
      { path: 'M100 -7L120 -7 120 3Z', place: null },
    ]);
    expect(pathTexts([{ outline: { unit: 1, path: 'M1 2L3 4Z' }, place: { dx: 10, dy: 20, turn: 0 } }])).toEqual([
      { path: 'M11 22L13 24Z', place: null },
    ]);
  });

  test('what is turned keeps its place, by itself', () => {
    const place = { dx: 100, dy: 3, turn: -35 };
    expect(pathTexts([{ outline: square, place }])).toEqual([{ path: 'M0 0L20 0 20 10Z', place }]);
  });
});
