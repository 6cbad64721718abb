export function SetupPage() {
  return null
}
