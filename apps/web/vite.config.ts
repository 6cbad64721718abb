import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const apiAddress = 'http://127.0.0.1:4380'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
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
            { name: 'react', test: /node_modules[\\/](react|react-dom|scheduler|@tanstack)[\\/]/ },
            { name: 'mantine', test: /node_modules[\\/](@mantine|@floating-ui)[\\/]/ },
          ],
        },
      },
    },
  },
})
