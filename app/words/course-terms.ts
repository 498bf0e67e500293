import type { Term } from './terms';

export const courseTerms: Term[] = [
  {
    id: 'exercise',
    word: 'Exercise and round',
    meaning:
      'An exercise is what the instructor posts. A round is one pass of it, with its own dates; after each round come notes, and the next round begins from your last setting.',
  },
  {
    id: 'specimen',
    word: 'Specimen',
    meaning:
      'One line of text in one face, at one size, on one ground. What is right for it is not right at another size, another weight or in another face.',
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
      'How a teacher set the same line, and how far from it a setting may be and still be called the same. There may be several. Yours is compared with the nearest. Two settings can both be right.',
  },
  {
    id: 'note',
    word: 'Note',
    meaning:
      'Critique that is pinned to a gap, to a run of gaps or to the whole line, sometimes with a setting to look at. You can answer it.',
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
