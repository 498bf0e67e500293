import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { FaceError, quoted } from './face-error';
import { INSTALLED_FAMILIES, type Design, type InstalledFamily } from './families';
import { projectRoot } from './project-root';

type CatalogueAxis = { tag: string; least: number; usual: number; most: number };

/** One face file that comes with the product. */
export type CatalogueFace = {
  /** Never changes for a face once it is in use, e.g. `lato-700`, `lato-700-italic`, `fraunces-opsz`. */
  key: string;
  family: string;
  /** E.g. `Bold Italic`; of a variable face its usual instance. */
  style: string;
  weight: number;
  italic: boolean;
  design: Design;
  /** Axes of a variable face, empty for a static one. */
  axes: CatalogueAxis[];
  /** Absolute path of the file on this machine. */
  path: string;
  mime: 'font/woff2';
  licence: { name: string; text: string; attribution: string; url: string };
  /** The source of the face. */
  source: { package: string; version: string; url: string };
};

type Metadata = {
  id: string;
  variable: false | Record<string, { default: string; min: string; max: string }>;
  license: { type: string; url: string; attribution: string };
  source: string;
};

let read: CatalogueFace[] | undefined;

/** All installed faces, families in the order of families.ts, weights rising, upright before italic. */
export function listFaces(): readonly CatalogueFace[] {
  read ??= INSTALLED_FAMILIES.flatMap(facesOf);
  return read;
}

/** The face with this key. Throws `unknown-face` and says which keys are near. */
export function findFace(key: string): CatalogueFace {
  const face = listFaces().find((one) => one.key === key);
  if (face) return face;
  const near = listFaces()
    .filter((one) => one.key.startsWith(key.slice(0, 4)))
    .slice(0, 6)
    .map((one) => one.key);
  const hint =
    near.length > 0
      ? `Near it: ${near.join(', ')}.`
      : `For example: ${listFaces()
          .slice(0, 6)
          .map((one) => one.key)
          .join(', ')}.`;
  throw new FaceError('unknown-face', `No face ${quoted(key)} in the catalogue. ${hint}`);
}

function facesOf(installed: InstalledFamily): CatalogueFace[] {
  const folder = join(projectRoot(), 'node_modules', installed.package);
  const metadata = JSON.parse(readFileSync(join(folder, 'metadata.json'), 'utf8')) as Metadata;
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  const licence = {
    name: LICENCE_NAMES[metadata.license.type] ?? metadata.license.type,
    text: readFileSync(join(folder, 'LICENSE'), 'utf8'),
    attribution: metadata.license.attribution,
    url: metadata.license.url,
  };
  const source = { package: installed.package, version, url: metadata.source };
  const shared = { family: installed.family, design: installed.design, mime: 'font/woff2' as const, licence, source };
  return filesOf(installed, folder, metadata).map((file) => ({ ...shared, ...file }));
}

type FileFacts = Pick<CatalogueFace, 'key' | 'style' | 'weight' | 'italic' | 'axes' | 'path'>;

function filesOf(installed: InstalledFamily, folder: string, metadata: Metadata): FileFacts[] {
  const wanted = installed.axisSet
    ? new RegExp(`^${metadata.id}-latin-(${installed.axisSet})-(normal|italic)\\.woff2$`)
    : new RegExp(`^${metadata.id}-latin-(\\d+)-(normal|italic)\\.woff2$`);
  return readdirSync(join(folder, 'files'))
    .flatMap((name) => {
      const match = wanted.exec(name);
      if (!match) return [];
      const italic = match[2] === 'italic';
      const weight = installed.axisSet ? 400 : Number(match[1]);
      const key = `${metadata.id}-${match[1]}${italic ? '-italic' : ''}`;
      const axes = installed.axisSet ? axesOf(metadata, installed.axisSet) : [];
      return [{ key, style: styleName(weight, italic), weight, italic, axes, path: join(folder, 'files', name) }];
    })
    .sort((a, b) => a.weight - b.weight || Number(a.italic) - Number(b.italic));
}

/** The axes that a file of this set carries: `opsz` has weight and optical size, `full` has all. */
function axesOf(metadata: Metadata, set: NonNullable<InstalledFamily['axisSet']>): CatalogueAxis[] {
  return Object.entries(metadata.variable || {})
    .filter(([tag]) => tag !== 'ital' && (set === 'full' || tag === 'wght' || (set === 'opsz' && tag === 'opsz')))
    .map(([tag, axis]) => ({ tag, least: Number(axis.min), usual: Number(axis.default), most: Number(axis.max) }));
}

const LICENCE_NAMES: Record<string, string> = {
  'OFL-1.1': 'SIL Open Font License 1.1',
  'Apache-2.0': 'Apache License 2.0',
};

/** Usual names of the weight classes (OpenType specification, OS/2 table, usWeightClass). */
const WEIGHT_NAMES: Record<number, string> = {
  100: 'Thin',
  200: 'Extra Light',
  300: 'Light',
  400: 'Regular',
  500: 'Medium',
  600: 'Semi Bold',
  700: 'Bold',
  800: 'Extra Bold',
  900: 'Black',
};

/** `Bold Italic` for (700, true), `Italic` for (400, true). */
export function styleName(weight: number, italic: boolean): string {
  const name = WEIGHT_NAMES[weight] ?? `Weight ${weight}`;
  if (!italic) return name;
  return weight === 400 ? 'Italic' : `${name} Italic`;
}
