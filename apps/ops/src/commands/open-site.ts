import { openDatabase } from '../database.ts'
import { readEnvironment } from '../environment.ts'
import { openSite, readNewSite } from '../open-site.ts'
import { prepareDatabase } from '../prepare-database.ts'
import { runCommand, unlessStopped } from '../run-command.ts'

await runCommand(async (stopped) => {
  const site = readNewSite(process.argv.slice(2))
  const database = await openDatabase(readEnvironment(process.env), console.log)
  try {
    await unlessStopped(stopped, prepareDatabase(database.ownerUrl, console.log))
    const password = await openSite(database.ownerUrl, site)
    console.log(`\n${site.name} is open. ${site.manager} manages it and signs in as ${site.email}`)
    console.log(
      password
        ? `with the password ${password} (shown this once).`
        : 'with the password of the account that was there.',
    )
  } finally {
    await database.stop()
  }
})
