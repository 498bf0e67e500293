import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { readRelease } from '@/lib/release/read-release';
import { idSchema } from '@/shared/schemas/id';
import { paperSchema } from './sheet/paper';
import { askForLicence, sheetOf } from './sheet/sheet-of';
import { sheetPdf } from './sheet/write-pdf';

/** What was released from a proof as a sheet of paper: to its student, and to those who teach. */
export const exportSheet = operation({
  name: 'export-sheet',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema, paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, actor, now }, { proofId, paper, licence }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const release = await readRelease(data, proofId, actor.kind === 'person' && proof.member.userId === actor.userId);
    if (!release) throw notFound();
    const sheet = await sheetOf(data, proofId, {
      ...release,
      release,
      who: proof.member.user?.name ?? 'Erased person',
      hidden: false,
    });
    askForLicence(
      licence,
      sheet.lines.map((line) => line.licence),
    );
    return { pdf: sheetPdf(sheet, paper, now), name: `critique-round-${proof.round.number}-proof-${proof.number}.pdf` };
  },
});
