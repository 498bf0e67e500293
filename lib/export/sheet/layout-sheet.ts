import { withUnit } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import { baselineIn, below, later, Layout, type Place, type TextLine } from './layout';
import { layoutLine } from './layout-line';
import { layoutMarks } from './layout-marks';
import type { Element, Op, SheetPage } from './page';
import type { Columns } from './paper';
import type { Widths } from './setter';
import type { Sheet } from './sheet';
import { inks, styles } from './styles';

/** A student's critique sheet on pages: who and what, the marks, then line by line. Page numbers come later. */
export function layoutSheet(sheet: Sheet, columns: Columns, widths: Widths): SheetPage[] {
  const layout = new Layout(columns, widths);
  let at = below(head(layout, sheet), 10);
  if (sheet.snapshot.marks.length > 0) at = below(layoutMarks(layout, at, sheet.snapshot), 18);
  sheet.lines.forEach((drawing, index) => {
    const line =
      sheet.snapshot.lines.find(({ specimenVersionId }) => specimenVersionId === drawing.specimenVersionId) ?? null;
    at = layoutLine(layout, at, index + 1, line, drawing, sheet.answers);
  });
  const licences = [
    ...new Set(
      sheet.lines.map(
        ({ pack, licence }) => `${pack.face ? `${pack.face.family} ${pack.face.style}` : 'Lettering'}: ${licence}.`,
      ),
    ),
  ];
  layout.setLines(
    at,
    columns.left,
    licences.flatMap((licence) => layout.broken(licence, styles.small, inks.quiet, columns.mainWidth)),
  );
  return layout.pages;
}

/** The title and the reasoning on the left, the facts in the margin. */
function head(layout: Layout, sheet: Sheet): Place {
  const { columns } = layout;
  const round = `Round ${sheet.round.number}${sheet.round.title ? `, ${sheet.round.title}` : ''}`;
  const title = layout.setLines(
    layout.start,
    columns.left,
    layout.broken(sheet.exercise, styles.title, inks.ink, columns.mainWidth),
    'H1',
  ).after;
  const under = layout.setLines(
    title,
    columns.left,
    layout.broken(`Critique sheet \u00b7 ${round}`, styles.lead, inks.quiet, columns.mainWidth),
  ).after;
  const facts: [string, string][] = [
    ['Name', sheet.who],
    ['Course', sheet.course],
    ['Proof', `${sheet.proof}${sheet.received ? `, received ${sheet.received}` : ''}`],
    ['Release', sheet.state],
  ];
  const margin = facts.reduce(
    (at, [name, value]) => {
      const lines: TextLine[] = [
        ...layout.broken(name, styles.smallStrong, inks.quiet, columns.marginWidth),
        ...layout.broken(value, styles.note, inks.ink, columns.marginWidth),
      ];
      return below(layout.setLines(at, columns.marginLeft, lines).after, 3);
    },
    below(layout.start, 5),
  );
  const reasoning = sheet.reasoning
    ? layout.setLines(
        below(under, 8),
        columns.left,
        layout.broken(quoted(sheet.reasoning), styles.quote, inks.ink, columns.mainWidth),
      ).after
    : under;
  return later(reasoning, margin);
}

/** What else is on every page: whose sheet it is, its number, and a rule to check the print by. */
export function furniture(columns: Columns, running: string, number: string, widths: Widths): Op[] {
  const style = styles.small;
  const text = (words: string, x: number, y: number): Op => ({
    kind: 'text',
    x,
    y,
    text: words,
    style,
    ink: inks.quiet,
  });
  const fifty = (50 / 25.4) * 72;
  const [foot, tick] = [columns.height - 30, 2.5];
  return [
    text(running, columns.left, 36),
    text(number, columns.right - widths(number, style), 36),
    {
      kind: 'hairline',
      ink: inks.rule,
      width: 0.5,
      points: [
        [columns.left, foot - tick],
        [columns.left, foot],
        [columns.left + fifty, foot],
        [columns.left + fifty, foot - tick],
      ],
    },
    text(
      `This rule is ${withUnit(50, 'mm')} long when the page was printed at its true size (100%, not fitted to the paper).`,
      columns.left + fifty + 8,
      foot,
    ),
  ];
}

/** A text that fits on one line, shortened by whole letters and an ellipsis. */
export function shortened(text: string, width: number, widths: Widths): string {
  if (widths(text, styles.small) <= width) return text;
  let fitting = text;
  while (fitting.length > 1 && widths(`${fitting}…`, styles.small) > width) fitting = fitting.slice(0, -1);
  return `${fitting.trimEnd()}…`;
}

/** The contents of a class set: a name and a page each, each line leading to its sheet. */
export function layoutContents(
  title: string,
  lead: string,
  entries: readonly { who: string; page: number; place: string }[],
  columns: Columns,
  widths: Widths,
): SheetPage[] {
  const layout = new Layout(columns, widths);
  let at = layout.setLines(
    layout.start,
    columns.left,
    layout.broken(title, styles.title, inks.ink, columns.mainWidth),
    'H1',
  ).after;
  at = below(
    layout.setLines(at, columns.left, layout.broken(lead, styles.lead, inks.quiet, columns.mainWidth)).after,
    12,
  );
  const style = styles.lead;
  const width = 300;
  for (const { who, page, place } of entries) {
    at = layout.withRoom(at, style.leading);
    const number = String(page);
    const link: Element = {
      tag: 'Link',
      goTo: { name: place, says: `To the sheet of ${who}`, x: columns.left, y: at.y, width, height: style.leading },
      ops: [
        {
          kind: 'text',
          x: columns.left,
          y: at.y + baselineIn(style),
          text: `${shortenedTo(who, width - 40, widths)} `,
          style,
          ink: inks.ink,
        },
        {
          kind: 'text',
          x: columns.left + width - widths(number, style),
          y: at.y + baselineIn(style),
          text: number,
          style,
          ink: inks.ink,
        },
      ],
    };
    layout.add(at, { tag: 'TOCI', children: [link] });
    at = below(at, style.leading);
  }
  return layout.pages;
}

function shortenedTo(text: string, width: number, widths: Widths): string {
  let fitting = text;
  while (fitting.length > 1 && widths(fitting, styles.lead) > width) fitting = fitting.slice(0, -1);
  return fitting === text ? text : `${fitting.slice(0, -1).trimEnd()}…`;
}
