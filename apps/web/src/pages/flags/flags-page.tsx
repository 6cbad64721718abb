export function FlagsPage() {
  return null
}
