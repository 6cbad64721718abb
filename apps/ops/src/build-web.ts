import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, globSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OperatorError } from './operator-error.ts'

const root = join(fileURLToPath(import.meta.url), '../../../..')
/** The built dashboard, as the service serves it. */
export const webFolder = join(root, 'apps/web/dist')
const stamp = join(webFolder, '.sources')

/**
 * Builds the dashboard where it is missing or older than its sources.
 * @param signal ends the build early
 * @returns whether it had to be built
 * @throws OperatorError with the builder's words when the build fails
 */
export async function buildWeb(signal?: AbortSignal): Promise<boolean> {
  const wanted = sourcesHash()
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return false
  const fresh = `${webFolder}.new-${process.pid}`
  const { code, output } = await runVite(fresh, signal)
  if (code !== 0) throw new OperatorError(`The dashboard could not be built. The builder says:\n${output.trim()}`)
  writeFileSync(join(fresh, '.sources'), wanted)
  putInPlace(fresh)
  return true
}

/** Whoever serves the folder meanwhile never finds it half full. */
function putInPlace(fresh: string): void {
  const old = `${webFolder}.old-${process.pid}`
  if (existsSync(webFolder)) renameSync(webFolder, old)
  renameSync(fresh, webFolder)
  rmSync(old, { recursive: true, force: true })
}

function sourcesHash(): string {
  const patterns = [
    'apps/web/*.{ts,html,json}',
    'apps/web/{src,public,bundle}/**',
    'packages/*/src/**',
    'package-lock.json',
  ]
  const files = globSync(patterns, { cwd: root, withFileTypes: true }).filter((entry) => entry.isFile())
  const sum = createHash('sha256')
  for (const file of files.map((entry) => join(entry.parentPath, entry.name)).sort()) {
    sum.update(file.slice(root.length)).update('\0').update(readFileSync(file)).update('\0')
  }
  return sum.digest('hex')
}

function runVite(outDir: string, signal?: AbortSignal): Promise<{ code: number; output: string }> {
  const args = [
    join(root, 'node_modules/vite/bin/vite.js'),
    'build',
    'apps/web',
    '--outDir',
    outDir,
    '--logLevel',
    'warn',
  ]
  const { promise, resolve, reject } = Promise.withResolvers<{ code: number; output: string }>()
  const child = spawn(process.execPath, args, {
    cwd: root,
    // a run of tests says NODE_ENV=test, and what it builds is served afterwards
    env: { ...process.env, NO_COLOR: '1', NODE_ENV: 'production' },
    signal,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let output = ''
  child.stdout.on('data', (chunk: Buffer) => (output += chunk.toString()))
  child.stderr.on('data', (chunk: Buffer) => (output += chunk.toString()))
  child.on('error', reject)
  child.on('close', (code) => resolve({ code: code ?? 1, output }))
  return promise
}
