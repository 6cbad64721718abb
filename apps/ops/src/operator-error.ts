/** Something the operator can mend. The message is one sentence: what is wrong, where, and what to do next. */
export class OperatorError extends Error {
  override name = 'OperatorError'
}

const folderProblems: Record<string, (folder: string) => string> = {
  ENOSPC: (folder) => `The disk that holds ${folder} is full: free some space and start again.`,
  EROFS: (folder) =>
    `${folder} is on a disk that can only be read: set SHAFTBOOK_DATA_DIR to a folder that can be written.`,
  EACCES: (folder) =>
    `${folder} can't be written by this user: change its owner, or set SHAFTBOOK_DATA_DIR to another folder.`,
  EPERM: (folder) =>
    `${folder} can't be written by this user: change its owner, or set SHAFTBOOK_DATA_DIR to another folder.`,
  ENOTDIR: (folder) =>
    `${folder} can't be a folder because a file is in its way: set SHAFTBOOK_DATA_DIR to another folder.`,
  EEXIST: (folder) =>
    `${folder} can't be a folder because a file is in its way: set SHAFTBOOK_DATA_DIR to another folder.`,
}

/** The error of a failed write in a folder as an OperatorError where its cause is known, else as it came. */
export function folderError(error: unknown, folder: string): unknown {
  const sentence = folderProblems[(error as NodeJS.ErrnoException).code ?? '']?.(folder)
  return sentence === undefined ? error : new OperatorError(sentence, { cause: error })
}
