import { Notice } from '@/app/_ui/Notice';
import { meantTime } from '@/lib/exercise/local-time';

type Props = {
  round: {
    number: number;
    opensLocal: string | null;
    dueLocal: string | null;
    lateRule: { untilLocal: string | null };
  };
  timeZone: string;
};

/** After a round was saved: what had to be decided where the clocks change. Nothing on most days. */
export function ClockRemarks({ round, timeZone }: Props) {
  const times = [
    [round.opensLocal, 'opens'],
    [round.dueLocal, 'due'],
    [round.lateRule.untilLocal, 'due'],
  ] as const;
  const remarks = times.flatMap(([local, use]) => (local ? (meantTime(local, timeZone, use).remark ?? []) : []));
  return (
    <Notice live="polite" title={`Round ${round.number} is saved.`}>
      {remarks.length === 0 ? null : (
        <ul>
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
    </Notice>
  );
}
