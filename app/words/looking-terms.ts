import type { Term } from './terms';

export const lookingTerms: Term[] = [
  {
    id: 'threes',
    word: 'In threes',
    meaning:
      'Cover all but three letters and ask whether the middle one stands in the middle. Move on by one. Every gap is seen between two others.',
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
    meaning: 'Half close your eyes, or stand back. Holes and clots stay when the letters have gone grey.',
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
