/** The build of the app: root in src/app, any sub-folder of any static host, no request to another host. */
import { resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { wordsPlugin } from './src/command/wordsPlugin.ts';

const repository = import.meta.dirname;

export default defineConfig({
  root: resolve(repository, 'src/app'),
  base: './',
  publicDir: resolve(repository, 'static'),
  plugins: [wordsPlugin(repository), svelte({ configFile: resolve(repository, 'svelte.config.js') })],
  build: { outDir: resolve(repository, 'dist'), emptyOutDir: true, assetsInlineLimit: 0, target: 'es2023' },
  server: { host: '127.0.0.1', fs: { allow: [repository] } },
  preview: { host: '127.0.0.1' },
});
