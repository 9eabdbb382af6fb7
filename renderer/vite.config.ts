import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// Relative addresses, because the same build is served by the browser host and by the desktop shell's own protocol.
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  resolve: { alias: { pdfkit: resolve(import.meta.dirname, '../node_modules/pdfkit/js/pdfkit.standalone.js') } },
  build: { outDir: resolve(import.meta.dirname, '../dist/renderer'), emptyOutDir: true, chunkSizeWarningLimit: 3000 },
});
