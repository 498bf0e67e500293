import { FaceError } from './face-error';
import { type ChosenAxis, readFacts, type FaceFacts } from './face-facts';
import { checkHead } from './file/check-head';
import { openFile } from './file/open-file';
import { damaged, isCollection, readTables, type Tables } from './file/tables';
import { loadHarfBuzz, type HarfBuzz } from './harfbuzz';
import { readLegacyKern, type LegacyKern } from './shaping/legacy-kern';

export type AxisValues = Record<string, number>;

/** A face, opened and set to its axis values. `facts` is plain data; the rest is for this process only. */
export type Face = {
  facts: FaceFacts;
  tables: Tables;
  harfbuzz: typeof HarfBuzz;
  font: HarfBuzz.Font;
  legacyKern: LegacyKern;
};

/**
 * Opens a face file: TTF, OTF (CFF), a collection, WOFF, WOFF2, static or variable.
 * `index` is the face's place in a collection; axes that are not named keep their usual value.
 * Throws FaceError and nothing else on bad bytes; may run long on hostile ones, so callers outside
 * the processes of lib/face/processes use inspectFace and buildPack, which can be cut off.
 */
export async function readFace(bytes: Uint8Array, options: { index?: number; axes?: AxisValues } = {}): Promise<Face> {
  const index = options.index ?? 0;
  const { sfnt, packing, sumHolds } = await openFile(bytes);
  const tables = readTables(sfnt, index);
  // Bare faces keep their sum (all 314 TTF and OTF files tried do), collections have none, and WOFF encoders let it go
  // stale.
  if (packing === 'none' && !sumHolds && !isCollection(sfnt))
    throw damaged('its bytes do not add up to the sum in its head');
  const unitsPerEm = checkHead(tables);
  const harfbuzz = await loadHarfBuzz();
  const face = new harfbuzz.Face(new harfbuzz.Blob(sfnt), index);
  if (face.upem !== unitsPerEm) throw damaged("its header can't be read");
  const font = new harfbuzz.Font(face);
  const axes = chosenAxes(face, options.axes ?? {});
  if (axes.length > 0) font.setVariations(axes.map((axis) => new harfbuzz.Variation(axis.tag, axis.value)));
  const legacyKern = readLegacyKern(tables);
  return {
    facts: readFacts({ harfbuzz, face, font, tables, axes, legacyKern, sumHolds }),
    tables,
    harfbuzz,
    font,
    legacyKern,
  };
}

function chosenAxes(face: HarfBuzz.Face, wanted: AxisValues): ChosenAxis[] {
  const axes = Object.values(face.getAxisInfos()).map((axis) => ({
    tag: axis.tag,
    least: axis.min,
    usual: axis.default,
    most: axis.max,
  }));
  for (const [tag, value] of Object.entries(wanted)) {
    const axis = axes.find((one) => one.tag === tag);
    if (!axis) {
      const has = axes.length > 0 ? `It has ${axes.map((one) => one.tag).join(', ')}.` : 'It is not a variable face.';
      throw new FaceError('bad-axis', `The face has no axis “${tag}”. ${has}`);
    }
    if (!(value >= axis.least && value <= axis.most)) {
      throw new FaceError(
        'bad-axis',
        `Axis “${tag}” can't be ${value}: this face goes from ${axis.least} to ${axis.most}.`,
      );
    }
  }
  return axes.map((axis) => ({ ...axis, value: wanted[axis.tag] ?? axis.usual }));
}
