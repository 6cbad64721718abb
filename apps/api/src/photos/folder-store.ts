import { mkdir, open, readFile, readdir, rename, rm, stat } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import { v7 as uuidv7 } from 'uuid'
import type { PhotoStore } from './photo-store.ts'
import { notKept, notRead } from './storage-error.ts'

const leftOverMs = 3_600_000

/** Photos as files below a folder, which is made with the first of them. */
export function openFolder(folder: string): PhotoStore {
  const root = resolve(folder)
  const unfinished = join(root, 'unfinished')
  let cleared: Promise<void> | undefined

  return {
    async put(key, bytes) {
      const file = join(root, key)
      const part = join(unfinished, uuidv7())
      try {
        await mkdir(unfinished, { recursive: true })
        await (cleared ??= clearLeftOvers(unfinished))
        await mkdir(dirname(file), { recursive: true })
        await writeWhole(part, bytes)
        await rename(part, file)
        await syncFolder(dirname(file))
      } catch (error) {
        cleared = undefined
        // what stays all the same is taken away as a left-over
        await rm(part, { force: true }).catch(() => undefined)
        throw notKept(error)
      }
    },
    async get(key) {
      try {
        return await readFile(join(root, key))
      } catch (error) {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined
        throw notRead(error)
      }
    },
  }
}

/** On the disk with all its bytes, not in memory only: a name is given to it after that. */
async function writeWhole(path: string, bytes: Buffer): Promise<void> {
  const file = await open(path, 'wx', 0o640)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}

async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}

/** Takes away what a service that was killed left half written. */
async function clearLeftOvers(unfinished: string): Promise<void> {
  for (const name of await readdir(unfinished)) {
    const path = join(unfinished, name)
    const found = await stat(path).catch(() => undefined)
    if (found && Date.now() - found.mtimeMs > leftOverMs) await rm(path, { force: true })
  }
}
