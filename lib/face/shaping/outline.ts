import { FaceError, quoted } from '../face-error';
import { LIMITS } from '../limits';
import type { Face } from '../read-face';
import { checkComposite } from '../file/composites';
import type { PlacedGlyph } from './shape-line';
import { united } from './unite';

/**
 * The outline of a letter as one path of whole font units, all its glyphs placed (accents included) and united.
 * Throws `no-outline` where nothing would be drawn.
 */
export function outlineOf(face: Face, cluster: string, glyphs: readonly PlacedGlyph[]): string {
  const drawn = drawnOutlineOf(face, cluster, glyphs);
  const outlines = unitedOutlines.get(face) ?? new Map<string, string>();
  unitedOutlines.set(face, outlines);
  const made = outlines.get(drawn) ?? united(drawn, face.facts.unitsPerEm);
  outlines.set(drawn, made);
  return made;
}

/** United once for an opened face, by the outline as it was drawn. */
const unitedOutlines = new WeakMap<Face, Map<string, string>>();

/** The same with its contours as the face draws them, overlaps and all. */
export function drawnOutlineOf(face: Face, cluster: string, glyphs: readonly PlacedGlyph[]): string {
  // Browsers then place marks by a rule of thumb that this build of HarfBuzz leaves out: better no outline than another
  // one.
  if (glyphs.length > 1 && !face.tables.has('GPOS')) {
    throw new FaceError(
      'unsupported',
      `The face does not say where the mark of ${quoted(cluster)} goes (it has no table GPOS). Choose another face or another line.`,
    );
  }
  const path = glyphs.map((glyph) => glyphPath(face, cluster, glyph)).join('');
  if (path === '')
    throw new FaceError(
      'no-outline',
      `The face draws nothing for ${quoted(cluster)}. Choose another face or another line.`,
    );
  if (path.length > LIMITS.pathCharacters) {
    throw new FaceError(
      'too-large',
      `The outline of ${quoted(cluster)} has ${path.length} characters as a path; ${LIMITS.pathCharacters} is the most. Choose a plainer face.`,
    );
  }
  return path;
}

function glyphPath(face: Face, cluster: string, glyph: PlacedGlyph): string {
  checkComposite(face.tables, glyph.id, cluster);
  return face.font
    .glyphToJson(glyph.id)
    .map(({ type, values }) => {
      if (!'MLQCZ'.includes(type))
        throw new FaceError(
          'unsupported',
          `The outline of ${quoted(cluster)} has a step “${type}” that is not known here.`,
        );
      return type + values.map((value, index) => whole(value + (index % 2 === 0 ? glyph.x : glyph.y))).join(' ');
    })
    .join('');
}

/** Variable faces give parts of a unit; a pack holds whole ones. `+ 0` makes −0 plain. */
function whole(value: number): number {
  return Math.round(value) + 0;
}
