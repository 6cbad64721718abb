import { createServer, type AddressInfo } from 'node:net'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { freePort, listenProblem, requireFreePort } from './free-port.ts'

describe('with a port taken', () => {
  const taker = createServer()
  let taken = 0
  beforeEach(async () => {
    await new Promise<void>((resolve) => taker.listen(0, '127.0.0.1', resolve))
    taken = (taker.address() as AddressInfo).port
  })
  afterEach(() => new Promise((resolve) => taker.close(resolve)))

  it('requireFreePort names it and another one', async () => {
    await expect(requireFreePort('127.0.0.1', taken)).rejects.toThrow(
      new RegExp(`Port ${taken} on 127.0.0.1 is taken .* PORT=\\d+`),
    )
  })

  it('freePort finds another one, which is free', async () => {
    const found = await freePort(taken)
    expect(found).not.toBe(taken)
    await expect(requireFreePort('127.0.0.1', found)).resolves.toBeUndefined()
  })
})

describe('listenProblem', () => {
  it('says what an address of another machine and a port below 1024 mean', () => {
    expect(listenProblem('EADDRNOTAVAIL', '10.1.2.3', 4380)).toMatch(/^10\.1\.2\.3 is not an address of this machine/)
    expect(listenProblem('EACCES', '127.0.0.1', 80)).toMatch(/^Port 80 on 127\.0\.0\.1 needs more rights/)
  })
})
