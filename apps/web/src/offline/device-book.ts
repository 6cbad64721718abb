import { Dexie, type Table } from 'dexie'

/** Who is signed in on this device, with the key that opens what is sealed for that person. */
export interface HolderRow {
  slot: 'holder'
  personId: string
  name: string
  key: Uint8Array
}
/** The session that was left without a network: the service is told before anything else. */
interface OwedRow {
  slot: 'sign-out-owed'
}
/** Which tab sends, where the browser has no locks. */
export interface LeaseRow {
  slot: 'sender'
  tab: string
  untilMs: number
}

/** Somebody with work on this device that is not sent: all that anybody else may know. */
interface PersonRow {
  id: string
  name: string
}

export interface DraftRow {
  key: string
  personId: string
  site: string
  sealed: Uint8Array
}

export type WriteState = 'waiting' | 'refused' | 'sent'

export interface OutboxRow {
  /** The order in which it was written, and is sent. */
  seq: number
  id: string
  personId: string
  site: string
  positionId: string | null
  state: WriteState
  /** When it was sent, or last tried. */
  atMs: number
  sealed: Uint8Array
}

/** What an item of the outbox carries that is too large to be read with the list. */
interface BytesRow {
  id: string
  personId: string
  type: string
  sealed: Uint8Array
}

/** A part of the book that was downloaded. Erased when its reader signs out. */
interface ReplyRow {
  key: string
  /** What it was downloaded for, so that it goes with it: a site, an area of it. */
  part: string
  atMs: number
  sealed: Uint8Array
}
/** What is downloaded together: since when, and how large. */
export interface PartRow {
  part: string
  atMs: number
  bytes: number
}

/** What a person chose to keep on this device; survives the sign-out, since it says nothing of the plant. */
interface ChoiceRow {
  key: string
  areaIds: string[]
}

class DeviceBook extends Dexie {
  declare slots: Table<HolderRow | OwedRow | LeaseRow, string>
  declare people: Table<PersonRow, string>
  declare drafts: Table<DraftRow, string>
  declare outbox: Table<OutboxRow, number, Omit<OutboxRow, 'seq'>>
  declare bytes: Table<BytesRow, string>
  declare replies: Table<ReplyRow, [string, string]>
  declare parts: Table<PartRow, string>
  declare choices: Table<ChoiceRow, string>

  constructor() {
    // a battery that is pulled takes nothing with it that was said to be kept
    super('shaftbook', { chromeTransactionDurability: 'strict', cache: 'disabled' })
    this.version(1).stores({
      slots: 'slot',
      people: 'id',
      drafts: 'key, personId',
      outbox: '++seq, &id, personId',
      bytes: 'id, personId',
      replies: '[part+key], key, part',
      parts: 'part',
      choices: 'key',
    })
  }
}

/** The book of this device: what was written and not sent, what was begun, what was downloaded. */
export const deviceBook = new DeviceBook()

let opening: Promise<boolean> | undefined

/** Opens the device's book; false where the browser keeps nothing, as in some private windows. */
export function openDeviceBook(): Promise<boolean> {
  opening ??= deviceBook.open().then(
    () => true,
    () => false,
  )
  return opening
}

/** Puts a row in a transaction of its own that is handed to the disk at once, before anything else can happen to the page. */
export function putAtOnce(table: 'drafts', row: DraftRow): Promise<void> {
  const transaction = deviceBook.backendDB().transaction([table], 'readwrite', { durability: 'strict' })
  transaction.objectStore(table).put(row)
  transaction.commit()
  return new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve())
    transaction.addEventListener('abort', () => reject(transaction.error ?? new Error('The device did not keep it.')))
  })
}
