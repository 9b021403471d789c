/** The build of the app: root in src/app, any sub-folder of any static host, no request to another host. */
import { resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { wordsPlugin } from './src/command/wordsPlugin.ts';

const repository = import.meta.dirname;

const unused = resolve(repository, 'src/app/storage/unused.ts');

export default defineConfig({
  root: resolve(repository, 'src/app'),
  base: './',
  publicDir: resolve(repository, 'static'),
  plugins: [wordsPlugin(repository), svelte({ configFile: resolve(repository, 'svelte.config.js') })],
  // jsPDF offers to draw whole pages as pictures; the record never does, so those parts stay out of dist.
  resolve: { alias: { html2canvas: unused, canvg: unused } },
  build: {
    outDir: resolve(repository, 'dist'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    target: 'es2023',
    // The large tables stay out of the first load: without this they would sit in the entry, which shares their users.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [{ name: 'places', test: /content[\\/]tables[\\/](places|counties)\.json$/ }],
        },
      },
    },
  },
  worker: { format: 'es' },
  server: { host: '127.0.0.1', fs: { allow: [repository] } },
  preview: { host: '127.0.0.1' },
});
