export function MountsPage() {
  return null
}
