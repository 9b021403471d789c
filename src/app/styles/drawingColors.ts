/** The drawing's palettes as custom properties, so that a drawing follows the page's theme and prints in ink. */
import { palettes, type Palette } from '../../drawing/palette.ts';

const rules = (palette: Palette): string =>
  [
    ...Object.entries(palette.inks).map(([name, color]) => `--r-ink-${name}: ${color};`),
    ...Object.entries(palette.fills).map(([name, color]) => `--r-fill-${name}: ${color};`),
  ].join(' ');

export function installDrawingColors(page: Document): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`
    :root { ${rules(palettes.light)} }
    @media (prefers-color-scheme: dark) { :root:not([data-theme='light']) { ${rules(palettes.dark)} } }
    :root[data-theme='dark'] { ${rules(palettes.dark)} }
    @media print { :root, :root[data-theme='dark'], :root:not([data-theme='light']) { ${rules(palettes.print)} } }
  `);
  page.adoptedStyleSheets = [...page.adoptedStyleSheets, sheet];
}
