import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { spacingOf } from '@/lib/rows/spacing';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { holdsOutlines, type SpacingFormat, spacingFormatSchema } from '@/shared/schemas/export';
import { idSchema } from '@/shared/schemas/id';
import { packSchema } from '@/shared/schemas/pack';
import { type ExportedSpacing, spacingCss, spacingJson, spacingSvg } from './spacing-formats';

const writers: Record<SpacingFormat, { mime: string; write: (exported: ExportedSpacing) => string }> = {
  svg: { mime: 'image/svg+xml', write: spacingSvg },
  css: { mime: 'text/css', write: spacingCss },
  json: { mime: 'application/json', write: spacingJson },
};

/**
 * One line of a proof as a file. Outlines are exported only once a person has confirmed that the licence of the face
 * allows it.
 */
export const exportSpacing = operation({
  name: 'export-spacing',
  allow: 'proof:see',
  input: z.strictObject({
    proofId: idSchema,
    specimenId: idSchema,
    as: spacingFormatSchema,
    licence: z._default(z.boolean(), false),
  }),
  run: async ({ data }, { proofId, specimenId, as, licence }) => {
    const proof = await data.proofs.byId(proofId);
    const item = proof?.items.find(({ specimenVersion }) => specimenVersion.specimen.id === specimenId);
    if (!proof || !item) throw notFound();
    const licenceText = await data.exports.licenceOf(item.specimenVersion.packSha);
    if (holdsOutlines[as] && !licence)
      throw new AppError(
        'INVALID',
        `These outlines belong to the face. Its licence: ${licenceText}. Tick that you have read it and that it allows this, then take the file again.`,
      );
    const { mime, write } = writers[as];
    const line: ExportedSpacing = {
      pack: z.parse(packSchema, JSON.parse(item.specimenVersion.pack.payload)),
      spacing: spacingOf(item),
      licence: licenceText,
      ...sizeAndGroundOf(item.specimenVersion),
    };
    return {
      text: write(line),
      mime,
      name: `line-${item.specimenVersion.specimen.position}-round-${proof.round.number}-proof-${proof.number}.${as}`,
    };
  },
});
