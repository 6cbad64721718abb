export const jobsSchema = 'jobs'
export const turnOfDayQueue = 'turn-of-day'
