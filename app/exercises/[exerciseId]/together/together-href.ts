/** The address of the lines of one text together; `oneSize` sets them all at one size. */
export const togetherHref = (exerciseId: string, text: string, oneSize = false): string =>
  `/exercises/${exerciseId}/together?text=${encodeURIComponent(text)}${oneSize ? '&at=one-size' : ''}`;
