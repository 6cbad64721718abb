import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'

export function positionRoutes(_app: FastifyInstance, _context: Context): void {}
