import { readDeviceKey, readSession, type Me } from '@shaftbook/contract/access'
import { NoAnswerError } from '../api/problem-error.ts'
import { request } from '../api/request.ts'
import { eraseKey, findHolder, takeKey } from '../offline/holder.ts'
import { keepPart, recordKey } from '../offline/kept-replies.ts'
import { payOwedSignOut, sendWaiting, stopSending } from '../offline/sender.ts'

let keptSession: Me | undefined

/**
 * Sees to it that the device has the key of who is signed in, and knows that person without a network too.
 * Where the service is silent the person goes on without: then nothing is kept, and the pages say so.
 */
export async function settleDevice(me: Me): Promise<void> {
  if (keptSession === me) return
  const holder = await findHolder()
  if (holder && holder.personId !== me.id) await eraseKey({ owesSignOut: false })
  try {
    if (holder?.personId !== me.id) {
      const { personId, key } = await request(readDeviceKey, {})
      // somebody else signed in in another tab meanwhile: nothing of this person is sealed under that key
      if (personId !== me.id) return
      await takeKey({ personId: me.id, name: me.name, key: Uint8Array.from(atob(key), (char) => char.charCodeAt(0)) })
      void sendWaiting()
    }
    await keepPart('session', [{ key: recordKey(readSession), value: me }])
    keptSession = me
  } catch (error) {
    if (!(error instanceof NoAnswerError)) throw error
  }
}

/** Takes the person off this device at once; the service is told by itself, as soon as it answers. */
export async function leaveDevice(): Promise<void> {
  stopSending()
  keptSession = undefined
  await eraseKey({ owesSignOut: true })
  void payOwedSignOut()
}
