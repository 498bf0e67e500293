import { packSchema, type Pack } from './pack';

export class PackError extends Error {
  constructor(what: string) {
    super(`This is not a sound pack: ${what}.`);
    this.name = 'PackError';
  }
}

/** Checks a pack on reading: its shape, and that its parts agree with each other. Throws PackError. */
export function parsePack(value: unknown): Pack {
  const parsed = packSchema.safeParse(value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new PackError(`${issue?.path.join('.') || 'the whole'}: ${issue?.message ?? 'not as it should be'}`);
  }
  const pack = parsed.data;
  const pairs = pack.letters.length - 1;
  if (pack.text !== pack.text.normalize('NFC')) throw new PackError('its text is not in NFC');
  if (pack.builtIn.length !== pairs)
    throw new PackError(`${pack.letters.length} letters need ${pairs} built-in values, not ${pack.builtIn.length}`);
  if (pack.wordSpace.length !== pairs)
    throw new PackError(`${pack.letters.length} letters need ${pairs} word spaces, not ${pack.wordSpace.length}`);
  for (const index of [...pack.letters, ...Object.values(pack.control)]) {
    if (index !== null && (index < 0 || index >= pack.glyphs.length))
      throw new PackError(`it names glyph ${index}, but has ${pack.glyphs.length}`);
  }
  for (const run of pack.ligatures) {
    if (run.from < 0 || run.to <= run.from || run.to > pairs)
      throw new PackError(`a ligature from ${run.from} to ${run.to} is not in the line`);
  }
  if (pack.kind === 'font' && pack.face === null) throw new PackError('its kind is font, but no face is named');
  return pack;
}
