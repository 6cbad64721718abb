import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OperatorError } from '../operator-error.ts'
import { runCommand } from '../run-command.ts'
import { closingLine, countTests, summaryLine, type Outcome } from '../test-outcome.ts'

const root = join(fileURLToPath(import.meta.url), '../../../../..')
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> }

/** What `npm test` runs, in this order: checks are scripts of package.json, the rest are projects of vitest.config.ts. */
const checks = ['format', 'lint', 'types', ...Object.keys(scripts).filter((name) => name.endsWith(':check'))]
const projects = ['unit', 'api', 'web', 'faults']

// `npm test -- unit api` runs only these.
await runCommand(async (stopped) => {
  const wanted = process.argv.slice(2)
  const unknown = wanted.filter((name) => ![...checks, ...projects].includes(name))
  if (unknown.length > 0) {
    throw new OperatorError(
      `There is no check ${unknown.join(', ')}: choose from ${[...checks, ...projects].join(', ')}.`,
    )
  }
  const outcomes: Outcome[] = []
  for (const name of [...checks, ...projects]) {
    if (wanted.length > 0 && !wanted.includes(name)) continue
    console.log(`\n=== ${name} ${'='.repeat(70 - name.length)}`)
    const began = performance.now()
    const result = checks.includes(name) ? await runCheck(name, stopped) : await runProject(name, stopped)
    outcomes.push({ name, ...result, seconds: (performance.now() - began) / 1000 })
  }
  console.log(`\n=== summary ${'='.repeat(63)}`)
  for (const outcome of outcomes) console.log(summaryLine(outcome))
  const problems = outcomes.flatMap((outcome) => outcome.problems.map((problem) => `${outcome.name}: ${problem}`))
  console.log([...problems, closingLine(outcomes)].join('\n'))
  if (problems.length > 0) process.exit(1)
})

type Result = Omit<Outcome, 'name' | 'seconds'>

async function runCheck(name: string, stopped: AbortSignal): Promise<Result> {
  const code = await run(scripts[name] ?? '', [], stopped)
  return { passed: 0, failed: code === 0 ? 0 : 1, problems: code === 0 ? [] : ['failed, see above'] }
}

async function runProject(name: string, stopped: AbortSignal): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), 'shaftbook-report-'))
  const report = join(folder, 'report.json')
  try {
    const args = ['run', '--project', name, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    const code = await run('vitest', args, stopped)
    return countTests(readReport(report), code)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

function readReport(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}

/** Runs a command line as npm would: in a shell, with the programs of node_modules first. */
function run(command: string, args: string[], stopped: AbortSignal): Promise<number> {
  const path = [join(root, 'node_modules', '.bin'), process.env.PATH ?? ''].join(delimiter)
  const { promise, resolve, reject } = Promise.withResolvers<number>()
  const child = spawn([command, ...args].join(' '), {
    cwd: root,
    env: { ...process.env, PATH: path },
    shell: true,
    signal: stopped,
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  child.on('error', reject)
  child.on('close', (code) => resolve(code ?? 1))
  return promise
}
