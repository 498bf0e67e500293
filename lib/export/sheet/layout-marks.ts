import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { withUnit } from '@/shared/text/number';
import { baselineIn, below, type Layout, type Place } from './layout';
import type { Element, Op } from './page';
import { inks, styles } from './styles';

/** The marks as a table, then how the total is computed. */
export function layoutMarks(
  layout: Layout,
  from: Place,
  { marks, total }: Pick<ReleaseSnapshot, 'marks' | 'total'>,
): Place {
  const { columns } = layout;
  let at = layout.setLines(
    from,
    columns.left,
    layout.broken(
      total.after === null
        ? 'Marks. Not every criterion has been marked, so there is no total.'
        : `Marks, total ${withUnit(total.after, '%', 1)}`,
      styles.heading,
      inks.ink,
      columns.mainWidth,
    ),
    'H2',
  ).after;
  const rows = marks.map(({ title, weight, level, levels }): string[] => {
    const given = level === null ? null : levels[level];
    return [
      title,
      given ? `${given.title} (${level! + 1} of ${levels.length})` : 'not marked',
      given?.description ?? '',
      given ? withUnit(given.points, '%') : '–',
      String(weight),
    ];
  });
  at = table(layout, below(at, 4), ['Criterion', 'Level', 'What it means', 'Points', 'Weight'], rows);
  const steps = [...total.arithmetic, ...(total.late ? [total.late] : [])];
  return layout.setLines(
    below(at, 4),
    columns.left,
    steps.flatMap((step) => layout.broken(step, styles.small, inks.quiet, columns.mainWidth)),
  ).after;
}

/** Shares of the main column; the last two hold numbers. */
const shares = [0.24, 0.24, 0.36, 0.08, 0.08];

function table(layout: Layout, from: Place, names: readonly string[], rows: readonly (readonly string[])[]): Place {
  const { columns } = layout;
  let at = from;
  let open: { page: number; element: Element } | null = null;
  for (const [index, cells] of [names, ...rows].entries()) {
    const style = index === 0 ? styles.smallStrong : styles.cell;
    const broken = cells.map((cell, column) =>
      layout.broken(
        cell,
        column === 0 && index > 0 ? styles.cellStrong : style,
        index === 0 ? inks.quiet : inks.ink,
        shares[column]! * columns.mainWidth - 8,
      ),
    );
    const height = Math.max(...broken.map((lines) => lines.length)) * style.leading + 5;
    at = layout.withRoom(at, height);
    if (!open || open.page !== at.page) {
      open = { page: at.page, element: { tag: 'Table', children: [] } };
      layout.add(at, open.element);
    }
    open.element.children!.push({
      tag: 'TR',
      children: broken.map((lines, column) => cellAt(layout, at, lines, column, index === 0)),
    });
    layout.furnish(at, {
      kind: 'hairline',
      ink: inks.rule,
      width: index === 0 ? 0.75 : 0.35,
      points: [
        [columns.left, at.y + height - 2],
        [columns.left + columns.mainWidth, at.y + height - 2],
      ],
    });
    at = below(at, height);
  }
  return at;
}

function cellAt(
  layout: Layout,
  at: Place,
  lines: ReturnType<Layout['broken']>,
  column: number,
  isHead: boolean,
): Element {
  const { columns } = layout;
  const before = shares.slice(0, column).reduce((sum, share) => sum + share, 0) * columns.mainWidth;
  const end = columns.left + before + shares[column]! * columns.mainWidth;
  const ops = lines.map(({ text, style, ink }, row): Op => ({
    kind: 'text',
    text,
    style,
    ink,
    y: at.y + row * style.leading + baselineIn(style),
    x: column >= 3 ? end - layout.widths(text.trimEnd(), style) : columns.left + before,
  }));
  return isHead
    ? { tag: 'TH', scope: 'Column', ops }
    : column === 0
      ? { tag: 'TH', scope: 'Row', ops }
      : { tag: 'TD', ops };
}
