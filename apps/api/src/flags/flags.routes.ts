import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'

export function flagRoutes(_app: FastifyInstance, _context: Context): void {}
