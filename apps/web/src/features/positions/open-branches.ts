const joint = '~'

/** Reads which branches of the tree are open: codes of areas and tags of machines. */
export function openBranches(text: string | undefined): ReadonlySet<string> {
  return new Set((text ?? '').split(joint).filter(Boolean))
}

/** The same branches with one opened or closed; undefined when none is open. */
export function toggledBranch(open: ReadonlySet<string>, branch: string): string | undefined {
  const next = new Set(open)
  if (!next.delete(branch)) next.add(branch)
  return next.size > 0 ? [...next].join(joint) : undefined
}
