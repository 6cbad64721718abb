export function StoresPage() {
  return null
}
