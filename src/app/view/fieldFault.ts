/** A fault of one field, as the summary above the questions lists it. */
export interface FieldFault {
  /** Id of the field to go to. */
  readonly id: string;
  readonly label: string;
  readonly message: string;
}
