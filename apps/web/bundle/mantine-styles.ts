import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { Plugin } from 'vite'

const stylesFolder = join(import.meta.dirname, '../../../node_modules/@mantine/core/styles')

/** Fails the build where a part of Mantine is used whose styles `src/ui/mantine-styles.ts` does not load. */
export function mantineStyles(): Plugin {
  return {
    name: 'mantine-styles',
    apply: 'build',
    writeBundle(_options, bundle) {
      const files = Object.values(bundle)
      const used = classes(files.map((file) => (file.type === 'chunk' ? file.code : '')).join())
      const styled = classes(files.map((file) => (file.type === 'asset' ? String(file.source) : '')).join())
      const missing = readdirSync(stylesFolder)
        .filter((name) => name.endsWith('.layer.css'))
        .filter((name) =>
          [...classes(readFileSync(join(stylesFolder, name), 'utf8'))].some(
            (each) => used.has(each) && !styled.has(each),
          ),
        )
      if (missing.length > 0) {
        const names = missing.map((name) => basename(name, '.layer.css')).sort()
        this.error(`Load the styles of ${names.join(', ')} in apps/web/src/ui/mantine-styles.ts: they are used.`)
      }
    },
  }
}

/** Mantine's class names in a text: they are hashes. */
function classes(text: string): Set<string> {
  return new Set(text.match(/\bm_[0-9a-f]{5,8}\b/g))
}
