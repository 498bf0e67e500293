import { Field, TextArea } from '@/app/_ui/Field';
import { RadioGroup } from '@/app/_ui/Select';
import type { Level, TypedCriterion } from '@/shared/schemas/criterion';
import { basisChoices } from '../setting-words';

/** Initial levels: three, lowest first. */
const startingLevels: Level[] = [
  { title: 'Not yet', description: '', points: 30 },
  { title: 'Mostly', description: '', points: 65 },
  { title: 'Fully', description: '', points: 100 },
];

/** Number of empty levels after the existing ones. */
const spare = 2;

/** The fields of a criterion, empty or as saved. */
export function CriterionFields({ criterion }: { criterion?: TypedCriterion }) {
  const levels = criterion?.levels ?? startingLevels;
  const rows: (Level | null)[] = [...levels, ...Array.from({ length: Math.min(spare, 8 - levels.length) }, () => null)];
  return (
    <>
      <Field
        name="title"
        label="Name"
        maxLength={80}
        defaultValue={criterion?.title}
        hint="What is judged, for example “Evenness”."
      />
      <TextArea
        name="description"
        label="Description"
        optional
        rows={2}
        defaultValue={criterion?.description}
        hint="Students read it with the brief."
      />
      <RadioGroup
        name="basis"
        label="What it rests on"
        choices={basisChoices}
        defaultValue={criterion?.basis ?? 'judgement'}
      />
      <Field
        name="weight"
        label="Weight"
        short
        inputMode="decimal"
        defaultValue={String(criterion?.weight ?? 1)}
        hint="Beside the other criteria’s: 2 counts twice as much as 1."
      />
      <fieldset className="field stack" id="field-levels">
        <legend>Levels, lowest first</legend>
        <p className="hint">
          At least two. Each is worth a percentage of the criterion’s weight. Empty rows are ignored.
        </p>
        {rows.map((level, index) => (
          <div className="level-fields" key={index}>
            <Field
              name={`levels.${index}.title`}
              label={`Level ${index + 1}`}
              required={index < 2}
              maxLength={60}
              defaultValue={level?.title}
            />
            <Field
              name={`levels.${index}.points`}
              label="Worth, in percent"
              required={index < 2}
              inputMode="decimal"
              defaultValue={level ? String(level.points) : undefined}
            />
            <TextArea
              name={`levels.${index}.description`}
              label="What it looks like"
              optional
              rows={1}
              defaultValue={level?.description}
            />
          </div>
        ))}
      </fieldset>
    </>
  );
}
