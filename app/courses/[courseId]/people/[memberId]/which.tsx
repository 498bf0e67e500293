export type Which = { courseId: string; memberId: string };

/** The hidden fields that say whom a form is about. */
export function WhichFields({ courseId, memberId }: Which) {
  return (
    <>
      <input type="hidden" name="courseId" value={courseId} />
      <input type="hidden" name="memberId" value={memberId} />
    </>
  );
}
