'use server';

import { addCriterion, changeCriterion, restoreCriterion, retireCriterion } from '@/lib/exercise/criteria';
import { addRound, changeRound, endExtension, extendRound, removeRound } from '@/lib/exercise/rounds';
import { setSectionDates } from '@/lib/exercise/section-dates';
import { addSpecimens, moveSpecimen, restoreSpecimen, retireSpecimen } from '@/lib/exercise/specimens';
import {
  changeExercise,
  closeExercise,
  removeExercise,
  reopenExercise,
  restoreExercise,
} from '@/lib/exercise/exercises';
import { changeSpecimen, previewSpecimenChange } from '@/lib/exercise/change-specimen';
import { setLineStart } from '@/lib/exercise/line-start';
import { publishExercise } from '@/lib/exercise/publish';
import { formAction } from '@/lib/http/form-action';
import { setSecondMarking } from '@/lib/review/second-marker';
import * as read from './read-forms';
import { specimen } from './read-forms';

const plan = ({ exerciseId }: { exerciseId: string }) => `/exercises/${exerciseId}/plan`;
const part = (name: string) => (result: { exerciseId: string }) => `${plan(result)}#${name}`;

export const changeExerciseAction = formAction(changeExercise, { read: read.exercise, then: part('brief') });
export const addRoundAction = formAction(addRound, {
  read: read.newRound,
  then: (result) => `${plan(result)}?round=${result.roundId}#rounds`,
});
export const changeRoundAction = formAction(changeRound, {
  read: read.round,
  then: (result) => `${plan(result)}?round=${result.roundId}#rounds`,
});
export const setSecondMarkingAction = formAction(setSecondMarking, {
  read: read.secondMarking,
  done: () => 'Saved. What was begun stays, whatever is chosen.',
});
export const removeRoundAction = formAction(removeRound, { read: read.roundAtVersion, then: part('rounds') });
export const extendRoundAction = formAction(extendRound, {
  read: read.extension,
  then: ({ exerciseId, roundId }) => `/exercises/${exerciseId}/plan/rounds/${roundId}`,
});
export const setSectionDatesAction = formAction(setSectionDates, {
  read: read.sectionDates,
  then: ({ exerciseId, roundId }) => `/exercises/${exerciseId}/plan/rounds/${roundId}#sections`,
});
export const endExtensionAction = formAction(endExtension, {
  read: read.only('extensionId'),
  done: () => 'The round’s own date holds again.',
});
export const addCriterionAction = formAction(addCriterion, { read: read.newCriterion, then: part('criteria') });
export const changeCriterionAction = formAction(changeCriterion, { read: read.criterion, then: part('criteria') });
export const retireCriterionAction = formAction(retireCriterion, {
  read: read.only('criterionId'),
  then: part('criteria'),
});
export const restoreCriterionAction = formAction(restoreCriterion, {
  read: read.only('criterionId'),
  then: part('criteria'),
});
export const addSpecimensAction = formAction(addSpecimens, {
  read: read.newSpecimens,
  then: (result) => `${plan(result)}?made=${result.specimenIds.length}#specimens`,
});
/** Stays on the page, so that several words can be added one after another. */
export const addFoundLineAction = formAction(addSpecimens, {
  read: read.newSpecimens,
  done: () => 'Added at the end of the exercise’s lines.',
});
export const changeSpecimenAction = formAction(changeSpecimen, {
  read: read.specimenAtVersion,
  then: part('specimens'),
});
export const moveSpecimenAction = formAction(moveSpecimen, { read: read.move, done: () => '' });
export const setLineStartAction = formAction(setLineStart, {
  read: read.lineStart,
  done: ({ begins }) =>
    begins === 'built-in'
      ? 'Saved. Students will begin from the face’s own spacing.'
      : 'Saved. Students will begin from this.',
});
export const retireSpecimenAction = formAction(retireSpecimen, {
  read: read.only('specimenId'),
  then: part('specimens'),
});
export const restoreSpecimenAction = formAction(restoreSpecimen, {
  read: read.only('specimenId'),
  then: part('specimens'),
});
export const publishExerciseAction = formAction(publishExercise, {
  read: read.atVersion,
  then: ({ exerciseId }) => `/exercises/${exerciseId}?published=1`,
});
export const closeExerciseAction = formAction(closeExercise, {
  read: read.atVersion,
  then: ({ exerciseId }) => `/exercises/${exerciseId}`,
});
export const reopenExerciseAction = formAction(reopenExercise, {
  read: read.atVersion,
  then: ({ exerciseId }) => `/exercises/${exerciseId}`,
});
export const removeExerciseAction = formAction(removeExercise, { read: read.atVersion, then: plan });
export const restoreExerciseAction = formAction(restoreExercise, { read: read.atVersion, then: plan });

/** Tries the change without making it; what was typed is passed to the page that shows its effect. */
export const previewChangeAction = formAction(previewSpecimenChange, {
  read: specimen,
  then: (_result, form) => {
    const typed = new URLSearchParams(
      ['text', 'face', 'size', 'ground', 'remark', 'number'].map((name) => [name, String(form.get(name) ?? '')]),
    );
    return `/exercises/${String(form.get('exerciseId'))}/plan/specimens/${String(form.get('specimenId'))}/change?${typed.toString()}`;
  },
});
