// A thread does not inherit the loader that lets its parent import TypeScript: it takes its own.
import { register } from 'tsx/esm/api';

register();
await import('./compareThread.ts');
