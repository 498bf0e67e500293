import type { ReleasedLine } from '@/shared/schemas/release';
import { lettersOf, spacedLetters } from '@/shared/critique/run';
import { numberText, signed, withUnit } from '@/shared/text/number';
import { findingText } from '@/shared/wording/finding-words';
import { below, later, type Layout, type Place, type TextLine } from './layout';
import { lineParts, type LinePart, type LineParts } from './line-parts';
import { noteWords, type NoteWords } from './note-words';
import { pointsOf } from './paper';
import type { Op } from './page';
import type { Sheet } from './sheet';
import { inks, styles } from './styles';

type Drawing = Sheet['lines'][number];
/** Where a tie begins: the middle of its first gap, over the letters, and the lane in which it runs. */
type Tie = { notes: NoteWords[]; x: number; end: number; lane: number };

const [laneHeight, bracket, padding] = [7.5, 6, 8];

/**
 * One line with its notes: heading, the line at true size, notes tied to their gaps, and the comparison with the
 * reference.
 */
export function layoutLine(
  layout: Layout,
  from: Place,
  number: number,
  line: ReleasedLine | null,
  drawing: Drawing,
  answers: Sheet['answers'],
): Place {
  const { columns } = layout;
  const parts = lineParts(drawing, columns);
  const notes = line ? noteWords(line, drawing, answers) : [];
  const heights = parts.parts.map((part) => heightOf(tiesOn(part, notes, parts), part, parts.notes));
  const head = headLines(layout, number, drawing, parts);
  const headHeight = head.reduce((sum, { style }) => sum + style.leading, 0) + 6;
  const at = layout.setLines(
    layout.withRoom(from, headHeight + heights[0]!),
    columns.left,
    head.slice(0, 1),
    'H2',
  ).after;
  let main = below(layout.setLines(at, columns.left, head.slice(1)).after, 6);
  let margin = main;
  parts.parts.forEach((part, index) => {
    main = layout.withRoom(main, heights[index]!);
    const ties = tiesOn(part, notes, parts);
    const drawn = drawPart(layout, main, part, drawing, ties, altOf(drawing, parts, index, notes), parts.notes);
    if (parts.notes === 'beside')
      margin = marginNotes(
        layout,
        later(margin, main),
        ties,
        index === 0 ? notes.filter(({ run }) => run === null) : [],
        main,
        drawn.lanes,
      );
    main = drawn.after;
  });
  if (line?.deviations)
    main = layout.setLines(
      main,
      columns.left,
      deviationLines(layout, line.deviations, drawing, columns.mainWidth),
    ).after;
  const usual = (line?.usual ?? []).flatMap((finding) =>
    layout.broken(findingText(finding), styles.small, inks.ink, columns.mainWidth),
  );
  if (usual.length > 0) main = layout.setLines(main, columns.left, usual).after;
  if (parts.notes === 'under')
    for (const note of notes)
      main = layout.setLines(below(main, 3), columns.left, noteLines(layout, note, underWidth)).after;
  return below(later(main, margin), 16);
}

const underWidth = 420;

function headLines(layout: Layout, number: number, { pack, size, ground }: Drawing, parts: LineParts): TextLine[] {
  const width = layout.columns.right - layout.columns.left;
  const face = pack.face ? `${pack.face.family} ${pack.face.style}` : 'Lettering';
  const asDrawn =
    size.unit === 'px' ? ` (${withUnit(pointsOf(size), 'pt', 2)} on paper, 1\u2009px being 0.75\u2009pt)` : '';
  return [
    ...layout.broken(`${number}\u00a0\u00a0${pack.text}`, styles.heading, inks.ink, width),
    ...layout.broken(
      `${face}, ${withUnit(size.value, size.unit, 2)}${asDrawn}, ${ground} ground`,
      styles.small,
      inks.quiet,
      width,
    ),
    ...(parts.remark ? layout.broken(parts.remark, styles.smallStrong, inks.ink, width) : []),
  ];
}

