/** Reads a weather file away from the page, so that a large one does not freeze it. */
import { readWeather } from '../../weather/read.ts';
import { chunksOf } from './chunks.ts';
import type { WeatherReply, WeatherRequest } from './weatherMessages.ts';

const reply = (message: WeatherReply): void => {
  self.postMessage(message);
};

async function read({ file }: WeatherRequest): Promise<void> {
  try {
    const reading = await readWeather(chunksOf(file), file.size, {
      onprogress: (progress) => {
        reply({ kind: 'progress', ...progress });
      },
    });
    reply({ kind: 'done', reading });
  } catch (error) {
    reply({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

self.addEventListener('message', ({ data }: MessageEvent<WeatherRequest>) => {
  void read(data);
});
