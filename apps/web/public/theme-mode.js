// Runs before the first paint, so that a dark page never flashes light. Keys and colours match src/lib/theme-mode.ts.
;(function () {
  var mode = null
  try {
    mode = localStorage.getItem('shaftbook.theme')
  } catch {
    mode = null
  }
  var dark = mode === 'dark' || (mode !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches)
  document.documentElement.setAttribute('data-mantine-color-scheme', dark ? 'dark' : 'light')
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', dark ? '#15191C' : '#F6F4EE')
})()
