import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { type CatalogueFace, listFaces, styleName } from '@/lib/face/catalogue';
import { inPixels } from '@/shared/exercise/sizes';
import { exerciseOnly } from '@/shared/schemas/exercise';
import type { Size } from '@/shared/schemas/spacing';
import { findExercise } from './exercises';

/** The faces that an exercise's specimens can be set in. */
export const listFacesFor = operation({
  name: 'list-faces-for-exercise',
  allow: 'exercise:plan',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const exercise = await findExercise(context, exerciseId);
    return { exercise: { id: exercise.id, title: exercise.title, state: exercise.state }, faces: faceChoices() };
  },
});

/** A face as the builder offers it. `choice` is the catalogue's key, with `@weight` behind it for a variable face. */
export type FaceChoice = {
  choice: string;
  family: string;
  style: string;
  weight: number;
  italic: boolean;
  design: string;
  licence: string;
};

/** All faces that every course may use, families in the catalogue's order. */
const faceChoices = (): FaceChoice[] => listFaces().flatMap(choicesOf);

/**
 * The file and the axis values of a choice at a size. Optical size follows the size, as in browsers (CSS Fonts 4,
 * font-optical-sizing).
 */
export function faceAt(
  choice: string,
  size: Size,
): { face: CatalogueFace; axes: Record<string, number>; weight: number; style: string } {
  const [key, weightText] = choice.split('@');
  const face = listFaces().find((one) => one.key === key);
  const known = face && choicesOf(face).find((one) => one.choice === choice);
  if (!face || !known)
    throw new AppError('INVALID', `There is no face “${choice}” here. Choose one from the list.`, {
      fields: { faces: `There is no face “${choice}” here.` },
    });
  const axes: Record<string, number> = {};
  for (const axis of face.axes) {
    if (axis.tag === 'wght' && weightText) axes.wght = Number(weightText);
    if (axis.tag === 'opsz') axes.opsz = Math.min(axis.most, Math.max(axis.least, inPixels(size)));
  }
  return { face, axes, weight: known.weight, style: known.style };
}

/** Weights that a variable face is offered in. */
const offeredWeights = [300, 400, 700, 900];

function choicesOf(face: CatalogueFace): FaceChoice[] {
  const { family, design, italic } = face;
  const common = { family, design, italic, licence: face.licence.name };
  const range = face.axes.find((axis) => axis.tag === 'wght');
  if (!range) return [{ ...common, choice: face.key, style: face.style, weight: face.weight }];
  return offeredWeights
    .filter((weight) => weight >= range.least && weight <= range.most)
    .map((weight) => ({ ...common, choice: `${face.key}@${weight}`, style: styleName(weight, italic), weight }));
}
