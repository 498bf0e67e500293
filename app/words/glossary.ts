import type { GapMark } from '@/shared/line/shapes';

export type DrawnLine = {
  text: string;
  tracking?: number;
  /** Offsets from the first gap on; gaps not named are unchanged. */
  offsets?: number[];
  marks?: GapMark[];
  white?: 'between' | 'inside' | 'both';
  label?: string;
};

/** A small sheet of one or more lines in one face of the catalogue. */
export type Drawing = { face?: string; lines: DrawnLine[]; caption: string };

export type GlossaryWord = { id: string; word: string; meaning: string; drawing?: Drawing };

export const whiteWords: GlossaryWord[] = [
  {
    id: 'gap',
    word: 'Gap',
    meaning:
      'The white between two neighbouring letters, over their whole height. What counts is how much white there seems to be, not how near the letters come at one spot.',
    drawing: {
      lines: [{ text: 'HOLA', white: 'between', label: 'HOLA with the three gaps hatched' }],
      caption: 'Three gaps. H and O come nearest at one point only; L and A leave a bay.',
    },
  },
  {
    id: 'counter',
    word: 'Counter',
    meaning:
      'The white inside a letter, closed as in o or open as in n. An even line has gaps that sit well with its counters: wide counters ask for wide gaps.',
    drawing: {
      lines: [{ text: 'noble', white: 'inside', label: 'noble with the white inside its letters dotted' }],
      caption: 'The white inside the letters, dotted.',
    },
  },
  {
    id: 'loose',
    word: 'Too wide, too tight',
    meaning:
      'A gap is too wide when it opens a hole in the line, and too tight when the two letters clot into a spot. Both are seen beside the other gaps of the line.',
    drawing: {
      lines: [
        {
          text: 'HARBOUR',
          offsets: [0, 0, 0, 110],
          marks: [{ gap: 3, fault: 'wide', strength: 3 }],
          label: 'HARBOUR, too wide between B and O',
        },
        {
          text: 'HARBOUR',
          offsets: [0, 0, 0, -55],
          marks: [{ gap: 3, fault: 'tight', strength: 3 }],
          label: 'HARBOUR, too tight between B and O',
        },
        { text: 'HARBOUR', label: 'HARBOUR, even' },
      ],
      caption: 'B O too wide (the wedges point apart), too tight (the wedges point together), and even.',
    },
  },
  {
    id: 'misplaced',
    word: 'A letter out of place',
    meaning:
      'One gap too wide and the next too narrow is usually one fault: the letter between them is too far to one side.',
    drawing: {
      lines: [
        {
          text: 'MINUTE',
          offsets: [0, 70, -70],
          marks: [
            { gap: 1, fault: 'wide', strength: 2 },
            { gap: 2, fault: 'tight', strength: 2 },
          ],
          label: 'MINUTE with N too far right',
        },
      ],
      caption: 'The N is too far right.',
    },
  },
  {
    id: 'side',
    word: 'Side',
    meaning:
      'Each letter looks to its neighbours with two sides, and it is sides that are spaced, not letters. A side is straight (H), round (O), slanted (A, V), open (the right of L, both of T) or arched (the right of n). Two straight sides need the most room, two rounds less; slants and open sides come closest where they face into each other.',
    drawing: {
      lines: [{ text: 'HIOOLT', white: 'between', label: 'HIOOLT with hatched gaps' }],
      caption:
        'Straight to straight, straight to round, round to round, round to straight, and two open sides that face into each other.',
    },
  },
  {
    id: 'sidebearing',
    word: 'Sidebearing',
    meaning:
      'The room that a letter carries on each side of its ink. It comes with the face, so most pairs are right at reading sizes before you touch them.',
  },
  {
    id: 'display',
    word: 'Display size',
    meaning:
      'Large: a headline, a poster, a title. Most faces are spaced for reading, so the bigger they are set, the wider their gaps look. Faces or cuts made for display are already tighter.',
  },
];

