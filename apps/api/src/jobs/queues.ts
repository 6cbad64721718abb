export const jobsSchema = 'jobs'
export const turnOfDayQueue = 'turn-of-day'
export const digestQueue = 'greasing-mail'
