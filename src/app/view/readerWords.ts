/** The second wording of a text for one reader, when it has one. */
interface ForReaders {
  readonly forBuilder?: string | undefined;
  readonly forDesigner?: string | undefined;
  readonly forTrainer?: string | undefined;
}

export function readerWords(text: ForReaders, role: 'builder' | 'designer' | 'trainer'): string {
  const own = { builder: text.forBuilder, designer: text.forDesigner, trainer: text.forTrainer };
  return own[role] ?? '';
}
