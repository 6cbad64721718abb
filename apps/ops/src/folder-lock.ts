import { accessSync, constants, existsSync, mkdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { folderError, OperatorError } from './operator-error.ts'

const SQLITE_BUSY = 5

export type FolderLock = { release(): void }

/**
 * Takes a data folder for this process, making it where it is missing. The lock is the operating system's own on an
 * SQLite file: it ends with the process however that ends, so none is ever left behind.
 * @throws OperatorError when another process has the folder, or it can't be written
 */
export function lockFolder(folder: string): FolderLock {
  try {
    accessSync(nearestExisting(folder), constants.W_OK)
    // others may pass through (an unprivileged PostgreSQL must reach its folder below) but not look around
    mkdirSync(folder, { recursive: true, mode: 0o711 })
    accessSync(folder, constants.W_OK)
  } catch (error) {
    throw folderError(error, folder)
  }
  const file = new DatabaseSync(join(folder, 'lock'), { timeout: 0 })
  try {
    file.exec('pragma journal_mode = memory; begin exclusive')
  } catch (error) {
    file.close()
    if ((error as { errcode?: number }).errcode !== SQLITE_BUSY) throw error
    throw new OperatorError(
      `The data folder ${folder} is in use by another Shaftbook: stop that one, or set SHAFTBOOK_DATA_DIR to another folder.`,
    )
  }
  return { release: () => file.close() }
}

function nearestExisting(path: string): string {
  return existsSync(path) ? path : nearestExisting(dirname(path))
}
