import type { Plugin } from 'vite'
import { importedFiles } from './script-sizes.ts'

interface PageAhead {
  /** Matches the page's address; what is in its groups stands for $1, $2 … in `asks`. */
  readonly address: string
  readonly file: string
  /** What the page reads first from the service. */
  readonly asks: readonly string[]
}

/** Pages that are often opened first, by their address: from a label, from the home screen. */
export const pagesOpenedFirst: readonly PageAhead[] = [
  {
    address: '^/([^/]+)/positions/([^/]+)/remount$',
    file: '/src/pages/mounts/remount-page.tsx',
    asks: [
      '/api/v1/session',
      '/api/v1/sites/$1/positions/$2/overview',
      '/api/v1/sites/$1/bearing-types?limit=200',
      '/api/v1/sites/$1',
    ],
  },
  {
    address: '^/([^/]+)/positions/([^/]+)$',
    file: '/src/pages/positions/position-page.tsx',
    asks: ['/api/v1/session', '/api/v1/sites/$1/positions/$2/overview'],
  },
  { address: '^/([^/]+)/flags$', file: '/src/pages/flags/flags-page.tsx', asks: ['/api/v1/session'] },
]

/**
 * Adds a small script that asks at once for what the page of this address needs, its files and what it reads first, together
 * with the files of the start instead of when the start has run.
 */
export function pagesAhead(): Plugin {
  return {
    name: 'pages-ahead',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk')
        const started = importedFiles(
          chunks.filter(({ isEntry }) => isEntry),
          chunks,
        )
        const table = pagesOpenedFirst.map(({ address, file, asks }) => {
          const page = chunks.find(({ facadeModuleId }) => facadeModuleId?.replaceAll('\\', '/').endsWith(file))
          if (!page) this.error(`There is no ${file} any more: mend the list in apps/web/bundle/pages-ahead.ts.`)
          const scripts = [...importedFiles([page], chunks)].filter((name) => !started.has(name))
          const needed = chunks.filter(({ fileName }) => scripts.includes(fileName))
          const styles = needed.flatMap((chunk) => [...(chunk.viteMetadata?.importedCss ?? [])])
          return { address, asks, scripts, styles }
        })
        const ahead = this.emitFile({ type: 'asset', name: 'ahead.js', source: scriptOf(table) })
        const index = bundle['index.html']
        if (index?.type !== 'asset') this.error('The build has no index.html.')
        const tag = `<script async src="/${this.getFileName(ahead)}"></script>`
        index.source = String(index.source).replace('</title>', `</title>\n    ${tag}`)
      },
    },
  }
}

interface PageFiles {
  address: string
  asks: readonly string[]
  scripts: string[]
  styles: string[]
}

function scriptOf(table: PageFiles[]): string {
  return `function ask(rel, as, href) {
  document.head.append(Object.assign(document.createElement('link'), { rel, as, crossOrigin: '', href }))
}
// where the pages lie on the device there is nothing to hurry
const pages = navigator.serviceWorker?.controller ? [] : ${JSON.stringify(table)}
for (const { address, asks, scripts, styles } of pages) {
  const found = new RegExp(address).exec(location.pathname)
  if (!found) continue
  for (const path of asks) ask('preload', 'fetch', path.replace(/\\$(\\d)/g, (_, group) => found[group]))
  for (const file of scripts) ask('modulepreload', 'script', '/' + file)
  for (const file of styles) ask('preload', 'style', '/' + file)
}
`
}
