import { describe, expect, it } from 'vitest'
import { unprivilegedAccount } from './postgres-account.ts'

describe('unprivilegedAccount(passwd)', () => {
  it('finds nobody among the accounts', () => {
    const passwd = 'root:x:0:0:root:/root:/bin/bash\nnobody:x:65534:65533:nobody:/nonexistent:/usr/sbin/nologin\n'
    expect(unprivilegedAccount(passwd)).toEqual({ kind: 'account', name: 'nobody', uid: 65_534, gid: 65_533 })
  })

  it('reads the negative number some systems give to nobody', () => {
    expect(unprivilegedAccount('nobody:*:-2:-2::/var/empty:/usr/bin/false')).toMatchObject({ uid: 4_294_967_294 })
  })

  it('says what to do where there is none', () => {
    expect(() => unprivilegedAccount('root:x:0:0::/root:/bin/sh\n')).toThrow(/no account "nobody".*ordinary user/)
  })
})
