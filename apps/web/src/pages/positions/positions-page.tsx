export function PositionsPage() {
  return null
}
