// @ts-check
// The first thing that runs on a fresh clone, on whatever Node the machine has: plain JavaScript of 2019, no
// dependencies. It installs what is missing, generates the database client and hands over to the pinned Node.
//
//   node apps/ops/bootstrap.mjs <command> [arguments]    runs apps/ops/src/commands/<command>.ts after setting up
//   node apps/ops/bootstrap.mjs setup                    only sets up
//   node apps/ops/bootstrap.mjs stamp                    notes that an install is complete (npm's postinstall)
import { spawn, spawnSync } from 'child_process'
import { createHash } from 'crypto'
import fs from 'fs'
import os from 'os'
import path from 'path'
import { fileURLToPath } from 'url'

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..')
const nodeModules = path.join(root, 'node_modules')
const lockFile = path.join(root, 'package-lock.json')
const installStamp = path.join(nodeModules, '.shaftbook-lock')
const schemaFile = path.join(root, 'prisma', 'schema.prisma')
const clientFolder = path.join(root, 'prisma', 'client')
const clientStamp = path.join(clientFolder, '.shaftbook-schema')
const bytesNeeded = 1.1e9
const pinnedNode = path.join(nodeModules, 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node')

/**
 * A sentence when this Node is too old to install Shaftbook with, else undefined.
 * @param {string} version as in process.versions.node, such as "20.19.0"
 * @returns {string | undefined}
 */
export function nodeVersionProblem(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  if (major > 20 || (major === 20 && minor >= 19)) return undefined
  return `Shaftbook needs Node 20.19 or newer and this is Node ${version}: install a newer Node and run the command again.`
}

/**
 * Why packages must be installed, or undefined when they are as package-lock.json says.
 * @param {{ lockHash: string, stamp: string | undefined, hasPinnedNode: boolean }} state
 * @returns {string | undefined}
 */
export function installReason(state) {
  if (state.stamp === undefined) return 'no finished install here yet'
  if (state.stamp !== state.lockHash) return 'package-lock.json has changed'
  if (!state.hasPinnedNode) return 'the pinned Node is missing'
  return undefined
}

/**
 * What went wrong in `npm ci`, in one sentence that says what to do next.
 * @param {string} output what npm wrote to its error stream
 * @param {string} folder
 * @returns {string}
 */
export function installFailure(output, folder) {
  if (/ENOSPC|no space left/i.test(output)) {
    return `The disk that holds ${folder} is full: free more than 1 GB and run the command again.`
  }
  if (/EROFS|EACCES|EPERM|read-only file system/i.test(output)) {
    return `Packages can't be written to ${folder}: make the folder writable for ${os.userInfo().username}, or clone Shaftbook to one that is, and run the command again.`
  }
  if (/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|network/i.test(output)) {
    return "The packages can't be fetched because the npm registry does not answer: connect this machine to the network (or set npm's proxy) and run the command again."
  }
  if (/EUSAGE|in sync/i.test(output)) {
    return 'package.json and package-lock.json do not belong together: restore both from the repository and run the command again.'
  }
  return 'npm could not install the packages: its message above says why. Run the command again when that is mended.'
}

/** @param {string} command */
function commandFile(command) {
  return path.join(root, 'apps', 'ops', 'src', 'commands', `${command}.ts`)
}

/** @param {string[]} parts */
function hash(parts) {
  const sum = createHash('sha256')
  for (const part of parts) sum.update(part).update('\0')
  return sum.digest('hex')
}

/** @param {string} file */
function readIfThere(file) {
  return fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : undefined
}

function lockHash() {
  return hash([fs.readFileSync(lockFile, 'utf8')])
}

/**
 * @param {string} sentence
 * @returns {never}
 */
function fail(sentence) {
  console.error(`\n${sentence}`)
  process.exit(1)
}

/**
 * Says every 15 s that a long step is still running.
 * @param {string} what
 */
function heartbeat(what) {
  const began = Date.now()
  const timer = setInterval(
    () => console.log(`     still ${what} (${Math.round((Date.now() - began) / 1000)} s)`),
    15000,
  )
  return () => {
    clearInterval(timer)
    return ((Date.now() - began) / 1000).toFixed(1)
  }
}

async function install() {
  const reason = installReason({
    lockHash: lockHash(),
    stamp: readIfThere(installStamp),
    hasPinnedNode: fs.existsSync(pinnedNode),
  })
  if (reason === undefined) return
  const problem = placeProblem(root)
  if (problem !== undefined) fail(installFailure(problem, root))
  console.log(`Installing packages (${reason}; this takes about a minute)`)
  const done = heartbeat('installing')
  const result = await runNpm(['ci', '--no-audit', '--no-fund', '--loglevel=error', '--ignore-scripts=false'])
  const seconds = done()
  if (result.code !== 0) fail(installFailure(result.errors, root))
  console.log(`     done in ${seconds} s`)
}

/**
 * Why a folder can't take the packages, in the system's words, else undefined.
 * @param {string} folder
 */
function placeProblem(folder) {
  try {
    fs.accessSync(folder, fs.constants.W_OK)
  } catch (error) {
    return String(error)
  }
  // a disk that fills up half way makes npm fail in words that do not say so
  const { bavail, bsize } = fs.statfsSync(folder)
  const replaced = fs.existsSync(nodeModules) ? bytesNeeded : 0
  return bavail * bsize + replaced < bytesNeeded ? 'ENOSPC' : undefined
}

/**
 * Runs npm with the Node that npm itself runs on: the pinned one is about to be replaced.
 * Prisma's packages would fetch a native engine that Shaftbook does not use; naming an existing file stops them.
 * @param {string[]} args
 * @returns {Promise<{ code: number, errors: string }>}
 */
function runNpm(args) {
  const cli = process.env.npm_execpath
  const command = cli ? process.env.npm_node_execpath || process.execPath : 'npm'
  return new Promise((resolve) => {
    let errors = ''
    const child = spawn(command, cli ? [cli].concat(args) : args, {
      cwd: root,
      env: Object.assign({}, process.env, { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath }),
      shell: !cli && process.platform === 'win32',
      stdio: ['ignore', 'inherit', 'pipe'],
    })
    child.stderr.on('data', (chunk) => {
      errors += chunk
      process.stderr.write(chunk)
    })
    child.on('error', (error) => resolve({ code: 1, errors: String(error) }))
    child.on('close', (code) => resolve({ code: code === null ? 1 : code, errors }))
  })
}

/** Generates prisma/client when the schema or the packages have changed since, or when it is not there. */
function generateClient() {
  const wanted = hash([fs.readFileSync(schemaFile, 'utf8'), lockHash()])
  if (readIfThere(clientStamp) === wanted) return
  console.log('Generating the database client')
  const result = spawnSync(
    pinnedNode,
    [path.join(nodeModules, 'prisma', 'build', 'index.js'), 'generate', '--schema', schemaFile],
    {
      cwd: root,
      encoding: 'utf8',
      env: Object.assign({}, process.env, {
        PRISMA_SCHEMA_ENGINE_BINARY: pinnedNode,
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
        CHECKPOINT_DISABLE: '1',
      }),
    },
  )
  if (result.status !== 0) {
    fail(
      `${result.stdout}${result.stderr}\nThe database client can't be generated from prisma/schema.prisma: the message above says why.`,
    )
  }
  fs.writeFileSync(clientStamp, wanted)
}

/**
 * Runs apps/ops/src/commands/<command>.ts on the pinned Node and ends as it ends. Signals are passed on; a terminal and npm both
 * send the same Ctrl-C, so repeats within a second count once. The channel tells the command when this process dies.
 * @param {string} command
 * @param {string[]} args
 */
function handOver(command, args) {
  const child = spawn(pinnedNode, [commandFile(command)].concat(args), {
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  })
  let last = 0
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    const signal = /** @type {NodeJS.Signals} */ (name)
    process.on(signal, () => {
      const now = Date.now()
      if (process.platform !== 'win32' && now - last > 1000) child.kill(signal)
      last = now
    })
  }
  child.on('error', (error) =>
    fail(`The pinned Node can't be run (${error.message}): delete node_modules and run the command again.`),
  )
  child.on('exit', (code, signal) => process.exit(signal ? 128 + os.constants.signals[signal] : code))
}

async function main() {
  const problem = nodeVersionProblem(process.versions.node)
  if (problem) fail(problem)
  const [command, ...args] = process.argv.slice(2)
  if (command === 'stamp') {
    fs.writeFileSync(installStamp, lockHash())
    return
  }
  if (command !== 'setup' && !(command && fs.existsSync(commandFile(command)))) {
    fail(`There is no command "${command || ''}": see the scripts in package.json.`)
  }
  await install()
  generateClient()
  if (command !== 'setup') handOver(command, args)
}

if (process.argv[1] && fs.realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  main().catch((error) => fail(error.stack))
}
