import type { Term } from './terms';

export const whiteTerms: Term[] = [
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
    word: 'Too loose, too tight',
    meaning:
      'A gap is too loose when it falls out of the line as a hole, and too tight when the two letters clot into a spot. Both are seen beside the other gaps of the line.',
    drawing: {
      lines: [
        {
          text: 'HARBOUR',
          offsets: [0, 0, 0, 110],
          marks: [{ gap: 3, look: 'loose', strength: 3 }],
          label: 'HARBOUR, too loose between B and O',
        },
        {
          text: 'HARBOUR',
          offsets: [0, 0, 0, -55],
          marks: [{ gap: 3, look: 'tight', strength: 3 }],
          label: 'HARBOUR, too tight between B and O',
        },
        { text: 'HARBOUR', label: 'HARBOUR, even' },
      ],
      caption: 'B O too loose (the wedges turn away), too tight (the wedges meet), and even.',
    },
  },
  {
    id: 'misplaced',
    word: 'A letter out of place',
    meaning:
      'One gap too wide and the next too narrow is usually one fault: the letter between them stands too far to one side.',
    drawing: {
      lines: [
        {
          text: 'MINUTE',
          offsets: [0, 70, -70],
          marks: [
            { gap: 1, look: 'loose', strength: 2 },
            { gap: 2, look: 'tight', strength: 2 },
          ],
          label: 'MINUTE with N too far right',
        },
      ],
      caption: 'The N stands too far right.',
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
      'The room that a letter carries on each side of its ink. It comes with the face, and so most pairs are right for reading sizes before anybody touches them.',
  },
  {
    id: 'display',
    word: 'Display size',
    meaning:
      'Large: a headline, a poster, a title. Most faces are spaced for reading, so the bigger they are set the looser they look. Faces or cuts made for display are already tighter.',
  },
];
