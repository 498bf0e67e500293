import { furniture, layoutContents, layoutSheet, shortened } from './layout-sheet';
import type { Element } from './page';
import { newDocument, paintPage, type Struct, widthsIn } from './paint';
import { columnsOf, type PaperName } from './paper';
import type { Sheet } from './sheet';
import { putPage, streamed, type Pdf } from './write-pdf';

export type ClassSet = {
  course: string;
  exercise: string;
  roundNumber: number;
  /** Who is in it, in order; `read` brings one sheet, and is asked twice: to count its pages and to draw them. */
  students: readonly { who: string; read: () => Promise<Sheet> }[];
};

/**
 * The sheets of a class in one file, with contents and bookmarks. One sheet is in memory at a time: pages are counted
 * first, then drawn, since the contents come first.
 */
export function classSetPdf({ course, exercise, roundNumber, students }: ClassSet, paper: PaperName, now: Date): Pdf {
  const columns = columnsOf(paper);
  const doc = newDocument(
    `Critique sheets: ${exercise}, round ${roundNumber}`,
    `${course}: the sheets of ${students.length} students`,
    now,
  );
  const widths = widthsIn(doc);
  const lead = `${exercise} \u00b7 Round ${roundNumber} \u00b7 ${course}`;
  const contentsOf = (starts: readonly number[]) =>
    layoutContents(
      'Critique sheets',
      lead,
      students.map(({ who }, index) => ({ who, page: starts[index] ?? 0, place: `sheet-${index + 1}` })),
      columns,
      widths,
    );
  async function* steps() {
    const front = contentsOf([]).length;
    const starts: number[] = [];
    let next = front + 1;
    for (const { read } of students) {
      starts.push(next);
      next += layoutSheet(await read(), columns, widths).length;
      yield;
    }
    const last = next - 1;
    const root = doc.struct('Document');
    doc.addStructure(root);
    const contents = doc.struct('Sect');
    root.add(contents);
    // One list for all entries, however many pages it takes; it comes after the heading.
    let list: Struct | null = null;
    const partOfContents = (tag: Element['tag']): Struct => {
      if (tag !== 'TOCI') return contents;
      if (!list) contents.add((list = doc.struct('TOC')));
      return list;
    };
    contentsOf(starts).forEach((page, index) =>
      paintPage(
        doc,
        partOfContents,
        {
          ...page,
          furniture: [
            ...page.furniture,
            ...furniture(
              columns,
              shortened(lead, columns.right - columns.left - 80, widths),
              `${index + 1} of ${last}`,
              widths,
            ),
          ],
        },
        columns,
      ),
    );
    (list as Struct | null)?.end();
    contents.end();
    for (const [index, { who, read }] of students.entries()) {
      const sheet = await read();
      const section = doc.struct('Sect', { title: who });
      root.add(section);
      for (const [at, page] of layoutSheet(sheet, columns, widths).entries()) {
        putPage(doc, section, page, {
          sheet,
          columns,
          widths,
          number: `${starts[index]! + at} of ${last}`,
          named: at === 0 ? `sheet-${index + 1}` : undefined,
        });
        if (at === 0) doc.outline.addItem(who);
        yield;
      }
      section.end();
    }
    root.end();
  }
  return streamed(doc, steps());
}
