// Writes the notices of what the app ships of others: `npm run notices`, after a dependency has changed.
import { writeFileSync } from 'node:fs';
import { NOTICES, notices } from './notices.ts';

writeFileSync(NOTICES, notices());
