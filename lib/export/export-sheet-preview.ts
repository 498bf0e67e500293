import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { previewOf } from '@/lib/release/preview-release';
import { roundByNumber } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { paperSchema } from './sheet/paper';
import { askForLicence, sheetOf } from './sheet/sheet-of';
import { sheetPdf } from './sheet/write-pdf';

/** What would go out to one student as a sheet of paper, before it does; for those who release. It says that it is a preview. */
export const exportSheetPreview = operation({
  name: 'export-sheet-preview',
  allow: 'release:make',
  input: z.extend(roundByNumber, { proof: idSchema, paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, now }, { paper, licence, ...which }) => {
    const { entry, snapshot } = await previewOf(data, which, now);
    const sheet = await sheetOf(data, entry.proofId, {
      snapshot,
      answers: {},
      release: null,
      who: entry.shownAs,
      hidden: entry.hidden,
    });
    askForLicence(
      licence,
      sheet.lines.map((line) => line.licence),
    );
    return { pdf: sheetPdf(sheet, paper, now), name: `critique-round-${which.roundNumber}-preview.pdf` };
  },
});
