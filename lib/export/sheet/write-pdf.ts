import { setImmediate as nextTurn } from 'node:timers/promises';
import { furniture, layoutSheet, shortened } from './layout-sheet';
import { newDocument, paintPage, widthsIn, type Struct } from './paint';
import type { SheetPage } from './page';
import { columnsOf, type Columns, type PaperName } from './paper';
import type { Widths } from './setter';
import type { Sheet } from './sheet';

/** A file as it is made: nothing is held back but what the reader has not taken yet. */
export type Pdf = ReadableStream<Uint8Array>;

type Doc = ReturnType<typeof newDocument>;

/**
 * Streams what `steps` have added to the document after each step, so that a slow reader slows the next step down.
 * After each step other requests get a turn: neither a database in this process nor a quick reader would give them one.
 * Once the reader has left, no further step is made, whether or not the last one had any output.
 */
export function streamed(doc: Doc, steps: AsyncIterable<void>): Pdf {
  let left = false;
  async function* bytes(): AsyncGenerator<Uint8Array, void> {
    for await (const _ of steps) {
      if (left) return;
      const chunk = doc.read() as Uint8Array | null;
      if (chunk !== null) yield chunk;
      await nextTurn();
    }
    doc.end();
    for await (const chunk of doc) yield chunk as Uint8Array;
  }
  const chunks = bytes();
  return new ReadableStream({
    async pull(controller) {
      const { done, value } = await chunks.next();
      if (left) return;
      if (done) controller.close();
      else controller.enqueue(value);
    },
    cancel() {
      left = true;
      void chunks.return();
    },
  });
}

/** One student's sheet. */
export function sheetPdf(sheet: Sheet, paper: PaperName, now: Date): Pdf {
  const columns = columnsOf(paper);
  const title = `Critique sheet: ${sheet.exercise}, round ${sheet.round.number}`;
  const doc = newDocument(
    title,
    `Notes and marks of proof ${sheet.proof}${sheet.preview ? ', a preview that was not released' : ''}`,
    now,
  );
  const widths = widthsIn(doc);
  async function* steps() {
    const root = doc.struct('Document');
    doc.addStructure(root);
    const pages = layoutSheet(sheet, columns, widths);
    pages.forEach((page, index) =>
      putPage(doc, root, page, { sheet, columns, widths, number: `${index + 1} of ${pages.length}` }),
    );
    root.end();
    yield;
  }
  return streamed(doc, steps());
}

type On = {
  sheet: Pick<Sheet, 'exercise' | 'round' | 'who' | 'preview'>;
  columns: Columns;
  widths: Widths;
  number: string;
  named?: string;
};

export function putPage(
  doc: Doc,
  parent: Struct,
  page: SheetPage,
  { sheet, columns, widths, number, named }: On,
): void {
  const running = shortened(
    `${sheet.exercise} \u00b7 Round ${sheet.round.number} \u00b7 ${sheet.who}${sheet.preview ? ' \u00b7 preview, not released' : ''}`,
    columns.right - columns.left - 80,
    widths,
  );
  paintPage(
    doc,
    parent,
    { ...page, furniture: [...page.furniture, ...furniture(columns, running, number, widths)] },
    columns,
    named,
  );
}
