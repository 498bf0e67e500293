import { describe, expect, it } from 'vitest';
import { paper } from '@/tests/fixtures/paper';
import { signedArea } from '@/shared/geometry/polygon';
import { flatten } from '@/shared/outline/flatten';
import { outlineArea } from '@/shared/outline/outline-area';
import { parsePath } from '@/shared/outline/parse-path';
import { registryFace } from '@/tests/fixtures/registry-face';

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];

describe.each(['lato-400', 'playfair-display-400', 'abril-fatface-400'])('outlines of %s against paper.js', (name) => {
  it('have the same area within 0.1 %, exact and flattened, on every letter', async () => {
    const face = await registryFace(name);
    paper.setup(new paper.Size(100, 100));
    for (const letter of LETTERS) {
      const { path } = face.letter(letter);
      const wanted = new paper.CompoundPath(path).area;
      const commands = parsePath(path);
      const flat = flatten(commands, 1000 / face.unitsPerEm).reduce((sum, points) => sum + signedArea(points), 0);
      expect(Math.abs(outlineArea(commands) / wanted - 1), `${letter} exact`).toBeLessThan(0.001);
      expect(Math.abs((flat * (face.unitsPerEm / 1000) ** 2) / wanted - 1), `${letter} flattened`).toBeLessThan(0.001);
    }
  });
});
