import type { Environment } from 'vitest/runtime';
const environment: Environment = { name: 'browser-code', viteEnvironment: 'client', setup: () => ({ teardown: () => {} }) };
export default environment;
