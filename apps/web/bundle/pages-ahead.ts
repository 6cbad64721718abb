import type { Plugin } from 'vite'
import { importedFiles } from './script-sizes.ts'

/** Pages that are often opened first, by their address: from a label, from the home screen. */
const pages = [
  { address: '/positions/[^/]+/remount$', file: '/src/pages/mounts/remount-page.tsx' },
  { address: '/positions/[^/]+$', file: '/src/pages/positions/position-page.tsx' },
  { address: '/flags$', file: '/src/pages/flags/flags-page.tsx' },
]

/**
 * Adds a small script to the page that asks for the files of the page named by the address at once, together with those
 * of the start, instead of when the start has run.
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
        const table = pages.map(({ address, file }) => {
          const page = chunks.find(({ facadeModuleId }) => facadeModuleId?.replaceAll('\\', '/').endsWith(file))
          if (!page) this.error(`There is no ${file} any more: mend the list in apps/web/bundle/pages-ahead.ts.`)
          const scripts = [...importedFiles([page], chunks)].filter((name) => !started.has(name))
          const needed = chunks.filter(({ fileName }) => scripts.includes(fileName))
          return { address, scripts, styles: needed.flatMap((chunk) => [...(chunk.viteMetadata?.importedCss ?? [])]) }
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
  scripts: string[]
  styles: string[]
}

function scriptOf(table: PageFiles[]): string {
  return `function ask(rel, as, file) {
  document.head.append(Object.assign(document.createElement('link'), { rel, as, crossOrigin: '', href: '/' + file }))
}
for (const { address, scripts, styles } of ${JSON.stringify(table)}) {
  if (!new RegExp(address).test(location.pathname)) continue
  for (const file of scripts) ask('modulepreload', 'script', file)
  for (const file of styles) ask('preload', 'style', file)
}
`
}
