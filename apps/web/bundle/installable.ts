import type { VitePWAOptions } from 'vite-plugin-pwa'

/**
 * The pages start without a network: everything that the build makes is laid down on the device, the API never is. A newer
 * version waits until the person takes it (src/lib/new-version.ts registers the worker).
 */
export const installable: Partial<VitePWAOptions> = {
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    id: '/',
    name: 'Shaftbook',
    short_name: 'Shaftbook',
    description: 'The book of every shaft position',
    lang: 'en',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    theme_color: '#F6F4EE',
    background_color: '#F6F4EE',
    icons: [
      { src: '/favicon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/icon-maskable.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,svg,woff2,wasm}'],
    navigateFallback: 'index.html',
    navigateFallbackDenylist: [/^\/api\//],
    maximumFileSizeToCacheInBytes: 5_000_000,
    cleanupOutdatedCaches: true,
  },
}