/** The ties of the notes that begin on this piece of the line, from left to right; notes on the same gaps share one. */
function tiesOn(part: LinePart, notes: readonly NoteWords[], { notes: placement }: LineParts): Tie[] {
  const at = new Map(part.gaps.map(({ index, x }) => [index, x]));
  const ties: Tie[] = [];
  for (const note of notes) {
    const x = note.run === null ? undefined : at.get(note.run.first);
    if (note.run === null || x === undefined) continue;
    const inside = part.gaps.filter(({ index }) => index <= note.run!.last);
    const end = inside.at(-1)?.x ?? x;
    const same = ties.find((tie) => tie.x === x && tie.end === end);
    if (same) same.notes.push(note);
    // Under a line that fills the page the signs are above their gaps; where they would touch, they are moved higher.
    else
      ties.push({
        notes: [note],
        x,
        end,
        lane:
          placement === 'beside' ? ties.length : x - (ties.at(-1)?.x ?? -100) < 22 ? (ties.at(-1)!.lane + 1) % 3 : 0,
      });
  }
  return ties;
}

const lanesOf = (ties: readonly Tie[]): number =>
  ties.length === 0 ? 0 : 1 + Math.max(...ties.map(({ lane }) => lane));
const spread = (placement: LineParts['notes']): number => (placement === 'beside' ? laneHeight : 10);

function heightOf(ties: readonly Tie[], part: LinePart, placement: LineParts['notes']): number {
  return (
    lanesOf(ties) * spread(placement) + (ties.length > 0 ? bracket + 2 : 0) + part.above + part.below + 2 * padding + 8
  );
}

/** Draws a piece of the line on its ground, with brackets over runs and ties that lead up from the gaps. */
function drawPart(
  layout: Layout,
  at: Place,
  part: LinePart,
  { ground }: Drawing,
  ties: readonly Tie[],
  alt: string,
  placement: LineParts['notes'],
): { after: Place; lanes: number[] } {
  const { columns } = layout;
  const lanes = lanesOf(ties);
  const groundTop = at.y + lanes * spread(placement) + (ties.length > 0 ? bracket : 0);
  const baseline = groundTop + padding + part.above;
  const bottom = baseline + part.below + padding;
  const x = columns.left;
  const ops: Op[] = [
    ...(ground === 'dark'
      ? [
          {
            kind: 'rect',
            x: x - padding,
            y: groundTop,
            width: part.width + 2 * padding,
            height: bottom - groundTop,
            ink: '#000000',
          } as const,
        ]
      : []),
    {
      kind: 'outline',
      ink: ground === 'dark' ? '#ffffff' : '#000000',
      commands: part.commands.map(({ letter, numbers }) => ({
        letter,
        numbers: numbers.map((value, index) => value + (index % 2 === 0 ? x : baseline)),
      })),
    },
  ];
  layout.add(at, { tag: 'Figure', alt, ops, bbox: [x, baseline - part.above, x + part.width, baseline + part.below] });
  const levels = ties.map(({ lane }) =>
    placement === 'beside' ? at.y + lane * laneHeight + 4 : groundTop - bracket - lane * 10,
  );
  ties.forEach((tie, index) => {
    const [left, right, level] = [x + tie.x, x + tie.end, levels[index]!];
    if (tie.end > tie.x)
      layout.furnish(
        at,
        hair([
          [left, groundTop + padding - 2],
          [left, groundTop + 1],
          [right, groundTop + 1],
          [right, groundTop + padding - 2],
        ]),
      );
    layout.furnish(
      at,
      hair([
        [left, tie.end > tie.x ? groundTop + 1 : groundTop + padding - 2],
        [left, level],
        ...(placement === 'beside' ? [[columns.left + columns.mainWidth, level] as const] : []),
      ]),
    );
    if (placement === 'under') layout.furnish(at, signAt(signsOf(tie), left + 2, level + 5));
  });
  return { after: { page: at.page, y: bottom + 8 }, lanes: levels };
}

