import { z } from 'zod'
import { endpoint } from './endpoint.ts'

export const health = endpoint({
  name: 'health',
  method: 'GET',
  path: '/api/v1/health',
  access: 'public',
  summary: 'The process answers',
  replies: { 200: z.object({ status: z.literal('ok') }) },
})
export const ready = endpoint({
  name: 'ready',
  method: 'GET',
  path: '/api/v1/ready',
  access: 'public',
  summary: 'The database answers and every migration is applied',
  replies: { 200: z.object({ status: z.literal('ok'), database: z.literal('ok'), migrations: z.int() }) },
})
