import * as z from 'zod/mini';

/** Files of a round or of a proof that can be exported. Each is a part of its own address. */
export const exportKinds = [
  'agreement',
  'class',
  'class-set',
  'map',
  'marks',
  'notes',
  'oneroster',
  'released-notes',
  'sheet-previews',
  'sheets',
] as const;
export const exportKindSchema = z.enum(exportKinds);
export type ExportKind = z.infer<typeof exportKindSchema>;

/** Where a file of one exercise or proof is fetched. `asked` is what its address names besides. */
export function exportAddress(kind: ExportKind, id: string, asked: Readonly<Record<string, string>> = {}): string {
  const query = Object.entries(asked).map(([name, value]) => `${name}=${encodeURIComponent(value)}`);
  return `/api/exports/${kind}/${encodeURIComponent(id)}${query.length > 0 ? `?${query.join('&')}` : ''}`;
}

/** What one line of a proof can be exported as. */
export const spacingFormats = ['svg', 'css', 'json'] as const;
export const spacingFormatSchema = z.enum(spacingFormats, 'Choose svg, css or json.');
export type SpacingFormat = z.infer<typeof spacingFormatSchema>;

/** Outlines belong to the face: its licence is asked about before a file with outlines leaves. */
export const holdsOutlines: Readonly<Record<SpacingFormat, boolean>> = { svg: true, css: false, json: false };
