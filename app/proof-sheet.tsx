import type { ReactNode } from 'react';
import { examplePack } from '@/lib/face/example-pack';
import type { GapMark, GapTie } from '@/shared/line/shapes';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { LineDrawing } from './_line/LineDrawing';
import { SheetFrame } from './_ui/SheetFrame';
import { FirstLine } from './first-line';

const LINE = 'WATERLAND';
const WHITE = { white: true, counters: true };
/** Set by eye for this page, as totals in 1/1000 em: the gaps of W A, A T, T E, E R, R L, L A, A N, N D. */
const BY_EYE = [-140, -112, 0, 0, 40, 34, 20, -5];
const TIES: GapTie[] = [
  { from: 0, to: 1, sign: '1' },
  { from: 4, to: 6, sign: '2' },
];
const MARKS: GapMark[] = [
  { gap: 0, fault: 'wide', strength: 3 },
  { gap: 1, fault: 'wide', strength: 2 },
  { gap: 4, fault: 'tight', strength: 2 },
  { gap: 5, fault: 'tight', strength: 2 },
];

/** The line of the first page, to be spaced by whoever comes. */
export async function LineToTry() {
  const pack = await examplePack('libre-baskerville-400', LINE);
  const start = spacingFor(
    pack,
    BY_EYE.map(() => 0),
  );
  return <FirstLine pack={pack} start={start} byEye={spacingFor(pack, BY_EYE)} />;
}

/** What it is all about, on one sheet: a line with uneven white and two notes, and the same line set again. */
export async function ProofSheet() {
  const pack = await examplePack('libre-baskerville-400', LINE);
  const before = spacingFor(
    pack,
    BY_EYE.map(() => 0),
  );
  const after = spacingFor(pack, BY_EYE);
  const room = Math.max(placeLetters(pack, before).width, placeLetters(pack, after).width);
  return (
    <div className="columns columns-margin">
      <SheetFrame
        ground="light"
        caption="Above, no pair is corrected; below, the line is set by eye. Hatch is the white between letters, dots the white inside them. Wedges pointing apart mean too wide, wedges pointing together too tight."
      >
        <LineDrawing
          pack={pack}
          spacing={before}
          room={room}
          marks={MARKS}
          ties={TIES}
          label={`${LINE} without corrected pairs: wide around the first A, narrow around L`}
          looks={WHITE}
        />
        <LineDrawing
          pack={pack}
          spacing={after}
          room={room}
          label={`${LINE} set by eye, its gaps even`}
          looks={WHITE}
        />
      </SheetFrame>
      <MarginNotes
        notes={[
          {
            sign: '1',
            place: 'W A T',
            body: 'Two holes before the word has begun. W and A slope alike, so they can come far closer than two stems; A and T leave a bay at the foot.',
          },
          {
            sign: '2',
            place: 'R L A N',
            body: 'The serifs at the foot nearly touch. Open these three, and the end of the word is as light as its middle.',
          },
        ]}
      />
    </div>
  );
}

/** A spacing that gives these totals, whatever the face's built-in spacing. */
function spacingFor(pack: Pack, totals: number[]): Spacing {
  return {
    tracking: 0,
    offsets: totals.map((total, gap) => total - Math.round((pack.builtIn[gap]! * 1000) / pack.unitsPerEm)),
  };
}

type MarginNote = {
  /** The sign at the end of its hairline. */
  sign: string;
  /** The letters it is about, e.g. 'W A'. */
  place: string;
  body: ReactNode;
  id?: string;
};

/**
 * Remarks beside a sheet, each labelled with the sign at the end of its hairline. They move below the sheet on a narrow
 * screen.
 */
function MarginNotes({ notes, label = 'Notes' }: { notes: MarginNote[]; label?: string }) {
  return (
    <ol className="margin-notes" role="list" aria-label={label}>
      {notes.map((note) => (
        <li key={note.sign} id={note.id}>
          <span className="margin-sign">{note.sign}</span>
          <span className="margin-place">{note.place}</span>
          <div>{note.body}</div>
        </li>
      ))}
    </ol>
  );
}
