import { describe, expect, it } from 'vitest'
import { closingLine, countTests } from './test-outcome.ts'

function report(...files: { status?: string; tests: string[] }[]): string {
  return JSON.stringify({
    testResults: files.map(({ status = 'passed', tests }, index) => ({
      name: `file-${index}.test.ts`,
      status,
      assertionResults: tests.map((status, number) => ({ fullName: `test ${number}`, status })),
    })),
  })
}

describe('countTests', () => {
  it('has no problem when all passed', () => {
    expect(countTests(report({ tests: ['passed', 'passed'] }, { tests: ['passed'] }), 0)).toEqual({
      passed: 3,
      failed: 0,
      problems: [],
    })
  })

  it('counts failures and names them', () => {
    const outcome = countTests(report({ status: 'failed', tests: ['passed', 'failed'] }), 1)
    expect(outcome).toEqual({ passed: 1, failed: 1, problems: ['1 of 2 tests failed', '"test 1" failed'] })
  })

  it('says why a test failed in one line, and names no more than twenty', () => {
    const failed = { fullName: 'the sum', status: 'failed', failureMessages: ['expected 3 to be 4\n    at sum.ts:1'] }
    const json = JSON.stringify({
      testResults: [
        { name: 'a.test.ts', status: 'failed', assertionResults: Array.from({ length: 25 }, () => failed) },
      ],
    })
    const { problems } = countTests(json, 1)
    expect(problems).toHaveLength(21)
    expect(problems[1]).toBe('"the sum" failed: expected 3 to be 4')
  })

  it.each(['skipped', 'pending', 'todo', 'disabled'])('takes a test that is %s for a problem', (status) => {
    const outcome = countTests(report({ tests: ['passed', status] }), 0)
    expect(outcome.problems).toEqual([`"test 1" was left out (${status})`])
    expect(outcome.failed).toBe(1)
  })

  it('takes a file that could not be loaded for a problem, though none of its tests failed', () => {
    const outcome = countTests(report({ status: 'failed', tests: [] }, { tests: ['passed'] }), 1)
    expect(outcome).toEqual({ passed: 1, failed: 1, problems: ['file-0.test.ts could not be run'] })
  })

  it('takes no report, no tests and an error outside the tests for problems', () => {
    expect(countTests(undefined, 1)).toEqual({ passed: 0, failed: 1, problems: ['no test was run'] })
    expect(countTests(report(), 0)).toEqual({ passed: 0, failed: 1, problems: ['no test was run'] })
    expect(countTests(report({ tests: ['passed'] }), 1).failed).toBe(1)
  })
})

describe('closingLine', () => {
  it('adds up all steps', () => {
    const step = { name: 'x', problems: [], seconds: 1 }
    expect(
      closingLine([
        { ...step, passed: 2, failed: 1 },
        { ...step, passed: 40, failed: 0 },
      ]),
    ).toBe('42 passed, 1 failed')
  })
})
