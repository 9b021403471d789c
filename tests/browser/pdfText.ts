/** Reads the text of a PDF back, page by page, with a library that had no part in writing it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export async function pdfPages(bytes: Uint8Array): Promise<string[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
    .promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(
      items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' '),
    );
  }
  await document.destroy();
  return pages;
}
