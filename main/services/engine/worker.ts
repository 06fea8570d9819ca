import { parentPort, receiveMessageOnPort } from 'node:worker_threads';
import { createHandlers } from './handlers.ts';
import { serveEngine } from './serve.ts';

const port = parentPort;
if (port) serveEngine(port, createHandlers(), () => receiveMessageOnPort(port)?.message);
