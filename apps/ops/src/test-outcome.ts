/**
 * How one step of the test run ended. `problems` are sentences; a step without any has passed. `passed` and `failed`
 * count tests; a check that fails counts as one failed.
 */
export type Outcome = { name: string; passed: number; failed: number; problems: string[]; seconds: number }

type Report = {
  testResults: {
    name: string
    status: string
    assertionResults: { fullName: string; status: string; failureMessages?: string[] | null }[]
  }[]
}

/** So many failed tests are named in the summary, where a log that was cut short still shows them. */
const namedFailures = 20

/**
 * The outcome of a vitest project from its JSON report. Tests left out by skip, todo or only are problems, and so are
 * a file that could not be loaded, a project without tests and an error outside any test.
 * @param json undefined where vitest wrote no report
 * @param exitCode vitest's own
 */
export function countTests(json: string | undefined, exitCode: number): Omit<Outcome, 'name' | 'seconds'> {
  const files = json === undefined ? [] : (JSON.parse(json) as Report).testResults
  const tests = files.flatMap((file) => file.assertionResults)
  const passed = tests.filter((test) => test.status === 'passed').length
  const failed = tests.filter((test) => test.status === 'failed')
  const leftOut = tests.filter((test) => test.status !== 'passed' && test.status !== 'failed')
  const brokenFiles = files.filter(
    (file) => file.status !== 'passed' && !file.assertionResults.some((test) => test.status === 'failed'),
  )
  const problems = [
    ...(failed.length > 0 ? [`${failed.length} of ${tests.length} tests failed`] : []),
    ...failed.slice(0, namedFailures).map(failureLine),
    ...brokenFiles.map((file) => `${file.name} could not be run`),
    ...leftOut.map((test) => `"${test.fullName}" was left out (${test.status})`),
    ...(tests.length === 0 && brokenFiles.length === 0 ? ['no test was run'] : []),
  ]
  if (exitCode !== 0 && problems.length === 0) problems.push('an error outside the tests, see above')
  return { passed, failed: failed.length + (problems.length > 0 && failed.length === 0 ? 1 : 0), problems }
}

function failureLine(test: Report['testResults'][number]['assertionResults'][number]): string {
  const why = test.failureMessages?.[0]?.split('\n', 1)[0]
  return `"${test.fullName}" failed${why ? `: ${why.slice(0, 300)}` : ''}`
}

/** One line of the summary, such as "ok      unit           12.3 s  210 tests". */
export function summaryLine({ name, passed, failed, problems, seconds }: Outcome): string {
  const state = problems.length === 0 ? 'ok' : 'failed'
  const tests = passed + failed > 0 ? `  ${passed + failed} tests` : ''
  return `${state.padEnd(8)}${name.padEnd(18)}${`${seconds.toFixed(1)} s`.padStart(8)}${tests}`
}

/** The plain last line, for programs that read test runs. */
export function closingLine(outcomes: Outcome[]): string {
  const sum = (key: 'passed' | 'failed') => outcomes.reduce((total, outcome) => total + outcome[key], 0)
  return `${sum('passed')} passed, ${sum('failed')} failed`
}
