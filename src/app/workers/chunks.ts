/** The bytes of a file in pieces, read with the browser's own stream. */
export async function* chunksOf(file: Blob): AsyncGenerator<Uint8Array, void> {
  // Not every browser can loop over a stream itself, so its reader is used.
  const reader = file.stream().getReader();
  try {
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) yield piece.value;
  } finally {
    await reader.cancel();
  }
}
