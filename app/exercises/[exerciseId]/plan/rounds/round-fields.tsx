import { DateTimeField, Field } from '@/app/_ui/Field';
import { RadioGroup } from '@/app/_ui/Select';
import { acceptChoices } from '../setting-words';

type Round = {
  title: string;
  opensLocal: string | null;
  dueLocal: string | null;
  lateRule: { accept: string; untilLocal: string | null; deductPerDay: number };
};

/** The fields of a round, empty or as saved. */
export function RoundFields({ round, timeZone }: { round?: Round; timeZone: string }) {
  return (
    <>
      <Field
        name="title"
        label="Name"
        optional
        maxLength={80}
        defaultValue={round?.title}
        hint="For example “After critique”. The number is added automatically."
      />
      <DateTimeField
        name="opensLocal"
        label="Opens"
        optional
        timeZone={timeZone}
        defaultValue={round?.opensLocal ?? undefined}
        hint="If empty, the first round opens when the exercise is published, and a later one for each student when the previous round is released to them."
      />
      <DateTimeField
        name="dueLocal"
        label="Due"
        optional
        timeZone={timeZone}
        defaultValue={round?.dueLocal ?? undefined}
        hint="The server’s clock on receipt decides. If empty, nothing is ever late."
      />
      <RadioGroup
        name="accept"
        label="Late proofs are"
        choices={acceptChoices}
        defaultValue={round?.lateRule.accept ?? 'always'}
      />
      <DateTimeField
        name="untilLocal"
        label="Last date for late proofs"
        optional
        timeZone={timeZone}
        defaultValue={round?.lateRule.untilLocal ?? undefined}
        hint="Only where late proofs are taken until a last date."
      />
      <Field
        name="deductPerDay"
        label="Taken off the mark for each day begun, in percent"
        short
        inputMode="decimal"
        defaultValue={String(round?.lateRule.deductPerDay ?? 0)}
        hint="0 takes nothing off. It is shown beside the mark, never hidden in it."
      />
    </>
  );
}
