import { parentPort } from 'node:worker_threads';
import { createHandlers } from './handlers.ts';
import { serveEngine } from './serve.ts';

if (parentPort) serveEngine(parentPort, createHandlers());
