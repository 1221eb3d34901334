import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'client',
  plugins: [react()],
  build: {
    outDir: '../dist/client',
    emptyOutDir: true,
    // The pages are served with "self" only: a font or picture inlined as data would be blocked.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2023',
  },
  server: {
    host: '127.0.0.1',
    proxy: { '/api': { target: 'http://127.0.0.1:4310' } },
  },
});
