import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { compressedFiles } from './bundle/compressed-files.ts'
import { installable } from './bundle/installable.ts'
import { mantineStyles } from './bundle/mantine-styles.ts'
import { pagesAhead } from './bundle/pages-ahead.ts'
import { scriptBudget } from './bundle/script-budget.ts'

const apiAddress = 'http://127.0.0.1:4380'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), mantineStyles(), pagesAhead(), scriptBudget(), compressedFiles(), VitePWA(installable)],
  server: { host: '127.0.0.1', port: 4381, proxy: { '/api': apiAddress } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // The content security policy allows neither inline scripts nor data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'libraries', tags: ['$initial'], test: /node_modules/ },
            { name: 'start', tags: ['$initial'] },
          ],
        },
      },
    },
  },
})
