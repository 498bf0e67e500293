import type { LineOfLetters } from '@/shared/exercise/pair-map';
import { type Pack, parsePack } from '@/shared/schemas/pack';
import { groundSchema, sizeSchema, type Spacing } from '@/shared/schemas/spacing';
import { type LineStart, specimenDetailsSchema } from '@/shared/schemas/specimen';
import { builtInSpacing } from './spacing';

type VersionRow = {
  id: string;
  number: number;
  text: string;
  packSha: string;
  size: number;
  unit: string;
  ground: string;
  details: string;
  pack: { payload: string; face?: { details: string } | null };
};
type SpecimenRow = { id: string; position: number; retiredAt: Date | null; versions: VersionRow[] };

/** A specimen by the version in use. */
export function specimenView(row: SpecimenRow) {
  const version = row.versions[0]!;
  return { id: row.id, position: row.position, retired: row.retiredAt !== null, ...versionView(version) };
}
export type SpecimenView = ReturnType<typeof specimenView>;

export function versionView(version: VersionRow) {
  const pack = readPack(version.packSha, version.pack.payload);
  return {
    versionId: version.id,
    number: version.number,
    text: version.text,
    size: sizeSchema.parse({ value: version.size, unit: version.unit }),
    ground: groundSchema.parse(version.ground),
    details: specimenDetailsSchema.parse(JSON.parse(version.details)),
    packSha: version.packSha,
    pack,
    /** The builder's name for it, e.g. `lato-700`; null for an uploaded face. */
    face: faceChoiceOf(version),
    pairCount: pack.letters.length - 1,
  };
}

/** What a version of a line begins from, where it is wrong on purpose; null: from the face's own. */
export const wrongStartOf = (version: { details: string }): LineStart | null =>
  specimenDetailsSchema.parse(JSON.parse(version.details)).start;

/** The spacing from which students begin a version of a line: one that is wrong on purpose, else the face's own. */
export function startOf(version: { details: string }, pairs: number): Spacing {
  const start = wrongStartOf(version);
  return start !== null && start.spacing.offsets.length === pairs ? start.spacing : builtInSpacing(pairs);
}

/** `Lato Bold`, or the kind of lettering. */
export const faceName = (pack: Pack): string =>
  pack.face === null ? 'Lettering' : `${pack.face.family} ${pack.face.style}`;

/** The clusters of a pack's line, and which pairs hold a space. */
export const lineOf = (pack: Pack): LineOfLetters => ({
  letters: pack.letters.map((glyph) => pack.glyphs[glyph]!.cluster),
  spaced: pack.wordSpace.map((space) => space > 0),
});

function faceChoiceOf({ pack: { face } }: VersionRow): string | null {
  const choice: unknown = face ? (JSON.parse(face.details) as { choice?: unknown }).choice : null;
  return typeof choice === 'string' ? choice : null;
}

/** Packs never change, so one that was checked once is cached: reading a long exercise again needs no parsing. */
const cache = new Map<string, Pack>();
const most = 400;

/** The pack in a row, checked on the way out. */
export function readPack(sha: string, payload: string): Pack {
  const there = cache.get(sha);
  if (there) return there;
  const pack = parsePack(JSON.parse(payload));
  if (cache.size >= most) cache.delete(cache.keys().next().value!);
  cache.set(sha, pack);
  return pack;
}
