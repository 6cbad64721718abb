import { accessSync, constants, existsSync, readFileSync } from 'node:fs'
import { execFileSync } from 'node:child_process'
import { delimiter, join } from 'node:path'
import { chromium, type Browser, type LaunchOptions } from 'playwright-core'

const programs =
  process.platform === 'win32'
    ? ['chrome.exe', 'msedge.exe']
    : ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']

const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/** The system's Chromium or a browser of its family, or undefined where there is none. */
export function findChromium(path = process.env.PATH ?? ''): string | undefined {
  const inPath = path.split(delimiter).flatMap((folder) => programs.map((program) => join(folder, program)))
  return [...inPath, ...usualPlaces].find(isExecutable)
}

/**
 * The system's Chromium; on Debian, root installs the package where there is none.
 * @throws Error that says what to install where it can't be
 */
export function requireChromium(): string {
  const found = findChromium()
  if (found !== undefined) return found
  if (isDebian() && process.getuid?.() === 0) {
    console.log('Installing the package chromium for the browser tests')
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    execFileSync('apt-get', ['update', '--quiet=2'], { env, stdio: 'inherit' })
    execFileSync('apt-get', ['install', '--quiet=2', '--yes', '--no-install-recommends', 'chromium'], {
      env,
      stdio: 'inherit',
    })
  }
  const installed = findChromium()
  if (installed !== undefined) return installed
  throw new Error(missingChromium())
}

/** Opens the browser that all browser tests use, without a window and without traffic of its own. */
export function launchChromium(options: LaunchOptions = {}): Promise<Browser> {
  return chromium.launch({
    executablePath: requireChromium(),
    args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    ...options,
  })
}

function missingChromium(): string {
  const how = isDebian()
    ? 'run "apt-get install chromium" as root'
    : process.platform === 'linux'
      ? 'install the package "chromium" of this system'
      : 'install Chrome or Chromium in its usual place'
  return `The browser tests need Chromium and there is none on this machine: ${how}, then run the tests again.`
}

function isDebian(): boolean {
  return existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'))
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}
