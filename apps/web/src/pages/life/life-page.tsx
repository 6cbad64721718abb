export function LifePage() {
  return null
}