/** Notes in the margin from `from` on; each tie is led on through the gutter to the first of its notes. */
function marginNotes(
  layout: Layout,
  from: Place,
  ties: readonly Tie[],
  whole: readonly NoteWords[],
  line: Place,
  levels: readonly number[],
): Place {
  const { columns } = layout;
  let at = from;
  for (const note of whole)
    at = below(layout.setLines(at, columns.marginLeft, noteLines(layout, note, columns.marginWidth)).after, 5);
  ties.forEach((tie, index) => {
    let met = false;
    for (const note of tie.notes) {
      const { after, first } = layout.setLines(at, columns.marginLeft, noteLines(layout, note, columns.marginWidth));
      const gutter = columns.left + columns.mainWidth;
      if (!met && first.page === line.page)
        layout.furnish(
          line,
          hair([
            [gutter, levels[index]!],
            [columns.marginLeft - 5, first.y + 6],
          ]),
        );
      else if (!met) layout.furnish(line, signAt(`${signsOf(tie)} overleaf`, gutter + 2, levels[index]! + 2.5));
      met = true;
      at = below(after, 5);
    }
  });
  return at;
}

const hair = (points: readonly (readonly [number, number])[]): Op => ({
  kind: 'hairline',
  points,
  ink: inks.tie,
  width: 0.5,
});
const signsOf = ({ notes }: Tie): string => notes.map(({ sign }) => sign).join('\u00b7');
const signAt = (text: string, x: number, y: number): Op => ({
  kind: 'text',
  x,
  y,
  text,
  style: styles.smallStrong,
  ink: inks.tie,
});

/** A note as it is printed: its number and letters, what it says, who says it, and what was answered. */
function noteLines(layout: Layout, note: NoteWords, width: number): TextLine[] {
  const tell = (text: string, style: TextLine['style'], ink: string, indent = 0) =>
    layout.broken(text, style, ink, width, indent);
  return [
    ...tell(`${note.sign}\u00a0\u00a0${note.where}`, styles.noteName, inks.tie),
    ...tell(note.body, styles.note, inks.ink),
    ...(note.suggestion ? tell(note.suggestion, styles.small, inks.ink) : []),
    ...(note.author ? tell(note.author, styles.small, inks.quiet) : []),
    ...note.thread.flatMap((entry) => tell(entry, styles.note, inks.ink, 10)),
  ];
}

function deviationLines(
  layout: Layout,
  deviations: NonNullable<ReleasedLine['deviations']>,
  { pack }: Drawing,
  width: number,
): TextLine[] {
  const letters = spacedLetters(pack);
  const outside = deviations.pairs.filter(({ within }) => !within);
  const by = deviations.author ? ` by ${deviations.author}` : '';
  const sentences = deviations.findings.filter(({ weight }) => weight !== 'fact').map(findingText);
  const figures = outside
    .map(({ index, rest }) => `${lettersOf(letters, { first: index, last: index })} ${signed(rest)}`)
    .join(', ');
  return [
    ...layout.broken(
      `Beside the reference${by}: ${outside.length === 0 ? 'every pair within tolerance.' : `${outside.length} of ${numberText(deviations.pairs.length)} pairs outside tolerance.`}`,
      styles.smallStrong,
      inks.ink,
      width,
    ),
    ...sentences.flatMap((sentence) => layout.broken(sentence, styles.small, inks.ink, width)),
    ...(figures
      ? layout.broken(`${figures} (1/1000 em, overall tracking discounted)`, styles.small, inks.quiet, width)
      : []),
  ];
}

/** The drawing in words, for those who do not see it. */
function altOf(
  { pack, size }: Drawing,
  { parts, remark }: LineParts,
  index: number,
  notes: readonly NoteWords[],
): string {
  const piece = parts.length > 1 ? `, piece ${index + 1} of ${parts.length}` : '';
  const pinned = notes.map(({ sign, where }) => `${sign} on ${where}`).join('; ');
  return `The line “${pack.text}” as it was sent${piece}, ${remark?.startsWith('Not') ? 'smaller than' : 'at'} its size of ${size.value} ${size.unit}. ${pinned ? `Notes: ${pinned}.` : 'No notes.'}`;
}
