import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { include: ['tests/{unit,published,files}/**/*.test.{ts,tsx}'], testTimeout: 60_000 },
});
