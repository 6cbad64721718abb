import { readFileSync, writeFileSync } from 'node:fs'
import { format, resolveConfig } from 'prettier'
import { buildApp } from './app.ts'
import { Config } from './config.ts'

const file = new URL('../openapi.json', import.meta.url).pathname

/** The document as this version of the contract makes it. No database is asked: a pool connects with the first query. */
async function currentDocument(): Promise<string> {
  const app = await buildApp(Config.parse({ appUrl: 'postgresql://nobody@127.0.0.1:1/none', log: 'silent' }))
  await app.ready()
  const document = JSON.stringify(app.swagger())
  await app.close()
  return await format(document, { ...(await resolveConfig(file)), filepath: file })
}

const document = await currentDocument()
if (!process.argv.includes('--check')) {
  writeFileSync(file, document)
  console.log(`wrote ${file}`)
} else if (readFileSync(file, 'utf8') !== document) {
  console.error('apps/api/openapi.json is not what the contract says: run `npm run openapi` and commit it.')
  process.exitCode = 1
}
