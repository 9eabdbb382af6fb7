import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const { version } = JSON.parse(readFileSync(resolve(import.meta.dirname, '../package.json'), 'utf8'));

// Relative addresses, because the same build is served by the browser host and by the desktop shell's own protocol.
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  define: { __BACKSTAY_VERSION__: JSON.stringify(version) },
  resolve: { alias: { pdfkit: resolve(import.meta.dirname, '../node_modules/pdfkit/js/pdfkit.standalone.js') } },
  build: { outDir: resolve(import.meta.dirname, '../dist/renderer'), emptyOutDir: true, chunkSizeWarningLimit: 3000 },
});
