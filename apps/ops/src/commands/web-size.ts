import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { scriptLimitBytes, scriptSizesFile } from '../../../web/bundle/script-budget.ts'
import { kilobytes, type FirstLoad } from '../../../web/bundle/script-sizes.ts'
import { buildWeb, webFolder } from '../build-web.ts'
import { runCommand } from '../run-command.ts'

// The build itself fails where a page loads too much; here the figures are shown.
await runCommand(async (stopped) => {
  await buildWeb(stopped)
  const loads = JSON.parse(readFileSync(join(webFolder, scriptSizesFile), 'utf8')) as FirstLoad[]
  console.log('Script that a page loads before it can be used, gzip, and its limit:')
  for (const { page, bytes } of loads)
    console.log(`${kilobytes(bytes).padStart(10)} ${kilobytes(scriptLimitBytes(page)).padStart(10)}  ${page}`)
})