export const numberWords: GlossaryWord[] = [
  {
    id: 'em',
    word: 'Em, and a thousandth of it',
    meaning:
      'An em is as long as the type is large: at 48 px it is 48 px. Distances between letters are counted in thousandths of it, so that a number means the same at every size. At 48 px, 20 thousandths are about one pixel.',
    drawing: {
      lines: [
        { text: 'AVOID', label: 'AVOID as the face sets it' },
        { text: 'AVOID', offsets: [-20], label: 'AVOID with A V 20 tighter' },
        { text: 'AVOID', offsets: [-60], label: 'AVOID with A V 60 tighter' },
      ],
      caption: 'A V as it comes, −20 and −60.',
    },
  },
  {
    id: 'kerning',
    word: 'Kerning',
    meaning: 'What differs from gap to gap. A V needs less room than H H in any line, in any tracking.',
  },
  {
    id: 'tracking',
    word: 'Tracking',
    meaning:
      'The same amount on every gap of a line. It makes a line tighter or wider and never more even, so it is stored and judged separately from kerning.',
    drawing: {
      lines: [
        { text: 'CINEMA', label: 'CINEMA as it comes' },
        { text: 'CINEMA', tracking: 90, label: 'CINEMA with 90 on every gap' },
      ],
      caption: 'No tracking, and +90 on every gap.',
    },
  },
  {
    id: 'offset',
    word: 'Built-in, offset, total',
    meaning:
      'Built-in is what the face itself does to a pair. Offset is what you add. Total is both together. Every number on these pages says which of the three it is.',
  },
  {
    id: 'apparent-gap',
    word: 'Apparent gap',
    meaning:
      'How open a pair looks, as a number: the gap between two straight stems that would hold as much white. Deep recesses count only as far as the eye reaches into them; what is hatched is what is counted. It describes a gap; whether the gap can close further is another matter.',
  },
  {
    id: 'area',
    word: 'Area',
    meaning:
      'The white that the apparent gap counts, as an area: the apparent gap times the height that is counted. It is the same figure in another unit, so only the apparent gap is given.',
  },
  {
    id: 'clearance',
    word: 'Clearance',
    meaning:
      'The nearest distance between two outlines. It warns of letters that touch; it says little about evenness.',
  },
  {
    id: 'stem-gap',
    word: 'Stem gap',
    meaning:
      'The white between two straight stems, H and H, of a face. Other distances are given as a share of it: “about a third of a stem gap wider than the rest of the line”.',
    drawing: {
      lines: [{ text: 'HH', white: 'between', label: 'Two letters H with the white between them hatched' }],
      caption: 'The stem gap of this face.',
    },
  },
];

export const lookingWords: GlossaryWord[] = [
  {
    id: 'threes',
    word: 'In threes',
    meaning:
      'Cover all but three letters and ask whether the middle one is in the middle. Move on by one. Every gap is seen between two others.',
    drawing: {
      lines: [{ text: 'GAR' }, { text: 'ARD' }, { text: 'RDE' }, { text: 'DEN' }],
      caption: 'GARDEN, three letters at a time.',
    },
  },
  {
    id: 'upside-down',
    word: 'On its head',
    meaning: 'Turn the line upside down. The word is gone, and only shapes and white are left.',
  },
  {
    id: 'blurred',
    word: 'Blurred or small',
    meaning: 'Half close your eyes, or step back. Holes and clots stay when the letters have gone grey.',
  },
  {
    id: 'reversed',
    word: 'Reversed',
    meaning:
      'Light letters on a dark ground. They seem to spread, so gaps look smaller and letters run together sooner. The ground of a line is part of the exercise.',
  },
  {
    id: 'only-white',
    word: 'Nothing but the white',
    meaning: 'Hide the letters and look at the shapes between them: are they equally heavy?',
  },
];

export const courseWords: GlossaryWord[] = [
  {
    id: 'exercise',
    word: 'Exercise and round',
    meaning:
      'An exercise is what the instructor posts. A round is one pass of it, with its own dates; notes follow each round, and the next round begins from your last spacing.',
  },
  {
    id: 'specimen',
    word: 'Line',
    meaning:
      'A text in one face, at one size, on one ground. What is right for it may be wrong at another size, in another weight or another face.',
  },
  {
    id: 'bench',
    word: 'Bench',
    meaning: 'Where you space a line. Every change is kept by itself, and undo reaches back to the beginning.',
  },
  {
    id: 'proof',
    word: 'Proof',
    meaning:
      'What you send to be criticised, with a sentence of reasoning. It never changes afterwards. The last one you send before marking starts is the one that counts, unless your instructor picks another.',
  },
  {
    id: 'reference',
    word: 'Reference and tolerance',
    meaning:
      'How an instructor spaced the same line, and how far a spacing may differ and still count as the same. There may be several; yours is compared with the nearest. Two spacings can both be right.',
  },
  {
    id: 'note',
    word: 'Note',
    meaning:
      'Critique that is pinned to a gap, to a run of gaps or to the whole line, sometimes with a suggested spacing. You can reply to it.',
  },
  {
    id: 'criterion',
    word: 'Criterion, level, mark',
    meaning:
      'What is judged, the steps it is judged in, and the judgement itself. A mark is given by a person. Where the arithmetic proposes one, it says so and shows how.',
  },
  { id: 'release', word: 'Release', meaning: 'The moment when notes and marks of a round go out, all together.' },
  {
    id: 'wall',
    word: 'Wall',
    meaning: 'The view for the projector, for looking at lines together. It shows no names.',
  },
];
