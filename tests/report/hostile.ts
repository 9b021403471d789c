/** Names that do harm where text is not treated as text. */
/** What people and attackers type into a name. */
export const hostile: readonly (readonly [string, string])[] = [
  ['HTML', '<script>alert(1)</script><img src=x onerror=alert(1)>'],
  ['attributes', '" onmouseover="alert(1)" x="'],
  ['very long without a space', 'W'.repeat(200)],
  ['emoji', '🏠🏡 roof 👷‍♀️ 🇨🇦'],
  ['right to left', 'גג הבית ‮evil‬ سقف'],
  ['null and control characters', 'a\u0000b\u0007c\u001b[31m\nd\u2028e'],
  ['lone surrogate', 'a\ud800b\udc00c'],
  ['PDF syntax', '(x) >> endobj \\) /JavaScript << /S /JavaScript >>'],
  ['Markdown', '# a\n[b](javascript:alert(1)) ![c](d) `e` | f | <!-- -->'],
  ['stacked accents', `Z${'\u0301'.repeat(150)}`],
];
