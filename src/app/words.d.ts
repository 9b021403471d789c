/** Served by src/command/wordsPlugin.ts from the checked Markdown of content/. */
declare module 'virtual:words' {
  // An ambient module may not import by relative path, so the type is named in place.
  // eslint-disable-next-line @typescript-eslint/consistent-type-imports
  export const words: import('../catalog/words.ts').Words;
}
