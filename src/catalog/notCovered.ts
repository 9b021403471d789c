/** The normal result of asking a table for something that it does not hold; never a number. */
export interface NotCovered {
  readonly kind: 'notCovered';
  readonly reason: string;
  readonly deferTo: string;
}

export const notCovered = (reason: string, deferTo: string): NotCovered => ({
  kind: 'notCovered',
  reason,
  deferTo,
});
