/** Served by src/command/wordsPlugin.ts from the checked Markdown of content/. */
declare module 'virtual:words' {
  export const words: import('../catalog/words.ts').Words;
}
