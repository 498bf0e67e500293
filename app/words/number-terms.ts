import type { Term } from './terms';

export const numberTerms: Term[] = [
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
      'The same amount on every gap of a line. It makes a line tighter or wider and never more even, so it is kept apart from kerning and judged apart.',
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
      'How open a pair looks, as a number: the gap between two straight stems that would look as open as this pair. Near parts weigh more than far ones, and deep bays count only as far as one seems to see into them. It agrees with what professional designers do far better than plain area; it is evidence and not the answer.',
  },
  {
    id: 'area',
    word: 'Area',
    meaning:
      'The plain white between two letters, down to a stated depth, divided by its height. It is what people first think of, and it misleads with open letters.',
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
      'The white between two straight stems, H and H, of a face. Other distances are told as a share of it: “about a third of a stem gap wider than the rest of the line”.',
    drawing: {
      lines: [{ text: 'HH', white: 'between', label: 'Two letters H with the white between them hatched' }],
      caption: 'The stem gap of this face.',
    },
  },
];
