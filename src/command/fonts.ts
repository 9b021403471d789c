/** The typefaces of the report, from their packages. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PdfFonts } from '../report/pdf.ts';

const require = createRequire(import.meta.url);
const font = (path: string): Uint8Array => readFileSync(require.resolve(`@expo-google-fonts/${path}`));

export const pdfFonts = (): PdfFonts => ({
  sans: font('source-sans-3/400Regular/SourceSans3_400Regular.ttf'),
  sansBold: font('source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
  sansItalic: font('source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf'),
  serif: font('source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
});
