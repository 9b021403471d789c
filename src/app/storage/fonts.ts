/** The font files that go into the PDF: the same cuts as on screen, and the italic that only the record uses. */
import sansUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import sansItalicUrl from '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf?url';
import sansBoldUrl from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import serifUrl from '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf?url';
import type { PdfFonts } from '../../report/pdf.ts';

async function bytesOf(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`The font ${address} could not be read (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}

export async function readFonts(): Promise<PdfFonts> {
  const [sans, sansBold, sansItalic, serif] = await Promise.all(
    [sansUrl, sansBoldUrl, sansItalicUrl, serifUrl].map(bytesOf),
  );
  if (!sans || !sansBold || !sansItalic || !serif) throw new Error('A font of the record is missing.');
  return { sans, sansBold, sansItalic, serif };
}
