import { prepareJobs } from '../../api/src/jobs/prepare-jobs.ts'
import { migrate } from './migrate.ts'

/**
 * Brings a database to what this version of the service needs: migrations, then the tables of the job queue.
 * @returns the names of the migrations applied now
 */
export async function prepareDatabase(ownerUrl: string, onStep?: (text: string) => void): Promise<string[]> {
  const applied = await migrate(ownerUrl, onStep)
  await prepareJobs(ownerUrl)
  return applied
}
