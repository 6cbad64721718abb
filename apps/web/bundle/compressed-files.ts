import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { Plugin } from 'vite'

const compressible = /\.(js|css|html|svg|json|webmanifest|wasm)$/
/** Below this a file fits into one packet either way. */
const smallestBytes = 1000

/** Lays a brotli and a gzip copy beside every file that shrinks by it, for the service to send. */
export function compressedFiles(): Plugin {
  return {
    name: 'compressed-files',
    apply: 'build',
    enforce: 'post',
    async writeBundle({ dir = '' }) {
      const names = readdirSync(dir, { recursive: true, encoding: 'utf8' }).filter((name) => compressible.test(name))
      await Promise.all(names.map((name) => compress(join(dir, name))))
    },
  }
}

async function compress(file: string): Promise<void> {
  const content = readFileSync(file)
  if (content.length < smallestBytes) return
  const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: content.length }
  writeFileSync(`${file}.br`, await promisify(brotliCompress)(content, { params }))
  writeFileSync(`${file}.gz`, await promisify(gzip)(content, { level: 9 }))
}
