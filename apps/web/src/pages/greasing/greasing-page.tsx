export function GreasingPage() {
  return null
}
